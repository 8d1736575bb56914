#include "physics/chemistry/water.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

namespace water = halfdrop::water;

// IAPWS R11-07 along saturation, evaluated with the Debian package python3-iapws 1.5.3.
TEST_CASE("the ion product of water follows IAPWS R11-07 from 0 to 60 C") {
  const double table[][2] = {{0, 14.9463},  {10, 14.5336}, {15, 14.3441}, {20, 14.1646}, {25, 13.9945},
                             {30, 13.8331}, {40, 13.5344}, {50, 13.2644}, {60, 13.0201}};
  for (const auto& [celsius, pkw] : table) CHECK_NEAR(water::pkw(celsius), pkw, 0.0005);
}

// Source: OpenStax Chemistry 2e, Appendix E (module m68863), pKw to two decimals: within 0.015 of any modern
// table.
TEST_CASE("the ion product of water agrees with a student's table") {
  const double table[][2] = {{0, 14.95},  {10, 14.54}, {20, 14.17}, {25, 14.00},
                             {30, 13.84}, {40, 13.55}, {50, 13.28}, {60, 13.03}};
  for (const auto& [celsius, pkw] : table) CHECK_NEAR(water::pkw(celsius), pkw, 0.02);
}

// Source: IAPWS-95, IAPWS R12-08 and R1-76(2014), evaluated with the Debian package python3-iapws 1.5.3.
TEST_CASE("density, viscosity and surface tension of water are IAPWS's at bench temperatures") {
  struct Row {
    double celsius, density_kg_m3, viscosity_mpa_s, tension_mn_m;
  };
  const Row rows[] = {{15, 999.1020, 1.13755, 73.4858},
                      {20, 998.2065, 1.00157, 72.7361},
                      {25, 997.0470, 0.89000, 71.9722},
                      {30, 995.6488, 0.79721, 71.1942}};
  for (const Row& row : rows) {
    CHECK_NEAR(water::density_kg_m3(row.celsius), row.density_kg_m3, 0.002);
    CHECK_NEAR(water::viscosity_pa_s(row.celsius) * 1e3, row.viscosity_mpa_s, 0.003 * row.viscosity_mpa_s);
    CHECK_NEAR(water::surface_tension_n_m(row.celsius) * 1e3, row.tension_mn_m, 0.001);
  }
}

// Source: Tanaka et al., Metrologia 38 (2001) 301: the density is greatest at 3.983 C, 999.975 kg/m3 (from
// memory).
TEST_CASE("water is densest at four degrees") {
  CHECK_NEAR(water::density_kg_m3(3.983), 999.975, 0.0005);
  CHECK(water::density_kg_m3(3.0) < water::density_kg_m3(3.983));
  CHECK(water::density_kg_m3(5.0) < water::density_kg_m3(3.983));
}

// Source: IAPWS R9-97 for 589 nm, evaluated with the Debian package python3-iapws 1.5.3.
TEST_CASE("the refractive index of water is IAPWS's at bench temperatures") {
  const double known[][2] = {{15.0, 1.333754}, {20.0, 1.333349}, {25.0, 1.332858}, {30.0, 1.332290}};
  for (const auto& [celsius, index] : known) CHECK_NEAR(water::refractive_index(celsius), index, 2e-6);
}

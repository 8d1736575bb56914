#include "physics/chemistry/carbon_dioxide.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/chemistry/water.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

SolverOptions at(double temperature_c) {
  SolverOptions options;
  options.temperature_c = temperature_c;
  options.pkw = water::pkw(temperature_c);
  return options;
}

}  // namespace

// Source: Henry constants of the IAPWS guideline G7-04 as Debian's python3-iapws gives them, 125.440,
// 144.889, 165.645 and 187.560 MPa at 15, 20, 25 and 30 C; x p = k x, 55.34 mol of water a dm3 near 20 C.
TEST_CASE("carbon dioxide dissolves as IAPWS says, within 2 per cent, from 15 to 30 degrees") {
  const double henry_mpa[][2] = {{15.0, 125.440}, {20.0, 144.889}, {25.0, 165.645}, {30.0, 187.560}};
  for (const auto& [temperature_c, mpa] : henry_mpa) {
    CAPTURE(temperature_c);
    const double water_mol_dm3 = water::density_kg_m3(temperature_c) / 18.015268;
    const double expected = 0.101325 / mpa * water_mol_dm3;
    CHECK_NEAR(carbon_dioxide::solubility_mol_dm3_atm(temperature_c) / expected, 1.0, 0.02);
  }
}

// Source: Soli and Byrne 2002 (abstract): ln k = 22.66 - 7799 / T between 15 and 32 C in 0.65 mol/kg of salt;
// here the ratio to the rate at 25 C, since their water was salt.
TEST_CASE("cold water takes longer over carbon dioxide, warm water less") {
  for (const double temperature_c : {15.0, 20.0, 30.0}) {
    CAPTURE(temperature_c);
    const double measured = std::exp(-7799.0 / (temperature_c + 273.15) + 7799.0 / 298.15);
    CHECK_NEAR(carbon_dioxide::hydration_per_s(temperature_c) / carbon_dioxide::hydration_per_s(25.0),
               measured, 0.002);
  }
  // Both ways speed up with warmth; hydroxyl's by about 4 to 6 % a degree (Pinsent and others 1956, from
  // memory).
  const double per_degree =
      carbon_dioxide::hydroxylation_dm3_mol_s(26.0) / carbon_dioxide::hydroxylation_dm3_mol_s(25.0);
  CHECK(per_degree > 1.04);
  CHECK(per_degree < 1.09);
}

// Source: CRC Handbook, Diffusion of Gases in Water, which has it from Jaehne, Heinz and Dietrich 1987: 1.26,
// 1.45, 1.67, 1.91, 2.17 and 2.47e-9 m2/s from 10 to 35 C.
TEST_CASE("carbon dioxide diffuses through water as a handbook says, from 10 to 35 degrees") {
  const double handbook[][2] = {{10.0, 1.26e-9}, {15.0, 1.45e-9}, {20.0, 1.67e-9},
                                {25.0, 1.91e-9}, {30.0, 2.17e-9}, {35.0, 2.47e-9}};
  for (const auto& [temperature_c, m2_s] : handbook) {
    CAPTURE(temperature_c);
    CHECK_NEAR(carbon_dioxide::diffusion_m2_s(temperature_c), m2_s, 0.01e-9);
  }
}

// Source: Johnson, Limnol. Oceanogr. 27 (1982) 849, 25 C: k(CO2 + H2O) 0.037 +- 0.002 s^-1, its reverse 7.6e4
// dm3 mol^-1 s^-1, k(CO2 + OH-) Kw (7.1 +- 0.7)e-11 mol dm^-3 s^-1, its reverse 1.8e-4 s^-1.
TEST_CASE("hydration goes both ways as fast as was measured at 25 degrees") {
  CHECK_NEAR(carbon_dioxide::hydration_per_s(25.0), 0.037, 0.002);
  const double kw = std::pow(10.0, -water::pkw(25.0));
  CHECK_NEAR(carbon_dioxide::hydroxylation_dm3_mol_s(25.0) * kw, 7.1e-11, 0.7e-11);
  const double k_first = std::pow(10.0, -carbon_dioxide::pk_first(25.0));
  CHECK_NEAR(carbon_dioxide::hydration_per_s(25.0) / k_first, 7.6e4, 1e4);
  CHECK_NEAR(carbon_dioxide::hydroxylation_dm3_mol_s(25.0) * kw / k_first, 1.8e-4, 0.25e-4);
}

// Source: Goldberg, Kishore and Lennen 2002; Harned and Davis 1943 found 6.463, 6.381 and 6.298 at 10, 20 and
// 40 C (from memory).
TEST_CASE("the first constant of carbonic acid falls with temperature as was measured") {
  CHECK_NEAR(carbon_dioxide::pk_first(25.0), 6.351, 1e-12);
  CHECK_NEAR(carbon_dioxide::pk_first(10.0), 6.463, 0.02);
  CHECK_NEAR(carbon_dioxide::pk_first(20.0), 6.381, 0.01);
  CHECK_NEAR(carbon_dioxide::pk_first(40.0), 6.298, 0.02);
}

TEST_CASE("at equilibrium between the two forms nothing turns into the other any more") {
  for (const double ph_wanted : {4.0, 6.35, 8.3, 11.0}) {
    CAPTURE(ph_wanted);
    // Strong base or acid enough to hold that pH over 1e-3 mol/dm3 of each form, found by halving.
    const SolverOptions options = at(25.0);
    double low = -0.01, high = 0.02;
    Equilibrium found;
    for (int i = 0; i < 80; ++i) {
      const double base = 0.5 * (low + high);
      Mixture mixture;
      mixture.add(carbon_dioxide::carbonate_pair(), 1e-3);
      mixture.add({"base", {{"any", base > 0 ? 1 : -1}}, {}}, std::abs(base));
      found = solve(mixture, options);
      (found.ph < ph_wanted ? low : high) = base;
    }
    const auto rates = carbon_dioxide::Kinetics(options).rates_at(found);
    const double gamma = std::pow(10.0, -found.ph) / found.h_mol_dm3;
    const double dioxide_over_hydrogencarbonate =
        found.h_mol_dm3 * gamma * gamma / std::pow(10.0, -carbon_dioxide::pk_first(25.0));
    const double hydrogencarbonate = form_fractions(carbon_dioxide::carbonate_pair(), found, options)[0];
    CHECK_NEAR(
        rates.backward_per_s / (rates.forward_per_s * dioxide_over_hydrogencarbonate * hydrogencarbonate),
        1.0, 1e-9);
  }
}

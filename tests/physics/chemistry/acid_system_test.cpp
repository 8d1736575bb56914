#include "physics/chemistry/acid_system.h"

#include <doctest/doctest.h>

#include "physics/chemistry/carbon_dioxide.h"
#include "tests/support/near.h"

using halfdrop::AcidSystem;
using halfdrop::pk_at;

namespace {

AcidSystem with_heat(double pk, double heat_kj_mol, double heat_capacity_j_k_mol) {
  AcidSystem system;
  system.pk[0] = pk;
  system.heat_kj_mol[0] = heat_kj_mol;
  system.heat_capacity_j_k_mol[0] = heat_capacity_j_k_mol;
  return system;
}

}  // namespace

// Source: electromotive force measurements from memory: Harned and Ehlers 1933, ethanoic acid 4.770, 4.758,
// 4.756, 4.757 and 4.769 at 5, 15, 25, 30 and 40 C; Bates and Pinching 1949,
// ammonium 9.904, 9.564, 9.245, 9.093 and 8.805 at the same. Heats of both from Goldberg, Kishore and Lennen
// 2002.
TEST_CASE("constants move with temperature as they were measured") {
  const AcidSystem ethanoic = with_heat(4.756, -0.41, -142.0);
  const AcidSystem ammonium = with_heat(9.245, 51.95, 8.0);
  const double temperatures_c[] = {5, 15, 25, 30, 40};
  const double ethanoic_pk[] = {4.770, 4.758, 4.756, 4.757, 4.769};
  const double ammonium_pk[] = {9.904, 9.564, 9.245, 9.093, 8.805};
  for (int i = 0; i < 5; ++i) {
    CAPTURE(temperatures_c[i]);
    CHECK_NEAR(pk_at(ethanoic, 0, temperatures_c[i]), ethanoic_pk[i], 0.005);
    CHECK_NEAR(pk_at(ammonium, 0, temperatures_c[i]), ammonium_pk[i], 0.01);
  }
}

// Source: Yao and Byrne, Environ. Sci. Technol. 35 (2001): phenol red, pK = 5.798 + 666.7/T. A line in 1/T is
// a heat without a heat capacity: 666.7 R ln 10 = 12.764 kJ/mol.
TEST_CASE("a heat alone gives a straight line in the reciprocal of the temperature") {
  const AcidSystem phenol_red = with_heat(5.798 + 666.7 / 298.15, 12.764, 0.0);
  for (const double temperature_c : {5.0, 12.0, 25.0, 40.0}) {
    CAPTURE(temperature_c);
    CHECK_NEAR(pk_at(phenol_red, 0, temperature_c), 5.798 + 666.7 / (temperature_c + 273.15), 1e-4);
  }
}

TEST_CASE("at 25 degrees a constant is what the data say, to the last bit") {
  CHECK(pk_at(with_heat(4.756, -0.41, -142.0), 0, 25.0) == 4.756);
}

TEST_CASE("carbon dioxide's own account of its first constant agrees with the acid's") {
  const AcidSystem carbonic{2, {6.351, 10.329, 0.0}, 0, {9.15, 14.70, 0.0}, {-371.0, -249.0, 0.0}};
  for (const double temperature_c : {5.0, 20.0, 25.0, 40.0}) {
    CHECK_NEAR(halfdrop::carbon_dioxide::pk_first(temperature_c), pk_at(carbonic, 0, temperature_c), 1e-12);
    CHECK_NEAR(pk_at(halfdrop::carbon_dioxide::carbonate_pair(), 0, temperature_c),
               pk_at(carbonic, 1, temperature_c), 1e-12);
  }
}

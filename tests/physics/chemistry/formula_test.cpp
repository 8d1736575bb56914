#include "physics/chemistry/formula.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

using halfdrop::molar_mass_g_mol;

namespace {

double mass(const char* formula) {
  std::string fault;
  const auto found = molar_mass_g_mol(formula, fault);
  REQUIRE_MESSAGE(found.has_value(), formula << ": " << fault);
  return *found;
}

std::string fault_of(const char* formula) {
  std::string fault;
  CHECK_FALSE(molar_mass_g_mol(formula, fault).has_value());
  return fault;
}

}  // namespace

// Source: potassium hydrogen phthalate 204.2212 g/mol, Eurachem/CITAC guide, example A2; the others from
// memory of the CRC Handbook.
TEST_CASE("a formula weighs what a handbook says") {
  CHECK_NEAR(mass("KHC8H4O4"), 204.2212, 0.003);
  CHECK_NEAR(mass("H2O"), 18.015, 0.001);
  CHECK_NEAR(mass("Ca(OH)2"), 74.09, 0.005);
  CHECK_NEAR(mass("Na2B4O7·10H2O"), 381.37, 0.01);
  CHECK_NEAR(mass("Fe(NH4)2(SO4)2·6H2O"), 392.13, 0.02);
}

TEST_CASE("brackets multiply, and parts are added") {
  CHECK_NEAR(mass("(NH4)2CO3"), mass("N2H8CO3"), 1e-9);
  CHECK_NEAR(mass("H2C2O4·2H2O"), mass("C2H6O6"), 1e-9);
  CHECK_NEAR(mass("Ca((OH)2)3"), mass("CaO6H6"), 1e-9);
}

TEST_CASE("what is no formula is told where it stops being one") {
  CHECK(fault_of("") == "expected an element at the end");
  CHECK(fault_of("NaXx") == "unknown element at \"Xx\"");
  CHECK(fault_of("Ca(OH2") == "expected a closing bracket at the end");
  CHECK(fault_of("Na2CO3.10H2O") == "expected an element at \".10H2O\"");
  CHECK(fault_of("H0") == "expected a count from 1 to 999 at \"0\"");
  CHECK(fault_of("H9999").starts_with("expected a count"));
  CHECK(fault_of("()").starts_with("expected an element"));
  CHECK(fault_of("H2O·").starts_with("expected an element"));
  CHECK(fault_of("((((((((((((H").starts_with("too many brackets"));
}

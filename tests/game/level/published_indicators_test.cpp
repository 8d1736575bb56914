// The indicators' numbers against published ones, typed in here a second time.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "physics/chemistry/activity.h"
#include "physics/chemistry/formula.h"
#include "tests/support/near.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

const Indicator& indicator(const std::string& name) {
  const auto found = shelf().indicators.find(name);
  REQUIRE_MESSAGE(found != shelf().indicators.end(), name);
  return found->second.value;
}

/// How much higher a pK is at zero ionic strength, for a step from so many charges (Davies).
double rise_to_zero(double ionic_strength_mol_dm3, int charge_before) {
  const auto log10_gamma = [&](int charge) {
    return davies_log10_gamma(charge, ionic_strength_mol_dm3, 25.0);
  };
  return log10_gamma(charge_before) - log10_gamma(charge_before - 1);
}

double to_zero(double pk_at_tenth, int charge_before) {
  return pk_at_tenth + rise_to_zero(0.1, charge_before);
}

struct Dissociation {
  const char* indicator;
  int charge;
  double salt_charge;
  std::vector<double> pk;
};

}  // namespace

// Source: phenolphthalein: Tamura and co-workers, Anal. Sci. 12 (1996) 927, abstract (phosphate buffers of pH
// 5 to 13), as they stand; methyl orange: OpenStax Chemistry 2e, section 14.7, Ka 4.0e-4; phenol red: Yao and
// Byrne, Environ. Sci. Technol. 35 (2001), 5.798 + 666.7/T; the others: table of indicators in Skoog and
// West, at ionic strength 0.1, from memory. To zero ionic strength by the Davies equation, by hand + 0.107
// from charge 0 to -1 and + 0.321 from -1 to -2.
TEST_CASE("every indicator dissociates where it was published to") {
  CHECK_NEAR(to_zero(0.0, 0), 0.107, 0.001);
  CHECK_NEAR(to_zero(0.0, -1), 0.321, 0.003);
  const Dissociation published[] = {{"phenolphthalein", 0, 0, {9.05, 9.50}},
                                    {"methyl orange", 0, 1, {-std::log10(4.0e-4)}},
                                    {"screened methyl orange", 0, 1, {-std::log10(4.0e-4)}},
                                    {"bromocresol green", -1, 1, {to_zero(4.66, -1)}},
                                    {"methyl red", 0, 0, {to_zero(5.00, 0)}},
                                    {"bromothymol blue", -1, 1, {to_zero(7.10, -1)}},
                                    {"phenol red", -1, 1, {5.798 + 666.7 / 298.15}},
                                    {"thymol blue", 0, 1, {to_zero(1.65, 0), to_zero(8.96, -1)}}};
  for (const Dissociation& one : published) {
    CAPTURE(one.indicator);
    const Indicator& shelved = indicator(one.indicator);
    CHECK(shelved.system.protonated_charge == one.charge);
    CHECK(shelved.strong_charge == one.salt_charge);
    REQUIRE(shelved.system.steps == static_cast<int>(one.pk.size()));
    for (std::size_t i = 0; i < one.pk.size(); ++i) CHECK_NEAR(shelved.system.pk[i], one.pk[i], 0.015);
  }
}

// Source: two measurements in buffers, ionic strengths not seen: Tamura and co-workers, Anal. Sci. 12 (1996)
// 927, 9.05 and 9.50; by electrophoresis, Chem. Lett. 30 (2001) 14, 8.84 and 9.40 (abstracts). The red is
// that of the second step, so that the sum is what counts.
TEST_CASE("phenolphthalein in a titrated flask loses both protons where two measurements have it") {
  const AcidSystem& system = indicator("phenolphthalein").system;
  const double in_flask = system.pk[0] + system.pk[1] - rise_to_zero(0.05, 0) - rise_to_zero(0.05, -1);
  CHECK(in_flask > 8.84 + 9.40 - 0.1);
  CHECK(in_flask < 9.05 + 9.50);
}

// Source: middle of the colour change interval in OpenStax Chemistry 2e, section 14.7, 9.3 to 10.5: half of
// it is blue there. Steps as far apart as phenolphthalein's (our own estimate).
TEST_CASE("thymolphthalein is half blue in the middle of its range") {
  const AcidSystem& system = indicator("thymolphthalein").system;
  REQUIRE(system.steps == 2);
  const double first = std::pow(10.0, 9.9 - system.pk[0]);
  const double second = first * std::pow(10.0, 9.9 - system.pk[1]);
  CHECK_NEAR(second / (1.0 + first + second), 0.5, 0.02);
  CHECK_NEAR(system.pk[1] - system.pk[0], 0.45, 0.02);
}

// Source: Yao and Byrne, as above; 666.7 R ln 10 by hand 12.76 kJ/mol. Thymol blue's second heat has a test
// of its own (thymol_blue_test.cpp).
TEST_CASE("no indicator but phenol red and thymol blue moves with temperature") {
  for (const auto& [name, shelved] : shelf().indicators) {
    CAPTURE(name);
    const AcidSystem& system = shelved.value.system;
    const double first_kj_mol = name == "phenol red" ? 12.76 : 0.0;
    CHECK_NEAR(system.heat_kj_mol[0], first_kj_mol, 0.01);
    if (name != "thymol blue") CHECK(system.heat_kj_mol[1] == 0.0);
    CHECK(system.heat_capacity_j_k_mol[0] == 0.0);
  }
}

// Source: peaks and heights from memory of handbooks but for: bromothymol blue's blue form (620 nm, 3.57e4:
// flowinjectiontutorial.com, section 1.5.3), methyl red's peaks (530 +- 15 and 435 +- 20 nm: Acta Phys.-Chim.
// Sin. 28 (2012) 1030), phenol red's (433 and 558 nm: Yao and Byrne), thymol blue's blue form (596 nm:
// Gabriel and co-workers, Cienc. Mar. 31 (2005) 309). Handbooks differ by some tens of per cent.
TEST_CASE("the highest band of each coloured form is where and as high as published") {
  const struct {
    const char* indicator;
    int form;
    double peak_nm, within_nm, epsilon_dm3_mol_cm;
  } published[] = {{"phenolphthalein", 2, 552, 4, 3.0e4},
                   {"methyl orange", 0, 507, 4, 4.0e4},
                   {"methyl orange", 1, 464, 4, 2.7e4},
                   {"screened methyl orange", 0, 507, 4, 4.0e4},
                   {"screened methyl orange", 1, 464, 4, 2.7e4},
                   {"screened methyl orange", AbsorptionBand::kEveryForm, 615, 4, 6.0e4},
                   {"bromocresol green", 0, 444, 4, 1.7e4},
                   {"bromocresol green", 1, 616, 4, 4.0e4},
                   {"methyl red", 0, 525, 10, 4.0e4},
                   {"methyl red", 1, 435, 10, 2.1e4},
                   {"bromothymol blue", 0, 433, 4, 1.6e4},
                   {"bromothymol blue", 1, 620, 4, 3.57e4},
                   {"phenol red", 0, 433, 4, 1.9e4},
                   {"phenol red", 1, 558, 4, 5.0e4},
                   {"thymol blue", 0, 544, 4, 3.8e4},
                   {"thymol blue", 1, 435, 4, 1.6e4},
                   {"thymol blue", 2, 596, 4, 3.5e4},
                   {"thymolphthalein", indicator("thymolphthalein").system.steps, 596, 4, 4.0e4}};
  for (const auto& one : published) {
    CAPTURE(one.indicator);
    CAPTURE(one.form);
    AbsorptionBand highest;
    for (const AbsorptionBand& band : indicator(one.indicator).bands) {
      if (band.form == one.form && band.epsilon_dm3_mol_cm > highest.epsilon_dm3_mol_cm) highest = band;
    }
    CHECK_NEAR(highest.peak_nm, one.peak_nm, one.within_nm);
    CHECK_NEAR(highest.epsilon_dm3_mol_cm / one.epsilon_dm3_mol_cm, 1.0, 0.3);
  }
}

// Common practice: 0.1 % of the phthaleins, methyl orange and methyl red, 0.04 % of the sulfonphthaleins;
// molar masses from the formulas.
TEST_CASE("a dropping bottle is as strong as it is made up, within a hundredth") {
  const struct {
    const char *indicator, *formula;
    double g_dm3;
  } made_up[] = {{"phenolphthalein", "C20H14O4", 1.0},
                 {"methyl orange", "C14H14N3NaO3S", 1.0},
                 {"screened methyl orange", "C14H14N3NaO3S", 1.0},
                 {"methyl red", "C15H15N3O2", 1.0},
                 {"bromocresol green", "C21H14Br4O5S", 0.4},
                 {"bromothymol blue", "C27H28Br2O5S", 0.4},
                 {"phenol red", "C19H14O5S", 0.4},
                 {"thymol blue", "C27H30O5S", 0.4},
                 {"thymolphthalein", "C28H30O4", 1.0}};
  for (const auto& one : made_up) {
    CAPTURE(one.indicator);
    std::string fault;
    const auto g_mol = molar_mass_g_mol(one.formula, fault);
    REQUIRE_MESSAGE(g_mol.has_value(), fault);
    CHECK_NEAR(indicator(one.indicator).stock_mol_dm3 * *g_mol / one.g_dm3, 1.0, 0.01);
  }
}

}  // namespace halfdrop::test

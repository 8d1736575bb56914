// The substances on the shelf: what a handbook would say of them, and that one more needs no code.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "game/level/assets.h"
#include "physics/chemistry/solver.h"
#include "physics/chemistry/water.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"
#include "tests/support/noise.h"
#include "tests/support/rounds.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

const Assets& shelf() {
  static const Result<Assets> read = read_assets(HALFDROP_SOURCE_FOLDER);
  REQUIRE_MESSAGE(read.has_value(), why_not(read));
  return *read;
}

const Substance& substance(const std::string& name) {
  const auto found = shelf().substances.find(name);
  REQUIRE_MESSAGE(found != shelf().substances.end(), name);
  return found->second.value;
}

double ph(const std::vector<std::pair<std::string, double>>& solution, const SolverOptions& options) {
  Mixture mixture;
  for (const auto& [name, mol_dm3] : solution) mixture.add(substance(name), mol_dm3);
  return solve(mixture, options).ph;
}

SolverOptions at(double temperature_c) {
  SolverOptions options;
  options.temperature_c = temperature_c;
  options.pkw = water::pkw(temperature_c);
  return options;
}

using Labels = std::vector<std::string>;

}  // namespace

// Source: molar masses of the CRC Handbook (from memory), to its two decimals; potassium hydrogen phthalate
// 204.2212 g/mol from the Eurachem/CITAC guide, example A2.
TEST_CASE("every acid and base of a school or water laboratory is on the shelf, as heavy as its formula") {
  const std::pair<const char*, double> masses[] = {{"hydrochloric acid", 36.46},
                                                   {"nitric acid", 63.01},
                                                   {"sulfuric acid", 98.08},
                                                   {"ethanoic acid", 60.05},
                                                   {"lactic acid", 90.08},
                                                   {"citric acid", 192.12},
                                                   {"tartaric acid", 150.09},
                                                   {"malic acid", 134.09},
                                                   {"oxalic acid", 126.07},
                                                   {"benzoic acid", 122.12},
                                                   {"phosphoric acid", 97.99},
                                                   {"carbonic acid", 62.02},
                                                   {"sodium hydroxide", 40.00},
                                                   {"potassium hydroxide", 56.11},
                                                   {"calcium hydroxide", 74.09},
                                                   {"ammonia", 17.03},
                                                   {"sodium carbonate", 105.99},
                                                   {"sodium hydrogencarbonate", 84.01},
                                                   {"borax", 381.37},
                                                   {"potassium hydrogen phthalate", 204.2212},
                                                   {"sodium ethanoate", 82.03},
                                                   {"sodium salicylate", 160.10}};
  for (const auto& [name, g_mol] : masses) {
    CAPTURE(name);
    CHECK_NEAR(substance(name).molar_mass_g_mol, g_mol, 0.011);
  }
}

// Source: pH(S) of NBS, DOI 10.6028/jres.081A.005; borax of 0.01 mol/kg, 9.180, and phosphate, 6.865, from
// memory of the same series. Molal taken as molar, hence 0.02.
TEST_CASE("pH standards made from what is on the shelf read as certified") {
  CHECK_NEAR(ph({{"potassium hydrogen phthalate", 0.05}}, at(25.0)), 4.005, 0.02);
  CHECK_NEAR(ph({{"sodium hydrogencarbonate", 0.025}, {"sodium carbonate", 0.025}}, at(25.0)), 10.012, 0.02);
  CHECK_NEAR(ph({{"borax", 0.01}}, at(25.0)), 9.180, 0.02);
  // 0.025 KH2PO4 + 0.025 Na2HPO4, from the acid and the alkalis
  CHECK_NEAR(
      ph({{"phosphoric acid", 0.05}, {"potassium hydroxide", 0.025}, {"sodium hydroxide", 0.05}}, at(25.0)),
      6.865, 0.02);
}

// Source: Hetzer's formula for the phthalate standard as published with DOI 10.6028/jres.081A.005:
// pH(S) = 2073.44/T - 13.3270 + 0.045199 T - 3.4846e-5 T^2; carbonate and borax standards at 5, 10, 20, 30
// and 40 C from memory of the NBS tables.
TEST_CASE("pH standards move with temperature as certified") {
  for (const double temperature_c : {5.0, 10.0, 15.0, 20.0, 30.0, 40.0}) {
    CAPTURE(temperature_c);
    const double t = temperature_c + 273.15;
    const double hetzer = 2073.44 / t - 13.3270 + 0.045199 * t - 3.4846e-5 * t * t;
    CHECK_NEAR(ph({{"potassium hydrogen phthalate", 0.05}}, at(temperature_c)), hetzer, 0.02);
  }
  const double carbonate[][2] = {{5, 10.245}, {10, 10.179}, {20, 10.062}, {30, 9.966}, {40, 9.889}};
  for (const auto& [temperature_c, standard] : carbonate) {
    CAPTURE(temperature_c);
    CHECK_NEAR(ph({{"sodium hydrogencarbonate", 0.025}, {"sodium carbonate", 0.025}}, at(temperature_c)),
               standard, 0.02);
  }
  const double borax[][2] = {{5, 9.395}, {10, 9.332}, {20, 9.225}, {30, 9.139}, {40, 9.068}};
  for (const auto& [temperature_c, standard] : borax) {
    CAPTURE(temperature_c);
    CHECK_NEAR(ph({{"borax", 0.01}}, at(temperature_c)), standard, 0.02);
  }
}

// Source: OpenStax Chemistry 2e, section 4.5 (module m68716): 50.00 cm3 of hydrochloric acid take 35.23 cm3
// of 0.250 mol/dm3 sodium hydroxide (0.176 mol/dm3). Examples of other textbooks, answers worked out again by
// hand: 40.00 cm3 of 0.0656 mol/dm3 phosphoric acid to HPO4(2-) take 34.99 cm3 of 0.1500 mol/dm3 potassium
// hydroxide; 15.00 cm3 of 0.1500 mol/dm3 oxalic acid take 13.64 cm3 of 0.3300 mol/dm3 sodium hydroxide;
// 0.3420 g of potassium hydrogen phthalate take 35.73 cm3 of 0.04687 mol/dm3; 34.57 cm3 of 0.07469 mol/dm3
// ethanoic acid take 25.19 cm3 of 0.1025 mol/dm3.
TEST_CASE("the pH rises fastest where the worked examples put equivalence") {
  struct Example {
    const char *acid, *base;
    double acid_mol_dm3, acid_cm3, base_mol_dm3, titre_cm3;
  };
  const double phthalate_mol_dm3 =
      0.3420 / substance("potassium hydrogen phthalate").molar_mass_g_mol / 0.050;
  for (const Example& e :
       {Example{"hydrochloric acid", "sodium hydroxide", 0.17615, 50.0, 0.250, 35.23},
        Example{"phosphoric acid", "potassium hydroxide", 0.0656, 40.0, 0.1500, 34.99},
        Example{"oxalic acid", "sodium hydroxide", 0.1500, 15.0, 0.3300, 13.64},
        Example{"potassium hydrogen phthalate", "sodium hydroxide", phthalate_mol_dm3, 50.0, 0.04687, 35.73},
        Example{"ethanoic acid", "sodium hydroxide", 0.07469, 34.57, 0.1025, 25.19}}) {
    CAPTURE(e.acid);
    SolverOptions textbook;
    textbook.ideal = true;
    const auto after = [&](double cm3) {
      const double total = e.acid_cm3 + cm3;
      return ph({{e.acid, e.acid_mol_dm3 * e.acid_cm3 / total}, {e.base, e.base_mol_dm3 * cm3 / total}},
                textbook);
    };
    double steepest_cm3 = 0.0, steepest = 0.0;
    for (int i = -100; i <= 100; ++i) {
      const double cm3 = e.titre_cm3 + i * 0.005;
      const double rise = after(cm3 + 0.0025) - after(cm3 - 0.0025);
      if (rise > steepest) {
        steepest = rise;
        steepest_cm3 = cm3;
      }
    }
    CHECK_NEAR(steepest_cm3, e.titre_cm3, 0.015);
  }
}

TEST_CASE("calcium counts four times in the ionic strength") {
  Mixture limewater;
  limewater.add(substance("calcium hydroxide"), 0.01);
  // By hand: (4 x 0.01 + 0.02) / 2 = 0.03.
  CHECK_NEAR(solve(limewater, at(25.0)).ionic_strength_mol_dm3, 0.03, 1e-6);
}

// Source: limits for sodium hydroxide and hydrochloric acid from a Finnish teacher-training page on labelling
// solutions; H290 as suppliers' labels have it (from memory); mass fractions by hand, 0.1 mol/dm3 NaOH 0.40 %
// and HCl 0.36 %.
TEST_CASE("a bottle carries the warnings of its strength") {
  CHECK_NEAR(mass_percent(substance("sodium hydroxide"), 0.1), 0.40, 0.005);
  CHECK_NEAR(mass_percent(substance("hydrochloric acid"), 0.1), 0.36, 0.01);
  CHECK(hazard_statements(substance("sodium hydroxide"), 0.1).empty());
  CHECK(hazard_statements(substance("hydrochloric acid"), 0.1).empty());
  CHECK(hazard_statements(substance("sodium hydroxide"), 0.2) == Labels{"H290", "H315", "H319"});
  CHECK(hazard_statements(substance("sodium hydroxide"), 1.0) == Labels{"H290", "H314 1B"});
  CHECK(hazard_statements(substance("sodium hydroxide"), 2.0) == Labels{"H290", "H314 1A"});
  CHECK(hazard_statements(substance("hydrochloric acid"), 4.0) == Labels{"H290", "H315", "H319", "H335"});
}

// Source: concentrated solutions of the CRC Handbook (from memory): 10 % by mass of sodium hydroxide is
// 2.77 mol/dm3, of hydrochloric acid 2.87, of ammonia 5.62, of ethanoic acid 1.69.
TEST_CASE("mass fractions of stronger solutions are a handbook's, within two parts in a hundred") {
  CHECK_NEAR(mass_percent(substance("sodium hydroxide"), 2.77), 10.0, 0.2);
  CHECK_NEAR(mass_percent(substance("hydrochloric acid"), 2.87), 10.0, 0.2);
  CHECK_NEAR(mass_percent(substance("ammonia"), 5.62), 10.0, 0.2);
  CHECK_NEAR(mass_percent(substance("ethanoic acid"), 1.69), 10.0, 0.2);
}

TEST_CASE("a substance nobody has heard of needs only its entry") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder.file("assets"));
  static_cast<void>(folder.file("assets/indicators.json", text_of(source_file("assets/indicators.json"))));
  static_cast<void>(folder.file("assets/substances.json", R"({"calcium drollate": {
      "formula": "Ca(C3H5O2)2·H2O", "ions": [{"ion": "Ca2+", "charge": 2, "count": 1}], "source": "made up",
      "systems": [{"acid": "drollic acid", "charge": 0, "count": 2, "pk": [5.0], "heat_kj_mol": [10.0],
                   "source": "made up"}],
      "hazards": [{"from_percent": 1, "statements": ["H319"], "source": "made up"}]}})"));
  const Result<Assets> read = read_assets(folder.file(""));
  REQUIRE_MESSAGE(read.has_value(), why_not(read));
  const Substance& made_up = read->substances.at("calcium drollate").value;
  // By hand: 40.078 + 2 (3 x 12.011 + 5 x 1.008 + 2 x 15.999) + 18.015.
  CHECK_NEAR(made_up.molar_mass_g_mol, 204.235, 0.002);
  CHECK(hazard_statements(made_up, 0.1) == Labels{"H319"});
  Mixture mixture;
  mixture.add(made_up, 0.05);
  SolverOptions options;
  options.ideal = true;
  options.pkw = 14.0;
  CHECK_NEAR(solve(mixture, options).ph, 9.0, 0.001);  // by hand: 7 + (5 + log10 0.1) / 2
}

TEST_CASE("a damaged entry is told as faults, or still is a substance with a pH") {
  Random random{5};
  const int times = rounds(2000, 100000);
  int sound = 0;
  for (int i = 0; i < times; ++i) {
    const auto& any = std::next(shelf().substances.begin(),
                                static_cast<std::ptrdiff_t>(below(random, shelf().substances.size())));
    FaultList faults("substances.json");
    const std::optional<Json> json = parse_json(damaged(any->second.json, random), {}, faults);
    if (!json) continue;
    const Substance read = read_substance(any->first, *json, "", faults);
    if (!faults.empty()) continue;
    ++sound;
    Mixture mixture;
    mixture.add(read, 0.1);
    REQUIRE(std::isfinite(solve(mixture, at(20.0)).ph));
    REQUIRE(read.molar_mass_g_mol > 0.0);
  }
  CHECK(sound > 0);
  CHECK(sound < times);
}

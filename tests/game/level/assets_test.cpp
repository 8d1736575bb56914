#include "game/level/assets.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "physics/chemistry/acid_base.h"
#include "tests/support/good_level.h"
#include "tests/support/json.h"
#include "tests/support/near.h"
#include "tests/support/noise.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

Assets assets() {
  const Result<Assets> read = read_assets(HALFDROP_SOURCE_FOLDER);
  REQUIRE_MESSAGE(read.has_value(), why_not(read));
  return *read;
}

double ph(const std::string& substance, double mol_dm3) {
  Mixture mixture;
  mixture.add(assets().substances.at(substance).value, mol_dm3);
  SolverOptions options;
  options.ideal = true;
  options.pkw = 14.0;
  return solve(mixture, options).ph;
}

struct BadEntry {
  const char* patch;
  const char* pointer;
};

}  // namespace

TEST_SUITE("assets") {
  TEST_CASE("substances bring what their formula says: pH of 0.100 mol/dm3, ideal") {
    CHECK_NEAR(ph("hydrochloric acid", 0.1), 1.00, 0.005);  // OpenStax Chemistry 2e, section 14.7
    CHECK_NEAR(ph("sodium hydroxide", 0.1), 13.00, 0.005);
    CHECK_NEAR(ph("ethanoic acid", 0.1), 2.87, 0.015);  // OpenStax Chemistry 2e, section 14.7
    // By hand: [OH-] = sqrt(10^-4.755 x 0.1) = 1.326e-3, corrected for what reacted 1.317e-3.
    CHECK_NEAR(ph("ammonia", 0.1), 11.12, 0.01);
    // By hand: x^2/(0.1 - x) = 10^-3.671 gives x = 4.51e-3.
    CHECK_NEAR(ph("sodium carbonate", 0.1), 11.65, 0.02);
    // By hand: x^2/(0.1 - x) = 10^-2.148 gives x = 0.0233.
    CHECK_NEAR(ph("phosphoric acid", 0.1), 1.63, 0.01);
  }
  TEST_CASE("stock strengths follow from mass and molar mass") {
    // Molar masses from the formulas C20H14O4, C14H14N3NaO3S and C27H28Br2O5S (standard atomic weights).
    CHECK_NEAR(assets().indicators.at("phenolphthalein").value.stock_mol_dm3, 1.0 / 318.33, 1e-5);
    CHECK_NEAR(assets().indicators.at("methyl orange").value.stock_mol_dm3, 1.0 / 327.33, 1e-5);
    CHECK_NEAR(assets().indicators.at("bromothymol blue").value.stock_mol_dm3, 0.4 / 624.38, 1e-5);
  }
  TEST_CASE("only phenolphthalein's last form is coloured") {
    const Indicator phenolphthalein = assets().indicators.at("phenolphthalein").value;
    for (const AbsorptionBand& band : phenolphthalein.bands) CHECK(band.form == 2);
  }
  TEST_CASE("a bad entry is told at its JSON pointer") {
    constexpr BadEntry kBad[] = {
        {R"([{"op":"remove","path":"/ammonia/systems/0/source"}])", "/ammonia/systems/0/source"},
        {R"([{"op":"remove","path":"/ammonia/source"}])", "/ammonia/source"},
        {R"([{"op":"replace","path":"/ammonia/ions","value":"none"}])", "/ammonia/ions"},
        {R"([{"op":"replace","path":"/borax/ions/0/charge","value":-1}])", "/borax/ions/0/charge"},
        {R"([{"op":"replace","path":"/borax/ions/0/count","value":0}])", "/borax/ions/0/count"},
        {R"([{"op":"replace","path":"/borax/systems/0/count","value":2.5}])", "/borax/systems/0/count"},
        {R"([{"op":"replace","path":"/borax/formula","value":"Na2B4O7.10H2O"}])", "/borax/formula"},
        {R"([{"op":"replace","path":"/borax/systems/0/heat_kj_mol","value":[13.8, 1]}])",
         "/borax/systems/0/heat_kj_mol"},
        {R"([{"op":"replace","path":"/borax/systems/0/heat_kj_mol/0","value":13800}])",
         "/borax/systems/0/heat_kj_mol/0"},
        {R"([{"op":"replace","path":"/sodium hydroxide/hazards/1/below_percent","value":0.1}])",
         "/sodium hydroxide/hazards/1/below_percent"},
        {R"([{"op":"replace","path":"/sodium hydroxide/hazards/0/statements/0","value":"burns"}])",
         "/sodium hydroxide/hazards/0/statements/0"},
        {R"([{"op":"remove","path":"/sodium hydroxide/density/source"}])",
         "/sodium hydroxide/density/source"},
        {R"([{"op":"remove","path":"/borax/solubility/source"}])", "/borax/solubility/source"},
        {R"([{"op":"replace","path":"/borax/solubility/mol_dm3","value":0}])", "/borax/solubility/mol_dm3"},
        {R"([{"op":"add","path":"/borax/solubility/g_dm3","value":1}])", "/borax/solubility/g_dm3"},
        {R"([{"op":"add","path":"/borax/pure","value":{"mol_dm3":1,"source":"made up"}}])", "/borax/pure"},
        {R"([{"op":"remove","path":"/ethanoic acid/pure/source"}])", "/ethanoic acid/pure/source"},
        {R"([{"op":"replace","path":"/ethanoic acid/pure/mol_dm3","value":-1}])",
         "/ethanoic acid/pure/mol_dm3"},
        {R"([{"op":"replace","path":"/sodium hydroxide/ions","value":[]}])", "/sodium hydroxide"},
        {R"([{"op":"replace","path":"/ammonia/systems/0/charge","value":0.5}])", "/ammonia/systems/0/charge"},
        {R"([{"op":"replace","path":"/phosphoric acid/systems/0/pk","value":[2,7,12,14]}])",
         "/phosphoric acid/systems/0/pk"},
        {R"([{"op":"replace","path":"/phosphoric acid/systems/0/pk","value":[]}])",
         "/phosphoric acid/systems/0/pk"},
        {R"([{"op":"replace","path":"/phosphoric acid/systems/0/pk/2","value":1.5}])",
         "/phosphoric acid/systems/0/pk/2"},
        {R"([{"op":"add","path":"/ammonia/colour","value":"none"}])", "/ammonia/colour"},
        {R"([{"op":"replace","path":"/ammonia","value":3}])", "/ammonia"},
    };
    const std::string good = text_of(source_file("assets/substances.json"));
    for (const BadEntry& bad : kBad) {
      CAPTURE(bad.patch);
      const TemporaryFolder folder;
      std::filesystem::create_directory(folder.file("assets"));
      static_cast<void>(folder.file("assets/substances.json", patched(good, bad.patch)));
      static_cast<void>(
          folder.file("assets/indicators.json", text_of(source_file("assets/indicators.json"))));
      const Result<Assets> read = read_assets(folder.file(""));
      REQUIRE_FALSE(read.has_value());
      CHECK_MESSAGE(has_fault_at(read.error(), bad.pointer), all_of(read.error()));
      CHECK(read.error().size() == 1);
    }
  }
  TEST_CASE("a band of a form that the indicator does not have is a fault") {
    Json json = json_of(text_of(source_file("assets/indicators.json")))["methyl orange"];
    json["bands"][0]["form"] = 2;
    FaultList faults("indicators.json");
    static_cast<void>(read_indicator("methyl orange", json, "/methyl orange", faults));
    REQUIRE(faults.size() == 1);
    CHECK(faults.take()[0].place == "/methyl orange/bands/0/form");
  }
}

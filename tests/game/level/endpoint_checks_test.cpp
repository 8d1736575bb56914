#include "game/level/endpoint_checks.h"

#include <doctest/doctest.h>

#include "game/level/ionic_strength.h"
#include "tests/support/good_level.h"
#include "tests/support/shelf.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

/// The first level with one thing in its text changed.
EndpointChecks with(const std::string& from, const std::string& to) {
  std::string text = text_of(good_level_path());
  const std::size_t at = text.find(from);
  REQUIRE_MESSAGE(at != std::string::npos, from);
  text.replace(at, from.size(), to);
  const TemporaryFolder folder;
  const std::string path = folder.file("01-changed.json", text);
  const Result<Level> level = read_level(path);
  REQUIRE_MESSAGE(level.has_value(), why_not(level));
  return check_endpoint(*level, path);
}

}  // namespace

TEST_SUITE("endpoint checks") {
  TEST_CASE("the first level has an endpoint and an indicator that shows it") {
    const EndpointChecks found = check_endpoint(good_level(), good_level_path());
    CHECK_MESSAGE(found.faults.empty(), all_of(found.faults));
    CHECK_MESSAGE(found.warnings.empty(), all_of(found.warnings));
  }
  TEST_CASE("an acid run into an acid has no endpoint") {
    const EndpointChecks found = with("\"sodium hydroxide\"", "\"hydrochloric acid\"");
    CHECK(has_fault_at(found.faults, "/ratio"));
  }
  TEST_CASE("a monoprotic acid has no endpoint at two to one") {
    // The unknown's range is halved so that the titre stays on the burette.
    const EndpointChecks found = with("\"unknown_mol_dm3\": [0.076, 0.096]\n  },\n  \"ratio\": 1",
                                      "\"unknown_mol_dm3\": [0.038, 0.048]\n  },\n  \"ratio\": 2");
    CHECK(has_fault_at(found.faults, "/ratio"));
  }
  // Source: sodium carbonate has two endpoints with a strong acid, the first, at one to one, where
  // phenolphthalein loses its colour (common practice).
  TEST_CASE("a carbonate has an endpoint at one to one, its own carbon counted in") {
    Level level = good_level();
    level.titrant_substance = shelf().substances.at("hydrochloric acid").value;
    level.sample_substance = shelf().substances.at("sodium carbonate").value;
    level.titrant.label = "Hydrochloric acid";
    level.endpoint_gains_colour = false;
    const EndpointChecks found = check_endpoint(level, "carbonate.json");
    CHECK_MESSAGE(found.faults.empty(), all_of(found.faults));
  }
  // By hand: one proton to one hydroxide; 25.00 x 0.086 / 0.1000 = 21.50 cm3, of which a hundredth is 0.22.
  TEST_CASE("a ratio a hundredth off is the ratio's fault, not the indicator's") {
    const EndpointChecks found = with("\"ratio\": 1,", "\"ratio\": 1.01,");
    REQUIRE(found.faults.size() == 1);
    CHECK(found.faults[0].place == "/ratio");
    CHECK(found.faults[0].message ==
          "the nearest equivalence is at a ratio of 1, found 1.01: every titre would seem 0.22 cm3 off");
    CHECK(found.warnings.empty());
  }
  TEST_CASE("a third may be written with three figures") {
    Level level = good_level();
    level.sample_substance = shelf().substances.at("sodium hydroxide").value;
    level.titrant_substance = shelf().substances.at("citric acid").value;
    level.titrant.label = "Citric acid";
    level.ratio = 0.333;
    level.endpoint_gains_colour = false;
    CHECK_FALSE(has_fault_at(check_endpoint(level, "citric.json").faults, "/ratio"));
    level.ratio = 0.33;
    CHECK(has_fault_at(check_endpoint(level, "citric.json").faults, "/ratio"));
  }
  // Common practice: phenolphthalein's pink in lime water goes at the first drop too many of acid.
  TEST_CASE("where the colour goes, its last sight is the endpoint, in check as in curve") {
    Level level = good_level();
    level.sample_substance = shelf().substances.at("calcium hydroxide").value;
    level.sample.unknown_mol_dm3 = {0.005, 0.005};
    level.titrant_substance = shelf().substances.at("hydrochloric acid").value;
    level.titrant.label_mol_dm3 = 0.01;
    level.titrant.label = "Hydrochloric acid";
    level.ratio = 2.0;
    level.endpoint_gains_colour = false;
    const EndpointChecks found = check_endpoint(level, "lime.json");
    CHECK_MESSAGE(found.faults.empty(), all_of(found.faults));
    // Its pink pales for a good while before, but its last trace goes within two drops of the equivalence.
    REQUIRE(found.warnings.size() == 1);
    CHECK(found.warnings[0].message.starts_with("the change of phenolphthalein is gradual: from 24."));
    CHECK(found.warnings[0].message.find(" cm3, its endpoint at 24.9") != std::string::npos);
  }
  // By hand: carbonate takes two protons, the second at twice the volume, 43.00 cm3.
  TEST_CASE("an indicator of another equivalence than the ratio's shows what it does show") {
    Level level = good_level();
    level.titrant_substance = shelf().substances.at("hydrochloric acid").value;
    level.sample_substance = shelf().substances.at("sodium carbonate").value;
    level.titrant.label = "Hydrochloric acid";
    level.indicator_data = shelf().indicators.at("methyl orange").value;
    level.indicator = "methyl orange";
    level.endpoint_gains_colour = false;
    const EndpointChecks found = check_endpoint(level, "carbonate.json");
    REQUIRE(found.faults.size() == 1);
    CHECK(
        found.faults[0].message.starts_with("methyl orange shows no change within 10 cm3 past equivalence"));
    CHECK(found.faults[0].message.find("the nearest equivalence, at 43.00 cm3") != std::string::npos);
    // The other way about: phenolphthalein's pink is gone at the first.
    level.ratio = 2.0;
    level.indicator_data = shelf().indicators.at("phenolphthalein").value;
    level.indicator = "phenolphthalein";
    const EndpointChecks whole = check_endpoint(level, "carbonate.json");
    CHECK(whole.faults.empty());
    REQUIRE(whole.warnings.size() == 1);
    CHECK(
        whole.warnings[0].message.starts_with("phenolphthalein does not show the equivalence that is meant, "
                                              "at 43.00 cm3: its endpoint shows at 21."));
  }
  TEST_CASE("phenolphthalein gains colour with alkali: a level that says it loses it is wrong") {
    const EndpointChecks found = with("\"gains_colour\": true", "\"gains_colour\": false");
    CHECK(has_fault_at(found.faults, "/endpoint/gains_colour"));
  }
  TEST_CASE("a label that says another strength than the level is wrong") {
    const EndpointChecks found = with("Sodium hydroxide, 0.1000 mol dm", "Sodium hydroxide, 0.5000 mol dm");
    CHECK(has_fault_at(found.faults, "/titrant/label"));
    CHECK(with("Sodium hydroxide, 0.1000 mol dm", "Sodium hydroxide, 0,1000 mol dm").faults.empty());
    CHECK(with("Sodium hydroxide, 0.1000 mol dm⁻³", "Sodium hydroxide").faults.empty());
  }
  // Sodium hydroxide's ionic strength is its concentration; the Davies equation is good to about 0.5 mol/dm3
  // (textbooks of water chemistry, from memory).
  TEST_CASE("a bottle too strong for the activity model is worth a warning") {
    Level level = good_level();
    level.titrant.label_mol_dm3 = 0.5;
    level.titrant.label = "Sodium hydroxide";
    CHECK_FALSE(has_fault_at(check_endpoint(level, "strong.json").warnings, "/titrant/mol_dm3"));
    level.titrant.label_mol_dm3 = 0.6;
    CHECK(has_fault_at(check_endpoint(level, "strong.json").warnings, "/titrant/mol_dm3"));
  }
  // By hand: citric acid of 0.6 mol/dm3 and ammonia of 1.8 mix to 0.3 mol/dm3 of triammonium citrate, whose
  // ionic strength is six times that (9 + 3, halved), less what stays ammonia; neither bottle has that many
  // ions.
  TEST_CASE("what the bottles make of one another can be too strong as well") {
    Level level = good_level();
    level.titrant_substance = shelf().substances.at("ammonia").value;
    level.titrant.label_mol_dm3 = 1.8;
    level.sample_substance = shelf().substances.at("citric acid").value;
    level.sample.unknown_mol_dm3 = {0.6, 0.6};
    level.ratio = 3.0;
    const std::vector<Fault> warnings = warnings_of_ionic_strength(level, "strong.json");
    REQUIRE(warnings.size() == 1);
    CHECK(warnings[0].place == "/ratio");
  }
  TEST_CASE("methyl orange for a weak acid is worth a warning: it turns far before equivalence") {
    // Ethanoic acid against alkali with methyl orange is the textbooks' example of the wrong indicator.
    const EndpointChecks found = with("\"phenolphthalein\"", "\"methyl orange\"");
    REQUIRE(has_fault_at(found.warnings, "/indicator"));
    CHECK(found.warnings.back().message.starts_with("methyl orange does not fit this titration within 1 %"));
    CHECK(found.faults.empty());
  }
}

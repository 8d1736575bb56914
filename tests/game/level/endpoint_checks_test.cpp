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
  REQUIRE_MESSAGE(level.has_value(), all_of(level.error()));
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
    CHECK(found.warnings.back().message.starts_with("methyl orange does not show this endpoint"));
    CHECK(found.faults.empty());
  }
}

#include "game/level/bottle_hazards.h"

#include <doctest/doctest.h>

#include <cctype>

#include "tests/support/good_level.h"
#include "tests/support/near.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

Level with(const char* patch) {
  Result<Level> level = with_values(good_level(), patch);
  REQUIRE_MESSAGE(level.has_value(), why_not(level));
  return *level;
}

BottleHazards titrant_of(const char* patch) { return bottle_hazards(with(patch)).front(); }

using Statements = std::vector<std::string>;

}  // namespace

// A Finnish teacher-training page (opettajankoulutus.fi, p=181): sodium hydroxide below 0.5 % by mass needs
// no label, from 0.5 % H315 and H319, from 2 % H314 1B; 0.125 mol/dm3 is about 0.5 %, 0.5 mol/dm3 about 2 %.
// H290 is our own addition (assets/substances.json).
TEST_CASE("one alkali at three strengths has three labels") {
  CHECK(titrant_of(R"({"titrant":{"mol_dm3":0.1}})").dissolved[0].statements.empty());
  CHECK(titrant_of(R"({"titrant":{"mol_dm3":0.13}})").dissolved[0].statements ==
        Statements{"H290", "H315", "H319"});
  CHECK(titrant_of(R"({"titrant":{"mol_dm3":0.55}})").dissolved[0].statements ==
        Statements{"H290", "H314 1B"});
}

TEST_CASE("strength is said by mass: a tenth molar alkali has 0.40 %") {
  // 4.000 g in a litre that weighs 1.002 kg.
  CHECK_NEAR(titrant_of("{}").dissolved[0].percent, 0.40, 0.005);
}

TEST_CASE("an unknown is labelled for the strongest it can be, whatever the seed") {
  const BottleHazards sample = bottle_hazards(good_level()).back();
  CHECK(sample.at_most);
  CHECK(sample.label == good_level().sample.label);
  CHECK_NEAR(sample.dissolved[0].percent, 100.0 * 60.05 * 0.096 / 999.0, 0.005);  // M of ethanoic acid: 60.05
}

TEST_CASE("what stands beside in a bottle is warned of too") {
  Level level = good_level();
  level.titrant.also = {{shelf().substances.at("borax").value, 0.02}};
  const BottleHazards titrant = bottle_hazards(level).front();
  REQUIRE(titrant.dissolved.size() == 2);
  CHECK(titrant.dissolved[1].statements == Statements{"H360FD"});  // 381.4 g/mol: 0.76 %, the limit is 0.3 %
  CHECK(hazard_words(titrant) == "H360FD may damage fertility; may damage the unborn child");
}

TEST_CASE("local rules take the place of the limits") {
  const BottleHazards titrant =
      titrant_of(R"({"titrant":{"mol_dm3":0.55,"hazard":"Corrosive (our own sheet 31)."}})");
  CHECK(hazard_words(titrant) == "Corrosive (our own sheet 31).");
  CHECK(hazard_words(bottle_hazards(good_level()).back()) == "not classified at this strength");
}

TEST_CASE("every statement of the shelf has words, its category has not") {
  for (const auto& [name, shelved] : shelf().substances) {
    for (const Hazard& hazard : shelved.value.hazards) {
      for (const std::string& statement : hazard.statements) {
        CAPTURE(statement);
        CHECK_FALSE(statement_words(statement).empty());
      }
    }
  }
  CHECK(statement_words("H314 1A") == statement_words("H314"));
  CHECK(statement_words("H31") == "");
  CHECK(statement_words("H3145") == "");
  CHECK(statement_words("H999") == "");
}

// The page before a level says these for every titration.
TEST_CASE("no level of ours says again what the page says anyhow") {
  for (const char* file : {"01-spirit-vinegar", "04-washing-soda", "06-citric-descaler", "08-pool-water"}) {
    const Result<Level> level = read_level(source_file("levels/") + file + ".json");
    REQUIRE(level.has_value());
    for (const std::string& caution : level->cautions) {
      CAPTURE(caution);
      for (const char* said : {"rehearsal", "ye protection", "mouth.", "spill", "top below"})
        CHECK(caution.find(said) == std::string::npos);
    }
  }
}

}  // namespace halfdrop::test

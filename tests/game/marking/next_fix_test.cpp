// The one thing to change next time.

#include "game/marking/next_fix.h"

#include "tests/support/bench_hands.h"
#include "tests/support/made_titres.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

using test::made_attempt;
using test::made_run;

Finding missed(Score score, const char* criterion, double of, std::optional<double> cost_cm3 = {}) {
  return {score, criterion, false,
          0.0,   of,        std::string(criterion) + " was seen.",
          7,     cost_cm3,  std::string("Mend ") + criterion + "."};
}

MarkedAttempt attempt(const test::Parts& causes, std::vector<Finding> findings) {
  MarkedAttempt made = made_attempt({made_run("1", 21.23, causes, true)});
  made.findings = std::move(findings);
  return made;
}

}  // namespace

TEST_CASE("the cause that costs most comes first, however many marks another lost") {
  const auto fix = next_fix(
      attempt({{Cause::jet_air, 0.20}, {Cause::parallax_final, -0.08}},
              {missed(Score::eye, "eye-level", 5.0, -0.08), missed(Score::hand, "jet-filled", 1.0, 0.20)}));
  REQUIRE(fix.has_value());
  CHECK(fix->id == "jet-filled");
  CHECK(fix->advice == "Mend jet-filled.");
  CHECK_NEAR(*fix->gain_cm3, 0.20, 1e-12);
  CHECK(fix->why == "Air in the jet: raised the titres that count by 0.200 cm³ on average.");
}

TEST_CASE("what a criterion saw is mended by its own advice, whichever cause it came through") {
  const std::pair<Cause, const char*> seen_by[] = {{Cause::titrant_strength, "burette-rinsed"},
                                                   {Cause::aliquot, "pipette-rinsed"},
                                                   {Cause::aliquot, "last-drop-left"},
                                                   {Cause::film, "waited"},
                                                   {Cause::leak, "tap-tight"},
                                                   {Cause::overshoot, "fade-let-be"},
                                                   {Cause::overshoot, "same-shade"}};
  for (const auto& [cause, criterion] : seen_by) {
    CAPTURE(criterion);
    const auto fix = next_fix(attempt({{cause, 0.04}}, {missed(Score::hand, criterion, 0.0, 0.04)}));
    REQUIRE(fix.has_value());
    CHECK(fix->id == criterion);
    CHECK(fix->advice == "Mend " + std::string(criterion) + ".");
    CHECK(fix->tick == 7);
    REQUIRE(fix->gain_cm3.has_value());
    CHECK_NEAR(*fix->gain_cm3, 0.04, 1e-12);
  }
}

TEST_CASE("safety is first, whatever the titre lost") {
  const auto fix =
      next_fix(attempt({{Cause::jet_air, 0.90}}, {missed(Score::hand, "jet-filled", 1.0, 0.90),
                                                  missed(Score::safety, "eye-protection", 0.0)}));
  REQUIRE(fix.has_value());
  CHECK(fix->id == "eye-protection");
}

TEST_CASE("where nothing costs a fifth of a drop, marks decide") {
  const auto fix =
      next_fix(attempt({{Cause::flask_wall, 0.006}}, {missed(Score::hand, "washed-down", 0.5, 0.006),
                                                      missed(Score::record, "concordance", 2.0)}));
  REQUIRE(fix.has_value());
  CHECK(fix->id == "concordance");
}

TEST_CASE("what was wrong in the trial alone costs no result, but its marks") {
  MarkedAttempt made = made_attempt({made_run("trial", 21.23, {{Cause::jet_air, 0.5}}),
                                     made_run("1", 21.23, {{Cause::parallax_final, -0.06}}, true)});
  made.findings = {missed(Score::hand, "jet-filled", 1.0, 0.5), missed(Score::eye, "eye-level", 1.0, -0.06)};
  const auto fix = next_fix(made);
  REQUIRE(fix.has_value());
  CHECK(fix->id == "eye-level");
}

TEST_CASE("a cause of the hand is named without a criterion from a drop on; glass and rounding never") {
  const auto fix =
      next_fix(attempt({{Cause::overshoot, -0.06}, {Cause::aliquot, 0.09}, {Cause::rounding, 0.08}}, {}));
  REQUIRE(fix.has_value());
  CHECK(fix->id == "overshoot");
  CHECK(fix->advice.starts_with("Go on"));
  CHECK(!next_fix(attempt({{Cause::overshoot, 0.04}, {Cause::burette_scale, 0.07}}, {})).has_value());
}

TEST_CASE(
    "liquid left on the wall is named from half a drop on, and a bare bench where it cost the endpoint") {
  CHECK(next_fix(attempt({{Cause::film, 0.03}}, {}))->id == "film");
  CHECK(!next_fix(attempt({{Cause::film, 0.02}}, {})).has_value());
  CHECK(next_fix(attempt({{Cause::overshoot, 0.03}}, {missed(Score::hand, "white-tile", 0.5)}))->id ==
        "white-tile");
}

TEST_CASE("a slip of the pen counts by what it does to the result") {
  MarkedAttempt made = attempt({{Cause::jet_air, 0.20}}, {missed(Score::hand, "jet-filled", 1.0, 0.20),
                                                          missed(Score::arithmetic, "calculation/x", 1.0)});
  made.result_split = ResultSplit{{{"Slip", ResultPartOf::slip, {}, "calculation/x", -69.3}}, -69.3, true};
  CHECK(next_fix(made)->id == "calculation/x");
  made.result_split->parts[0].percent = -0.5;  // half a per cent of 21 cm³ is less than the air
  CHECK(next_fix(made)->id == "jet-filled");
}

TEST_CASE("an attempt done rightly has nothing to change, and one without goggles has them") {
  test::BenchHands hands;
  hands.whole_attempt();
  Attempt attempt = hands.hand_in();
  CHECK(!next_fix(mark(attempt)).has_value());
  std::erase_if(attempt.changes, [](const Change& change) {
    const auto* deed = std::get_if<Deed>(&change.what);
    return deed && *deed == Deed::put_on_goggles;
  });
  const auto fix = next_fix(mark(attempt));
  REQUIRE(fix.has_value());
  CHECK(fix->id == "eye-protection");
  CHECK(next_fix_text(*fix).starts_with(fix->advice));
}

TEST_CASE("a drop left hanging at every last reading is what to change") {
  test::BenchHands hands;
  test::RunPlan plan;
  plan.left_hanging_cm3 = 0.04;
  plan.touch_off = false;
  hands.whole_attempt(plan);
  const auto fix = next_fix(mark(hands.hand_in()));
  REQUIRE(fix.has_value());
  CHECK(fix->id == "hanging-drop");
}

}  // namespace halfdrop

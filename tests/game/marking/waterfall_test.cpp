// Steps from one figure to another, without a gap.

#include "game/marking/waterfall.h"

#include <cmath>

#include "tests/support/bench_hands.h"
#include "tests/support/made_titres.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

constexpr double kExact = 1e-9;

void check_without_gap(const Waterfall& falls) {
  double at = falls.start, sum = 0.0;
  for (const WaterfallStep& step : falls.steps) {
    CAPTURE(step.name);
    CHECK_NEAR(step.from, at, 0.0);
    at = step.to;
    sum += step.size();
  }
  CHECK_NEAR(at, falls.end, 0.0);
  CHECK_NEAR(falls.start + sum, falls.end, kExact);
}

const WaterfallStep* step(const Waterfall& falls, Cause cause) {
  for (const WaterfallStep& one : falls.steps) {
    if (one.cause == cause) return &one;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("the steps of a titre lead from the ideal to the recorded one, each as large as its cause") {
  const TitreRow row = test::made_run("1", 21.23,
                                      {{Cause::rounding, -0.02},
                                       {Cause::jet_air, 0.12},
                                       {Cause::flask_wall, 0.004},
                                       {Cause::hanging_drop, 0.003},
                                       {Cause::overshoot, 0.03}});
  const Waterfall falls = titre_waterfall(*row.breakdown);
  check_without_gap(falls);
  REQUIRE(falls.steps.size() == 4);
  CHECK_NEAR(step(falls, Cause::overshoot)->size(), 0.03, 1e-12);
  CHECK(step(falls, Cause::overshoot)->name == "Endpoint passed");
  CHECK_NEAR(step(falls, Cause::jet_air)->size(), 0.12, 1e-12);
  CHECK_NEAR(step(falls, Cause::rounding)->size(), -0.02, 1e-12);
  CHECK(falls.steps.back().name == "Smaller causes together");
  CHECK(falls.steps.back().merged == 2);
  CHECK_NEAR(falls.steps.back().size(), 0.007, kExact);
  CHECK_NEAR(falls.end, 21.367, kExact);
}

TEST_CASE("the steps go the titrant's own way: flask, burette, eye, paper") {
  test::Parts all;
  for (std::size_t i = 0; i < kCauses; ++i) {
    all.emplace_back(static_cast<Cause>(i), (i % 2 == 0 ? 0.01 : -0.013) * static_cast<double>(i + 1));
  }
  const Waterfall falls = titre_waterfall(*test::made_run("1", 21.23, all).breakdown);
  check_without_gap(falls);
  REQUIRE(falls.steps.size() == kCauses);
  for (std::size_t i = 1; i < falls.steps.size(); ++i)
    CHECK(falls.steps[i - 1].stage <= falls.steps[i].stage);
  CHECK(stage_of(Cause::overshoot) == Stage::flask);
  CHECK(stage_of(Cause::titrant_strength) == Stage::flask);
  CHECK(stage_of(Cause::flask_wall) == Stage::burette);
  CHECK(stage_of(Cause::burette_scale) == Stage::burette);
  CHECK(stage_of(Cause::parallax_final) == Stage::eye);
  CHECK(stage_of(Cause::rounding) == Stage::paper);
}

TEST_CASE("where all causes are small they stand together, and where there is none there is no step") {
  const Waterfall small = titre_waterfall(
      *test::made_run("1", 20.0, {{Cause::film, 0.003}, {Cause::rounding, -0.003}}).breakdown);
  check_without_gap(small);
  REQUIRE(small.steps.size() == 1);
  CHECK_NEAR(small.steps.front().size(), 0.0, kExact);
  CHECK(titre_waterfall(*test::made_run("1", 20.0, {}).breakdown).steps.empty());
}

TEST_CASE(
    "what stands between two stages of a real run is what was there: in the flask, out of the tip, seen") {
  test::BenchHands hands;
  hands.protect();
  test::RunPlan plan;
  plan.past_cm3 = 0.12;
  plan.eye_above_mm = 60.0;
  plan.left_hanging_cm3 = 0.03;
  hands.run("1", plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  REQUIRE(marked.titres.size() == 1);
  REQUIRE(marked.titres[0].breakdown);
  const Waterfall falls = titre_waterfall(*marked.titres[0].breakdown, 0.0);
  check_without_gap(falls);
  CHECK_NEAR(falls.end, *marked.titres[0].recorded_cm3, kExact);
  // All that left the tip fell into the flask or hangs there: with nothing small merged, the burette's steps
  // end at what the printed scale truly moved by, and the eye's at what was seen, within the rounding of two
  // figures.
  double seen_cm3 = falls.start;
  for (const WaterfallStep& one : falls.steps) {
    if (one.stage != Stage::paper) seen_cm3 = one.to;
  }
  CHECK_NEAR(seen_cm3, falls.end, 0.05 + kExact);
}

TEST_CASE("the result's steps add up to its distance from the truth") {
  ResultSplit split;
  split.parts = {{"a", ResultPartOf::titres, Cause::jet_air, "", 0.9},
                 {"b", ResultPartOf::titres, Cause::film, "", 0.01},
                 {"c", ResultPartOf::rounding, {}, "", -0.015}};
  split.percent = 0.895;
  const Waterfall falls = result_waterfall(split);
  check_without_gap(falls);
  REQUIRE(falls.steps.size() == 2);
  CHECK_NEAR(falls.steps[1].size(), -0.005, kExact);
}

}  // namespace halfdrop

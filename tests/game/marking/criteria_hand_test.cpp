// One thing done wrong at a time: that criterion is not met, the others are.

#include <doctest/doctest.h>

#include <cmath>

#include "physics/burette/filling.h"
#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::finding;
using test::RunPlan;

/// The attempt whose accurate runs follow the plan.
MarkedAttempt played(const RunPlan& plan) {
  BenchHands hands;
  hands.whole_attempt(plan);
  return mark(hands.hand_in());
}

TEST_CASE("titrant poured with the tap open is seen") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(30.0, 1.0);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "tap-shut").met);
  CHECK(finding(marked, "tap-shut").seen.find("ran out") != std::string::npos);
}

TEST_CASE("a tap turned a little from across is still shut") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(30.0, 0.3);
  CHECK(finding(mark(hands.hand_in()), "tap-shut").met);
}

TEST_CASE("a funnel left in drips into the burette and lowers the titre by what dripped") {
  RunPlan plan;
  plan.funnel_out = false;
  const MarkedAttempt marked = played(plan);
  CHECK(test::unmet(marked).starts_with("funnel-out"));
  REQUIRE(finding(marked, "funnel-out").cost_cm3);
  const double drips_cm3 = *finding(marked, "funnel-out").cost_cm3;
  CHECK(drips_cm3 < -0.5 * kFunnelDrop_cm3);
  CHECK_NEAR(drips_cm3 / kFunnelDrop_cm3, std::round(drips_cm3 / kFunnelDrop_cm3), 1e-6);
}

TEST_CASE("a jet never filled costs its whole volume in the first run") {
  BenchHands hands;
  hands.protect();
  RunPlan dry;
  dry.fill_jet = false;
  hands.run("1", dry);
  hands.run("2");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "jet-filled").met);
  CHECK(finding(marked, "jet-filled").seen.starts_with("Run 1:"));
  REQUIRE(finding(marked, "jet-filled").cost_cm3);
  CHECK_NEAR(*finding(marked, "jet-filled").cost_cm3, hands.spec().burette.jet_cm3, 1e-9);
}

TEST_CASE("a drop left hanging at the end costs what hangs") {
  RunPlan plan;
  plan.left_hanging_cm3 = 0.03;
  const MarkedAttempt marked = played(plan);
  CHECK(test::unmet(marked) == "hanging-drop, titrant-volume");
  REQUIRE(finding(marked, "hanging-drop").cost_cm3);
  CHECK_NEAR(*finding(marked, "hanging-drop").cost_cm3, 0.03, 0.001);
}

TEST_CASE("a flask that is never swirled is seen, in every run") {
  RunPlan plan;
  plan.swirl = 0.0;
  const MarkedAttempt marked = played(plan);
  CHECK(test::unmet(marked) == "swirled");
  CHECK(finding(marked, "swirled").seen ==
        "Run 1: none of the titrant came into a swirled flask. (Also: run 2.)");
}

TEST_CASE("the last half cubic centimetre in a stream is not drop by drop") {
  RunPlan plan;
  plan.last_tap_drops_per_s = 8.0;
  const MarkedAttempt marked = played(plan);
  CHECK(!finding(marked, "drop-by-drop").met);
  CHECK(finding(marked, "swirled").met);
}

TEST_CASE("two drops a second are drop by drop, and a trial need not be") {
  RunPlan plan;
  plan.last_tap_drops_per_s = 2.0;
  CHECK(finding(played(plan), "drop-by-drop").met);
}

TEST_CASE("titrant left on the flask's wall costs what clings there") {
  RunPlan plan;
  plan.wash_down = false;
  plan.last_tap_drops_per_s = 2.0;
  const MarkedAttempt marked = played(plan);
  CHECK(test::unmet(marked) == "washed-down");
  REQUIRE(finding(marked, "washed-down").cost_cm3);
  CHECK(*finding(marked, "washed-down").cost_cm3 > 0.002);
  CHECK(*finding(marked, "washed-down").cost_cm3 < 0.05);
}

TEST_CASE("nothing clings, nothing has to be washed down") {
  RunPlan plan;
  plan.wash_down = false;
  plan.touch_off = false;
  CHECK(finding(played(plan), "washed-down").met);
}

TEST_CASE("a flask that is not emptied, or emptied and not rinsed, is not clean") {
  for (const bool emptied : {true, false}) {
    BenchHands hands;
    hands.protect();
    RunPlan plan;
    plan.rinse_after = false;
    hands.run("1", plan);
    if (emptied) hands.act(Deed::empty_flask);
    hands.run("2");
    const MarkedAttempt marked = mark(hands.hand_in());
    CHECK(!finding(marked, "flask-clean").met);
    CHECK(finding(marked, "flask-clean").seen.starts_with("Run 2:"));
    CHECK((finding(marked, "flask-clean").seen.find("emptied but not rinsed") != std::string::npos) ==
          emptied);
    CHECK(finding(marked, "one-aliquot").met);
    CHECK(finding(marked, "indicator").met);
  }
}

TEST_CASE("two aliquots in one flask cost about a second titre") {
  RunPlan plan;
  plan.aliquots = 2;
  BenchHands hands;
  hands.protect();
  hands.run("1", plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "one-aliquot").met);
  CHECK(finding(marked, "one-aliquot").seen == "Run 1: 2 aliquots went into the flask.");
  REQUIRE(finding(marked, "one-aliquot").cost_cm3);
  CHECK_NEAR(*finding(marked, "one-aliquot").cost_cm3, marked.ideal_titre_cm3, 0.2);
  CHECK_NEAR(finding(marked, "titrant-volume").points, 0.0, 0.0);
}

TEST_CASE("a flask that never stood on the tile is seen") {
  BenchHands hands;
  hands.protect();
  RunPlan plan;
  plan.tile = false;
  hands.run("1", plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "white-tile").met);
  CHECK(finding(marked, "swirled").met);
}

TEST_CASE("indicator: the same number in every run, one to five drops") {
  struct Trial {
    int first, second;
    bool met;
  };
  for (const Trial& trial :
       {Trial{2, 2, true}, Trial{5, 5, true}, Trial{2, 3, false}, Trial{6, 6, false}, Trial{0, 0, false}}) {
    BenchHands hands;
    hands.protect();
    RunPlan plan;
    plan.indicator_drops = trial.first;
    hands.run("1", plan);
    plan.indicator_drops = trial.second;
    hands.run("2", plan);
    CAPTURE(trial.first);
    CAPTURE(trial.second);
    CHECK(finding(mark(hands.hand_in()), "indicator").met == trial.met);
  }
}

TEST_CASE("titrant past equivalence earns the points of the level's bands") {
  struct Trial {
    double past_cm3;
    double points;
  };
  // A drop is just under 0.05 cm3: stopping at the first drop past these lands in the band named in the
  // level.
  for (const Trial& trial : {Trial{0.052, 4.0}, Trial{0.11, 2.0}, Trial{0.25, 1.0}, Trial{0.6, 0.0}}) {
    BenchHands hands;
    hands.protect();
    RunPlan plan;
    plan.past_cm3 = trial.past_cm3;
    hands.run("1", plan);
    const MarkedAttempt marked = mark(hands.hand_in());
    CAPTURE(trial.past_cm3);
    const Finding& volume = finding(marked, "titrant-volume");
    CHECK_NEAR(volume.points, trial.points, 0.0);
    CHECK(!volume.met);
    REQUIRE(volume.cost_cm3);
    CHECK_NEAR(*volume.cost_cm3, trial.past_cm3, 0.055);
  }
}

TEST_CASE("air in the jet is volume too: it costs points by the bands, its criterion apart") {
  BenchHands hands;
  hands.protect();
  RunPlan dry;
  dry.fill_jet = false;
  hands.run("1", dry);
  const MarkedAttempt marked = mark(hands.hand_in());
  // 0.25 cm3 of air and half a drop past the end: the level gives 1 point up to 0.40.
  CHECK_NEAR(finding(marked, "titrant-volume").points, 1.0, 0.0);
}

TEST_CASE("the pipette's own error is not the hand's") {
  BenchHands hands;
  hands.protect();
  RunPlan plan;
  plan.past_cm3 = 0.052;
  hands.run("1", plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  const TitreBreakdown& parts = *test::titre(marked, "1").breakdown;
  REQUIRE(std::fabs(parts.of(Cause::aliquot)) > 0.02);
  REQUIRE(finding(marked, "titrant-volume").cost_cm3);
  CHECK_NEAR(*finding(marked, "titrant-volume").cost_cm3,
             parts.of(Cause::overshoot) + parts.of(Cause::indicator_blank), 1e-3);
}

TEST_CASE("a run stopped short of its endpoint is told so, even where its titre comes out right") {
  // Two aliquots, and titrant for one: what is wrong with the flask and with the titre cancel.
  BenchHands hands;
  hands.protect();
  RunPlan plan;
  plan.aliquots = 2;
  plan.past_cm3 = -23.5;
  hands.run("1", plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  const Finding& endpoint = finding(marked, "endpoint-reached");
  CHECK(!endpoint.met);
  REQUIRE(endpoint.cost_cm3);
  CHECK_NEAR(*endpoint.cost_cm3, -23.5, 0.1);
  CHECK(endpoint.seen.starts_with(
      "Run 1: the flask did not show its change at the final reading: it wanted 23."));
  const Finding& volume = finding(marked, "titrant-volume");
  CHECK_NEAR(volume.points, 0.0, 0.0);
  CHECK(volume.seen.find("−23.") != std::string::npos);
}

TEST_CASE("titrant left on the wall does not hide that the flask stopped short") {
  BenchHands hands;
  hands.protect();
  RunPlan plan;
  plan.past_cm3 = -0.30;
  hands.run("1", plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "endpoint-reached").met);
  CHECK_NEAR(finding(marked, "titrant-volume").points, 1.0, 0.0);  // the level: 1 point up to 0.40
}

TEST_CASE("without indicator there is no endpoint to stop at, however lucky the stop") {
  BenchHands hands;
  hands.protect();
  RunPlan blind;
  blind.indicator_drops = 0;
  hands.run("1", blind);
  hands.run("2");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(finding(marked, "endpoint-reached").seen ==
        "Run 1: the flask had no indicator, so no endpoint to stop at.");
  // Half of the runs that count can earn the volume's 6 points.
  CHECK_NEAR(finding(marked, "titrant-volume").points, 3.0, 0.0);
  CHECK(finding(marked, "indicator").advice.find("without indicator") != std::string::npos);
}

TEST_CASE("titrant in the beaker is not called titrant on the bench") {
  for (const bool beaker : {true, false}) {
    BenchHands hands;
    hands.protect();
    hands.fill_burette(0.5);
    hands.fill_jet();
    hands.prepare_flask(2);
    hands.read("1/initial");
    if (beaker) hands.act(Deed::put_beaker_under);
    HandsChange change;
    change.tap = 0.3 + 0.4;
    hands.hold(change);
    hands.wait(2.0);
    change.tap = 0.0;
    hands.hold(change);
    hands.wait(1.0);
    if (beaker) hands.act(Deed::take_beaker_away);
    change.flask_x_cm = 0.0;
    hands.hold(change);
    hands.titrate({});
    hands.read("1/final");
    const Finding into = finding(mark(hands.hand_in()), "into-the-flask");
    CAPTURE(into.seen);
    CHECK(!into.met);
    CHECK((into.seen.find("into the beaker") != std::string::npos) == beaker);
    CHECK((into.seen.find("beside the flask") != std::string::npos) == !beaker);
  }
}

TEST_CASE("the runs that are ticked decide the titrant volume") {
  BenchHands hands;
  hands.protect();
  RunPlan splash;
  splash.past_cm3 = 1.0;
  hands.run("1", splash);
  hands.run("2");
  hands.run("3");
  hands.tick_and_calculate({"2", "3"});
  CHECK(finding(mark(hands.hand_in()), "titrant-volume").met);
}

TEST_CASE("a burette refilled between its readings is named") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(10.0);
  hands.fill_jet();
  hands.prepare_flask(2);
  hands.read("1/initial");
  hands.fill_burette(5.0);
  HandsChange under;
  under.flask_x_cm = 0.0;
  hands.hold(under);
  hands.titrate({});
  hands.read("1/final");
  const MarkedAttempt marked = mark(hands.hand_in());
  const Finding* refill = test::find(marked, "not-refilled");
  REQUIRE(refill != nullptr);
  CHECK(!refill->met);
  CHECK(*refill->cost_cm3 < -5.0);
}

TEST_CASE(
    "wet flask, washing down, a start off zero and a third run are named as harmless and cost nothing") {
  BenchHands hands;
  hands.protect();
  for (const char* run : {"1", "2", "3"}) hands.run(run);
  hands.tick_and_calculate({"1", "2", "3"});
  const MarkedAttempt marked = mark(hands.hand_in());
  for (const char* id :
       {"harmless-wet-flask", "harmless-washing-down", "harmless-not-from-zero", "harmless-third-run"}) {
    CAPTURE(id);
    const Finding* harmless = test::find(marked, id);
    REQUIRE(harmless != nullptr);
    CHECK(harmless->met);
    CHECK_NEAR(harmless->of, 0.0, 0.0);
    CHECK(harmless->seen.find("Harmless") != std::string::npos);
  }
}

TEST_CASE("what did not occur is not called harmless") {
  BenchHands hands;
  hands.protect();
  RunPlan plan;
  plan.wash_down = false;
  hands.run("1", plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  for (const char* id : {"harmless-wet-flask", "harmless-washing-down", "harmless-third-run"}) {
    CHECK(test::find(marked, id) == nullptr);
  }
}

TEST_CASE("a trial that went past the endpoint is harmless while it is kept out of the mean") {
  BenchHands hands;
  hands.whole_attempt();  // its trial goes 0.3 cm³ past
  const Attempt attempt = hands.hand_in();
  const Finding* harmless = test::find(mark(attempt), "harmless-trial-past-the-end");
  REQUIRE(harmless != nullptr);
  const MarkedAttempt counted = mark(test::rewritten(attempt, "trial/counts", "yes", 0.0));
  CHECK(test::find(counted, "harmless-trial-past-the-end") == nullptr);
}

TEST_CASE("filling the burette up between two runs is harmless") {
  BenchHands hands;
  hands.protect();
  RunPlan plan;
  for (const char* run : {"1", "2", "3"}) hands.run(run, plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  double last_cm3 = -1.0;
  bool refilled = false;
  for (const TitreRow& row : marked.titres) {
    refilled = refilled || *row.initial_cm3 < last_cm3;
    last_cm3 = *row.final_cm3;
  }
  CHECK(refilled);  // three titres of 21 cm³ do not fit one burette
  CHECK(test::find(marked, "harmless-refilled-between-runs") != nullptr);
}

}  // namespace
}  // namespace halfdrop

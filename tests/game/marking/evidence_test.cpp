// What the evidence says of things done at the bench, one at a time.

#include "game/marking/evidence.h"

#include <doctest/doctest.h>

#include "physics/burette/tap.h"
#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::finding;

HandsChange tap(double position) {
  HandsChange change;
  change.tap = position;
  return change;
}

HandsChange pour(double tilt) {
  HandsChange change;
  change.pour = tilt;
  return change;
}

/// The evidence of an attempt, gathered as marking gathers it.
Evidence evidence_of(const Attempt& attempt) {
  Evidence evidence;
  ReadingMoments moments;
  ReplayWatcher watcher;
  watcher.after_tick = [&](const Session& session) {
    moments.after_tick(session);
    evidence.after_tick(session);
  };
  watcher.before_change = [&](const Session& session, const Change& change) {
    moments.before_change(session, change);
  };
  watcher.after_change = [&](const Session& session, const Change& change) {
    moments.after_change(session, change);
    evidence.after_change(session, change);
  };
  const Replay again = replay(attempt, watcher);
  REQUIRE(again.outcome.reproduced);
  evidence.runs = moments.runs().evidence;
  return evidence;
}

TEST_CASE("titrant poured while it runs through the groove alone was poured with the tap open") {
  BenchHands hands;
  hands.protect();
  hands.act(Deed::put_in_funnel);
  constexpr double kGroove = 0.55;
  REQUIRE(tap_opening(hands.spec().tap, kGroove).area_mm2 <= 0.0);
  hands.hold(tap(kGroove));
  hands.hold(pour(1.0));
  hands.wait(5.0);
  hands.hold(pour(0.0));
  const double ran_cm3 = hands.bench().ledger.moved(Account::column, Account::jet).volume_cm3();
  const Evidence evidence = evidence_of(hands.session().attempt());
  REQUIRE(ran_cm3 > 0.01);
  CHECK(evidence.poured_tap_open);
  CHECK_NEAR(evidence.ran_through_cm3, ran_cm3, 0.01);
}

TEST_CASE("titrant poured into a shut burette was poured with the tap shut") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(10.0);
  const Evidence evidence = evidence_of(hands.session().attempt());
  CHECK(!evidence.poured_tap_open);
  CHECK(evidence.poured_cm3 > 30.0);
  CHECK_NEAR(evidence.ran_through_cm3, 0.0, 0.0);
}

TEST_CASE("a sheet that was left is not handed in") {
  BenchHands hands;
  hands.session().end("left");
  CHECK(!evidence_of(hands.session().attempt()).ended);
  CHECK(!finding(mark(hands.session().attempt()), "handed-in").met);
  BenchHands other;
  CHECK(evidence_of(other.hand_in()).ended);
}

TEST_CASE("figures written without any liquid are runs in which nothing was done") {
  BenchHands hands;
  hands.write("1/initial", "0.45");
  hands.wait(1.0);
  hands.write("1/final", "24.00");
  hands.write("2/initial", "0.50");
  hands.write("2/final", "24.05");
  const Evidence evidence = evidence_of(hands.session().attempt());
  for (const char* run : {"1", "2"}) {
    CAPTURE(run);
    const RunEvidence& done = evidence.runs.at(run);
    REQUIRE(done.flask);
    CHECK(done.flask->untouched());
    CHECK(done.flask->before == FlaskUse::Before::first_use);
    CHECK(!done.poured_away_before_final);
  }
  CHECK(!evidence.first_liquid);
}

TEST_CASE("a drop that falls into a still flask is stirred in only by swirling soon after") {
  for (const bool soon : {true, false}) {
    CAPTURE(soon);
    BenchHands hands;
    hands.protect();
    hands.fill_burette(1.0);
    hands.fill_jet();
    hands.prepare_flask(2);
    hands.read("1/initial");
    HandsChange under;
    under.flask_x_cm = 0.0;
    hands.hold(under);
    hands.hold(tap(hands.tap_for(4.0)));
    hands.wait(1.2);
    hands.hold(tap(0.0));
    hands.wait(soon ? 0.5 : 4.0);
    HandsChange swirl;
    swirl.swirl = 1.0;
    hands.hold(swirl);
    hands.wait(1.0);
    hands.read("1/final");
    const FlaskUse flask = *evidence_of(hands.session().attempt()).runs.at("1").flask;
    REQUIRE(flask.entered_cm3 > 0.1);
    CHECK_NEAR(flask.swirled_in_cm3, soon ? flask.entered_cm3 : 0.0, 1e-9);
  }
}

TEST_CASE("what a deed that the bench refused would have moved is not in the evidence") {
  BenchHands hands;
  CHECK(hands.session().act(Deed::deliver_aliquot).has_value());
  hands.wait(0.1);
  CHECK(!evidence_of(hands.session().attempt()).first_liquid);
}

}  // namespace
}  // namespace halfdrop

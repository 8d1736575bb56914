#include <doctest/doctest.h>

#include <algorithm>

#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::finding;
using test::with_text;

const Attempt& rightly_done() {
  static const Attempt attempt = [] {
    BenchHands hands;
    hands.whole_attempt();
    return hands.hand_in();
  }();
  return attempt;
}

MarkedAttempt marked_with(const std::string& cell, const std::string& text) {
  return mark(with_text(rightly_done(), cell, text));
}

// Table conventions of the trade (boards' mark schemes, as listed in our notes on practice): every accurate
// reading to 0.05 with two decimals, 0.00 included; 50.00 is no initial reading; two titres within 0.10.

TEST_CASE("readings want two decimals, the second 0 or 5") {
  CHECK(finding(marked_with("trial/final", "21.50"), "two-decimals").met);
  for (const char* text : {"21.5", "21", "21.52", "21.500", "2.150e1", ".50", "-1.50", "about 21.50"}) {
    CAPTURE(text);
    const MarkedAttempt marked = marked_with("trial/final", text);
    CHECK(!finding(marked, "two-decimals").met);
    CHECK(finding(marked, "two-decimals").seen.starts_with("Trial run, final reading"));
  }
}

TEST_CASE("a titre that is missing leaves the table incomplete, the trial's too") {
  CHECK(finding(mark(rightly_done()), "table-complete").met);
  for (const char* cell : {"trial/titre", "1/titre", "2/final", "trial/initial"}) {
    CAPTURE(cell);
    CHECK(!finding(marked_with(cell, ""), "table-complete").met);
  }
}

TEST_CASE("a sheet without a trial run is incomplete") {
  BenchHands hands;
  hands.protect();
  hands.run("1");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "table-complete").met);
  CHECK(finding(marked, "table-complete").seen.find("trial run") != std::string::npos);
}

TEST_CASE("readings off the scale are none: 50.00 to start with, beyond 50, above 0") {
  CHECK(!finding(marked_with("1/initial", "50.00"), "on-the-scale").met);
  CHECK(!finding(marked_with("1/final", "50.05"), "on-the-scale").met);
  CHECK(!finding(marked_with("1/initial", "-0.05"), "on-the-scale").met);
  CHECK(finding(marked_with("1/final", "50.00"), "on-the-scale").met);
  CHECK(finding(marked_with("1/initial", "0.00"), "on-the-scale").met);
}

TEST_CASE("ticked titres must lie within 0.10 of each other, and 0.10 itself is within") {
  Attempt attempt = rightly_done();
  for (const char* run : {"1", "2"}) {
    attempt = with_text(attempt, std::string(run) + "/initial", "1.00");
    attempt = with_text(attempt, std::string(run) + "/final", "21.00");
  }
  CHECK(finding(mark(with_text(attempt, "2/final", "21.10")), "concordance").met);
  CHECK(finding(mark(with_text(attempt, "2/final", "20.90")), "concordance").met);
  CHECK(!finding(mark(with_text(attempt, "2/final", "21.15")), "concordance").met);
}

TEST_CASE("one ticked titre is not concordant with itself, nor is the trial company for it") {
  CHECK(!finding(marked_with("2/counts", ""), "concordance").met);
  Attempt trial_ticked = rightly_done();
  for (Change& change : trial_ticked.changes) {
    auto* writing = std::get_if<Writing>(&change.what);
    if (writing && writing->cell == "2/counts") writing->cell = "trial/counts";
  }
  CHECK(!finding(mark(trial_ticked), "concordance").met);
  CHECK(!finding(mark(trial_ticked), "trial-kept-out").met);
}

TEST_CASE("a reading that was changed is seen, however soon; a tick or a titre may be put right") {
  const MarkedAttempt changed = mark(test::rewritten(rightly_done(), "1/final", "20.00", 2.0));
  CHECK(!finding(changed, "nothing-overwritten").met);
  CHECK(finding(changed, "nothing-overwritten").seen.find("run 1, final, 1 time") != std::string::npos);
  CHECK(finding(mark(test::rewritten(rightly_done(), "1/titre", "20.00", 2.0)), "nothing-overwritten").met);
  CHECK(finding(mark(test::rewritten(rightly_done(), "1/counts", "", 2.0)), "nothing-overwritten").met);
}

TEST_CASE("writing the same reading again changes nothing") {
  Attempt attempt = rightly_done();
  const auto written = std::find_if(attempt.changes.begin(), attempt.changes.end(), [](const Change& change) {
    const auto* writing = std::get_if<Writing>(&change.what);
    return writing && writing->cell == "1/final";
  });
  attempt.changes.insert(written, *written);
  CHECK(finding(mark(attempt), "nothing-overwritten").met);
}

TEST_CASE("a final reading written after the flask was emptied was not written at the time") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.prepare_flask(2);
  hands.read("1/initial");
  HandsChange flask;
  flask.flask_x_cm = 0.0;
  hands.hold(flask);
  hands.titrate({});
  flask.flask_x_cm = 26.0;
  hands.hold(flask);
  hands.act(Deed::rinse_flask);
  hands.read("1/final");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "written-at-the-time").met);
  CHECK(finding(marked, "written-at-the-time").seen.find("emptied") != std::string::npos);
}

TEST_CASE("an initial reading written once titrant has run in was not written at the time") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.prepare_flask(2);
  HandsChange flask;
  flask.flask_x_cm = 0.0;
  hands.hold(flask);
  hands.titrate({});
  hands.read("1/initial");
  hands.read("1/final");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "written-at-the-time").met);
  CHECK(finding(marked, "written-at-the-time").seen.find("had run in") != std::string::npos);
}

TEST_CASE("no titre ticked is no concordance, no mean and no crash") {
  Attempt attempt = rightly_done();
  std::erase_if(attempt.changes, [](const Change& change) {
    const auto* writing = std::get_if<Writing>(&change.what);
    return writing && writing->cell.ends_with("/counts");
  });
  const MarkedAttempt marked = mark(attempt);
  CHECK(test::unmet(marked) == "concordance, trial-kept-out, mean-titre");
}

}  // namespace
}  // namespace halfdrop

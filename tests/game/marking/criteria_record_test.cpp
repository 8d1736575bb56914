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

TEST_CASE("a slip of the pen put right at once is none; a reading changed later is seen") {
  const MarkedAttempt at_once = mark(test::rewritten(rightly_done(), "1/final", "20.00", 2.0));
  CHECK(finding(at_once, "nothing-overwritten").met);
  CHECK(finding(at_once, "nothing-overwritten").seen.starts_with("A slip of the pen was put right at once"));
  const MarkedAttempt later = mark(test::rewritten(rightly_done(), "1/initial", "20.00", 32.0));
  CHECK(!finding(later, "nothing-overwritten").met);
  CHECK(finding(later, "nothing-overwritten").seen.find("became “20.00”") != std::string::npos);
  CHECK(finding(later, "nothing-overwritten").advice.find("Look twice") != std::string::npos);
  CHECK(finding(mark(test::rewritten(rightly_done(), "1/titre", "20.00", 40.0)), "nothing-overwritten").met);
  CHECK(finding(mark(test::rewritten(rightly_done(), "1/counts", "", 40.0)), "nothing-overwritten").met);
}

TEST_CASE("a final reading changed when its flask is gone is worse than a slip") {
  const MarkedAttempt marked = mark(test::rewritten(rightly_done(), "1/final", "20.00", 60.0));
  CHECK(!finding(marked, "nothing-overwritten").met);
  CHECK(finding(marked, "nothing-overwritten").seen.find("when its flask had been emptied") !=
        std::string::npos);
  CHECK(finding(marked, "nothing-overwritten").advice.find("do another run") != std::string::npos);
}

TEST_CASE("what cannot be read as a number is named as it stands; a comma and a unit are read") {
  const MarkedAttempt marked = marked_with("1/final", "abc");
  CHECK(finding(marked, "two-decimals").seen == "Run 1, final reading: “abc” cannot be read as a number.");
  CHECK(finding(marked, "table-complete").seen == "Run 1, final: “abc” cannot be read as a number.");
  CHECK(!finding(marked, "on-the-scale").met);
  Attempt comma = rightly_done();
  for (Change& change : comma.changes) {
    auto* writing = std::get_if<Writing>(&change.what);
    if (writing == nullptr || writing->text.find('.') == std::string::npos) continue;
    writing->text.replace(writing->text.find('.'), 1, ",");
    if (writing->cell.ends_with("/final")) writing->text += " cm3";
  }
  CHECK(test::unmet(mark(comma)) == "");
}

TEST_CASE("figures written with an empty burette earn nothing, and that is said once") {
  BenchHands hands;
  hands.protect();
  for (const char* run : {"trial", "1", "2"}) {
    hands.write(std::string(run) + "/initial", "0.45");
    hands.wait(40.0);
    hands.write(std::string(run) + "/final", "24.00");
    hands.write(std::string(run) + "/titre", "23.55");
  }
  hands.tick_and_calculate({"1", "2"});
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK_NEAR(marked.marks.total, 0.0, 0.0);
  CHECK(test::unmet(marked) ==
        "hand-not-judged, eye-not-judged, readings-taken, record-not-judged, arithmetic-not-judged");
  CHECK(finding(marked, "readings-taken").seen.find("nothing was in the burette") != std::string::npos);
  for (const TitreRow& row : marked.titres) CHECK(!row.breakdown);
  const Attempt& right = rightly_done();
  CHECK_NEAR(marked.marks.of, mark(right).marks.of, 0.0);
}

TEST_CASE("a titre with nothing run out between its readings was not measured; the other runs count") {
  BenchHands hands;
  hands.whole_attempt();
  hands.write("3/initial", "1.00");
  hands.wait(1.0);
  hands.write("3/final", "25.00");
  hands.write("3/titre", "24.00");
  hands.write("3/counts", "yes");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(finding(marked, "readings-taken").seen.starts_with("Run 3: nothing ran out of the burette"));
  CHECK(finding(marked, "concordance").met);
  CHECK(finding(marked, "flask-clean").met);
  CHECK(finding(marked, "mean-titre").seen.find("run 3, which was never measured") != std::string::npos);
}

TEST_CASE("an attempt that was left was not handed in") {
  BenchHands hands;
  hands.whole_attempt();
  hands.session().end("left");
  CHECK(!finding(mark(hands.session().attempt()), "handed-in").met);
  CHECK(finding(mark(rightly_done()), "handed-in").met);
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

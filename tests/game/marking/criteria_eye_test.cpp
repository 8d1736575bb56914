#include <doctest/doctest.h>

#include <cmath>

#include "physics/burette/column.h"
#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::finding;
using test::RunPlan;

const Attempt& rightly_done() {
  static const Attempt attempt = [] {
    BenchHands hands;
    hands.whole_attempt();
    return hands.hand_in();
  }();
  return attempt;
}

std::string text_in(const Attempt& attempt, const std::string& cell) {
  std::string text;
  for (const Change& change : attempt.changes) {
    const auto* writing = std::get_if<Writing>(&change.what);
    if (writing && writing->cell == cell) text = writing->text;
  }
  return text;
}

std::string shifted(const std::string& reading, double by_cm3) {
  std::string text = std::to_string(std::stod(reading) + by_cm3 + 1e-9);
  return text.substr(0, text.find('.') + 3);
}

TEST_CASE("an eye held above the meniscus is seen, though what it saw was written rightly") {
  RunPlan plan;
  plan.eye_above_mm = 60.0;
  BenchHands hands;
  hands.whole_attempt(plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "eye-level").met);
  CHECK(finding(marked, "eye-level").seen.find("above the meniscus") != std::string::npos);
  CHECK(finding(marked, "readings-right").met);
  // Snell by hand for 60 mm up and 300 mm away: 1.02 mm of glass and 5.38 of liquid shift the axis by 0.924
  // mm; the tangent to the bowl, curvature 0.111 per mm, passes it 0.097 mm lower; 11 mm a cubic centimetre.
  const double parallax_cm3 = (0.924 - 0.097) / 11.0;
  REQUIRE(finding(marked, "eye-level").cost_cm3);
  CHECK_NEAR(std::fabs(*finding(marked, "eye-level").cost_cm3), parallax_cm3, 0.001);
}

TEST_CASE("an eye a centimetre off still counts as level, two do not") {
  for (const double above_mm : {-10.0, 10.0, 20.0, -20.0}) {
    RunPlan plan;
    plan.eye_above_mm = above_mm;
    BenchHands hands;
    hands.protect();
    hands.run("1", plan);
    CAPTURE(above_mm);
    CHECK(finding(mark(hands.hand_in()), "eye-level").met == (std::fabs(above_mm) < 15.0));
  }
}

TEST_CASE("a head that never moves costs the eye its points") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.prepare_flask(2);
  const auto read_from_the_middle = [&](const std::string& cell) {
    const double mark_cm3 =
        scale_reading_cm3(hands.spec().burette, hands.bench().ledger.balance(Account::column).volume_cm3());
    hands.read(cell, (mark_cm3 - 12.5) * 11.0);
  };
  read_from_the_middle("1/initial");
  HandsChange under;
  under.flask_x_cm = 0.0;
  hands.hold(under);
  hands.titrate({});
  read_from_the_middle("1/final");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "eye-level").met);
  const Finding& error = finding(marked, "reading-error");
  CHECK(!error.met);
  CHECK_NEAR(error.points, 0.0, 0.0);
  REQUIRE(error.cost_cm3);
  CHECK(*error.cost_cm3 < -0.25);  // the trade says -0.3 to -0.4 for 0 and 25; this titre is shorter
}

TEST_CASE("a final reading a tenth too high is a misreading, and its size is its cost") {
  const Attempt& right = rightly_done();
  const Attempt attempt = test::with_text(right, "1/final", shifted(text_in(right, "1/final"), 0.10));
  const MarkedAttempt marked = mark(attempt);
  const Finding& reading = finding(marked, "readings-right");
  CHECK(!reading.met);
  CHECK(reading.seen.starts_with("Run 1:"));
  REQUIRE(reading.cost_cm3);
  CHECK_NEAR(*reading.cost_cm3, 0.10, 0.026);
  CHECK(finding(marked, "eye-level").met);
}

TEST_CASE("the upper edge of the meniscus is named as such") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(0.5);
  hands.fill_jet();
  const std::string bottom = hands.read("1/initial");
  // 3.41 mm of meniscus are 0.31 cm3 on this scale: the edge stands that much higher, which reads lower.
  const Attempt attempt = test::with_text(hands.session().attempt(), "1/initial", shifted(bottom, -0.30));
  const MarkedAttempt marked = mark(attempt);
  CHECK(!finding(marked, "readings-right").met);
  CHECK(finding(marked, "readings-right").seen.find("upper edge") != std::string::npos);
}

TEST_CASE("the same slip at both readings cancels in the titre, not in the readings") {
  const Attempt& right = rightly_done();
  Attempt attempt = test::with_text(right, "1/final", shifted(text_in(right, "1/final"), 0.10));
  attempt = test::with_text(attempt, "1/initial", shifted(text_in(right, "1/initial"), 0.10));
  const MarkedAttempt marked = mark(attempt);
  CHECK(!finding(marked, "readings-right").met);
  CHECK(finding(marked, "reading-error").met);
}

TEST_CASE("reading errors earn the points of the level's bands, rounding apart") {
  const Attempt& right = rightly_done();
  struct Trial {
    double off_cm3, points;
  };
  // The level: within 0.03 all 4, within 0.05 2, within 0.10 1.
  for (const Trial& trial : {Trial{0.0, 4.0}, Trial{0.20, 0.0}, Trial{1.0, 0.0}}) {
    Attempt attempt = right;
    for (const char* cell : {"1/final", "2/final"}) {
      attempt = test::with_text(attempt, cell, shifted(text_in(right, cell), trial.off_cm3));
    }
    const MarkedAttempt marked = mark(attempt);
    const Finding& error = finding(marked, "reading-error");
    CAPTURE(trial.off_cm3);
    CHECK_NEAR(error.points, trial.points, 0.0);
    REQUIRE(error.cost_cm3.has_value() != error.met);  // full marks cost nothing
    if (error.cost_cm3) CHECK_NEAR(*error.cost_cm3, trial.off_cm3, 1e-6);
  }
}

TEST_CASE("one reading in two off by a tenth is half a tenth on average") {
  const Attempt& right = rightly_done();
  const MarkedAttempt marked =
      mark(test::with_text(right, "1/final", shifted(text_in(right, "1/final"), 0.10)));
  CHECK_NEAR(finding(marked, "reading-error").points, 2.0, 0.0);
}

TEST_CASE("a reading within half a division of what the eye saw is right, a finer one too") {
  // Common practice: a burette is read to +-0.05. What the eye saw lies within 0.025 of what was written.
  const Attempt& right = rightly_done();
  const std::string read = text_in(right, "1/final");
  for (const double off_cm3 : {-0.02, -0.01, 0.02}) {
    CAPTURE(off_cm3);
    const MarkedAttempt marked = mark(test::with_text(right, "1/final", shifted(read, off_cm3)));
    CHECK(finding(marked, "readings-right").met);
    CHECK(finding(marked, "reading-error").met);
    CHECK(!finding(marked, "two-decimals").met);  // the form is the record's business
  }
  CHECK(!finding(mark(test::with_text(right, "1/final", shifted(read, 0.08))), "readings-right").met);
}

TEST_CASE("initial and final in each other's place are named, and paid for once") {
  Attempt attempt = rightly_done();
  const std::string initial = text_in(attempt, "1/initial");
  const std::string final = text_in(attempt, "1/final");
  attempt = test::with_text(test::with_text(attempt, "1/initial", final), "1/final", initial);
  const MarkedAttempt marked = mark(attempt);
  CHECK(test::unmet(marked) == "table-complete");
  CHECK(finding(marked, "table-complete").seen == "Run 1: initial and final stand in each other's place.");
}

TEST_CASE("readings written when they were taken, into each other's row, are paid for once too") {
  Attempt attempt = rightly_done();
  for (Change& change : attempt.changes) {
    auto* writing = std::get_if<Writing>(&change.what);
    if (writing == nullptr) continue;
    const bool initial = writing->cell == "1/initial";
    if (initial || writing->cell == "1/final") writing->cell = initial ? "1/final" : "1/initial";
  }
  const MarkedAttempt marked = mark(attempt);
  CHECK(test::unmet(marked) == "table-complete");
  CHECK(finding(marked, "table-complete").seen == "Run 1: initial and final stand in each other's place.");
}

}  // namespace
}  // namespace halfdrop

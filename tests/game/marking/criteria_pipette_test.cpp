// A pipette worked by hand, done wrong by a known size: the criterion sees it, and the breakdown brings that
// size back as `aliquot` and nowhere else.

#include <doctest/doctest.h>

#include <cmath>

#include "game/session/view.h"
#include "physics/bench/pipette_by_hand.h"
#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::held;

struct Slip {
  double above_line_mm = 0.0, eye_above_mm = 0.0;
  bool wiped = true;
  double drains_s = 6.0;
};

Level by_hand() {
  Level level = test::spirit_vinegar();
  level.pipette.by_hand = true;
  return level;
}

void valve_until(BenchHands& hands, double valve, double level_mm) {
  const bool down = valve > 0.0;
  hands.hold(held(&HandsChange::valve, valve));
  while ((pipette_level_mm(hands.spec(), hands.bench()) > level_mm) == down) hands.session().tick();
  hands.hold(held(&HandsChange::valve, 0.0));
}

void pipette(BenchHands& hands, const Slip& slip) {
  hands.hold(held(&HandsChange::eye_mm, kPipetteLine_mm + slip.eye_above_mm));
  hands.act(Deed::dip_pipette);
  valve_until(hands, -1.0, 40.0);
  hands.act(Deed::lift_pipette);
  if (slip.wiped) hands.act(Deed::wipe_pipette);
  valve_until(hands, 0.2, slip.above_line_mm + 5.0);
  valve_until(hands, 0.002, slip.above_line_mm);
  hands.act(Deed::lean_pipette);
  hands.hold(held(&HandsChange::valve, 1.0));
  while (!pipette_drains(hands.bench())) hands.session().tick();
  hands.wait(slip.drains_s);
  hands.hold(held(&HandsChange::valve, 0.0));
  hands.act(Deed::lift_pipette);
}

MarkedAttempt marked_with(const Slip& slip) {
  BenchHands hands(by_hand());
  hands.protect();
  hands.act(Deed::lay_tile);
  hands.fill_burette(0.5);
  hands.fill_jet();
  pipette(hands, slip);
  for (int i = 0; i < 2; ++i) hands.act(Deed::add_indicator);
  static_cast<void>(hands.read("1/initial"));
  hands.hold(held(&HandsChange::flask_x_cm, 0.0));
  hands.titrate({});
  static_cast<void>(hands.read("1/final"));
  return mark(hands.session().attempt());
}

const TitreBreakdown& breakdown(const MarkedAttempt& marked) { return *test::titre(marked, "1").breakdown; }

const MarkedAttempt& faultless() {
  static const MarkedAttempt marked = marked_with({});
  return marked;
}

/// What is done to the titre by so much more of the sample.
double in_titre_cm3(double sample_cm3) { return sample_cm3 * breakdown(faultless()).ideal_cm3 / 25.0; }

void check_slip(const Slip& slip, const char* criterion, double more_cm3) {
  const MarkedAttempt marked = marked_with(slip);
  CAPTURE(criterion);
  const Finding& finding = test::finding(marked, criterion);
  CHECK(!finding.met);
  CHECK(finding.tick > 0);
  CHECK(!finding.advice.empty());
  CHECK_NEAR(finding.cost_cm3.value_or(0.0), in_titre_cm3(more_cm3), 0.002);
  CHECK_NEAR(breakdown(marked).remainder_cm3, 0.0, 1e-9);
  for (std::size_t i = 0; i < kCauses; ++i) {
    const auto cause = static_cast<Cause>(i);
    CAPTURE(std::string(cause_id(cause)));
    const double change_cm3 = breakdown(marked).of(cause) - breakdown(faultless()).of(cause);
    // Where it stops is a whole drop's business.
    const bool by_drops = cause == Cause::rounding || cause == Cause::overshoot;
    const double within_cm3 = cause == Cause::aliquot ? 0.002 : by_drops ? 0.06 : 0.005;
    CHECK_NEAR(change_cm3, cause == Cause::aliquot ? in_titre_cm3(more_cm3) : 0.0, within_cm3);
  }
}

}  // namespace

TEST_CASE("a pipette worked rightly by hand meets its criteria, and says so") {
  for (const char* criterion : {"pipette-to-line", "pipette-wiped", "pipette-drained"}) {
    const Finding& finding = test::finding(faultless(), criterion);
    CHECK(finding.met);
    CHECK(finding.points == finding.of);
    CHECK(!finding.seen.empty());
  }
}

TEST_CASE("practised hands are not judged by the line") {
  BenchHands hands;
  hands.whole_attempt();
  CHECK(test::find(mark(hands.session().attempt()), "pipette-to-line") == nullptr);
}

// Practice, constants: about 0.016 cm3 a mm of the neck, 0.08 for 5 mm.
TEST_CASE("five millimetres over the line come back as aliquot, and five below") {
  check_slip({.above_line_mm = 5.0}, "pipette-to-line", 0.08);
  check_slip({.above_line_mm = -5.0}, "pipette-to-line", -0.08);
}

TEST_CASE("what rides over outside comes back as aliquot, and what was not let drain") {
  check_slip({.wiped = false}, "pipette-wiped", kClingsOutside_cm3);
  check_slip({.drains_s = 0.0}, "pipette-drained", -kDrainingFilm_cm3);
}

TEST_CASE("an eye that was off is said beside a line that was missed") {
  const MarkedAttempt marked = marked_with({.above_line_mm = 3.0, .eye_above_mm = -200.0});
  CHECK(test::finding(marked, "pipette-to-line").seen.find("200 mm below it") != std::string::npos);
}

}  // namespace halfdrop

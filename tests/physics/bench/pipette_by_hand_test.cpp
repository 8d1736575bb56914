#include "physics/bench/pipette_by_hand.h"

#include <doctest/doctest.h>

#include "physics/bench/pipette.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

BenchSpec by_hand(double true_cm3 = 24.9871) {
  BenchSpec spec = titration_bench();
  spec.pipette.by_hand = true;
  spec.pipette.true_cm3 = true_cm3;
  return spec;
}

/// A hand at the pipette; the tap is shut, the flask aside, the eye level with the line.
class Hand {
 public:
  explicit Hand(const BenchSpec& spec) : spec_(spec), state(lay_out(spec)) {
    state.hands.tap = 0.0;
    state.hands.eye_mm = kPipetteLine_mm;
  }
  void act(Deed deed) {
    const auto refused = check(spec_, state, deed);
    REQUIRE_MESSAGE(!refused.has_value(), static_cast<int>(*refused));
    apply(spec_, state, deed);
  }
  void hold(double valve, double for_s) {
    state.hands.valve = valve;
    run(spec_, state, state.hands, for_s);
    state.hands.valve = 0.0;
  }
  void fill() {
    act(Deed::dip_pipette);
    hold(-1.0, 12.0);
    act(Deed::lift_pipette);
  }
  /// Lets down until the level is seen so far above the line.
  void let_down_to(double seen_mm) {
    for (const auto& [from_mm, valve] : {std::pair{5.0, 0.2}, std::pair{0.3, 0.02}, std::pair{0.0, 0.001}}) {
      while (pipette_seen_mm(spec_, state) > seen_mm + from_mm) hold(valve, kSecondsPerTick);
    }
  }
  double run_out(Deed where, double waits_s) {
    act(where);
    hold(1.0, 40.0);
    for (double left_s = waits_s; left_s > 0.0; left_s -= 0.5) hold(0.0, 0.5);
    return cm3(state, Account::flask);
  }

 private:
  const BenchSpec& spec_;

 public:
  BenchState state;
};

double delivered(const BenchSpec& spec, bool wiped, Deed where, double seen_mm = 0.0) {
  Hand hand(spec);
  hand.fill();
  if (wiped) hand.act(Deed::wipe_pipette);
  hand.let_down_to(seen_mm);
  return hand.run_out(where, 10.0);
}

}  // namespace

// ISO 648: adjusted to deliver its volume, tip on the wall, after the waiting time.
TEST_CASE("worked rightly the pipette delivers what practised hands deliver") {
  const BenchSpec spec = by_hand();
  Hand hand(spec);
  hand.fill();
  hand.act(Deed::wipe_pipette);
  hand.let_down_to(0.0);
  const double at_line_cm3 = cm3(hand.state, Account::pipette);
  CHECK_NEAR(at_line_cm3, spec.pipette.true_cm3 + kPipetteKeeps_cm3, 0.0005);
  CHECK_NEAR(hand.run_out(Deed::lean_pipette, 6.0), spec.pipette.true_cm3, 0.0005);
  CHECK(quanta(hand.state, Account::pipette) == 0);
  CHECK_NEAR(cm3(hand.state, Account::pipette_wet), kPipetteKeeps_cm3, 1e-9);
}

// Practice, constants: the neck holds about 0.016 cm3 a mm; 5 mm above the mark is 0.08 cm3 too much.
TEST_CASE("five millimetres above the line deliver 0.08 too much, below too little") {
  const BenchSpec spec = by_hand();
  const double right_cm3 = delivered(spec, true, Deed::lean_pipette);
  CHECK_NEAR(delivered(spec, true, Deed::lean_pipette, 5.0) - right_cm3, 0.08, 0.001);
  CHECK_NEAR(delivered(spec, true, Deed::lean_pipette, -5.0) - right_cm3, -0.08, 0.001);
}

// Practice, B 19: 0.02 to 0.05 cm3 ride over on a tip that was not wiped; B 14: 0.03 to 0.1 stay in one that
// touches nothing.
TEST_CASE("an outside that is not wiped brings more; a tip that touches nothing keeps more") {
  const BenchSpec spec = by_hand();
  const double right_cm3 = delivered(spec, true, Deed::lean_pipette);
  const double unwiped_cm3 = delivered(spec, false, Deed::lean_pipette) - right_cm3;
  CHECK(unwiped_cm3 >= 0.02);
  CHECK(unwiped_cm3 <= 0.05);
  const double hangs_cm3 = right_cm3 - delivered(spec, true, Deed::hold_pipette_free);
  CHECK(hangs_cm3 >= 0.03 - 1e-9);
  CHECK(hangs_cm3 <= 0.1);
}

// Class AS of ISO 648 runs out in 15 to 20 s (25 cm3; from memory) and is given 5 s after that (V).
TEST_CASE("it runs out in class AS's time; taken away at once it keeps film, after its waiting time none") {
  const BenchSpec spec = by_hand(25.0);
  Hand hand(spec);
  hand.fill();
  hand.act(Deed::wipe_pipette);
  hand.let_down_to(0.0);
  hand.act(Deed::lean_pipette);
  double runs_s = 0.0;
  while (!pipette_drains(hand.state)) {
    hand.hold(1.0, 0.1);
    runs_s += 0.1;
    REQUIRE(runs_s < 60.0);
  }
  CHECK(runs_s > 15.0);
  CHECK(runs_s < 20.0);
  Hand hasty = hand;
  hasty.act(Deed::lift_pipette);
  CHECK(cm3(hasty.state, Account::flask) < 25.0 - 0.03);
  CHECK(cm3(hasty.state, Account::flask) > 25.0 - 0.1);
  hand.hold(0.0, 4.0);
  CHECK(pipette_drains(hand.state));
  hand.hold(0.0, 1.1);
  CHECK(!pipette_drains(hand.state));
  hand.act(Deed::lift_pipette);
  CHECK_NEAR(cm3(hand.state, Account::flask), 25.0, 0.0005);
}

TEST_CASE("drawn up with its tip out of the liquid it takes in air, which the line counts") {
  const BenchSpec spec = by_hand();
  Hand hand(spec);
  hand.act(Deed::dip_pipette);
  while (pipette_level_mm(spec, hand.state) < -20.0) hand.hold(-0.05, kSecondsPerTick);
  hand.act(Deed::lift_pipette);
  hand.act(Deed::wipe_pipette);
  const double liquid_cm3 = cm3(hand.state, Account::pipette);
  while (pipette_level_mm(spec, hand.state) < 1.0) hand.hold(-0.05, kSecondsPerTick);
  CHECK(cm3(hand.state, Account::pipette) == liquid_cm3);
  hand.let_down_to(0.0);
  CHECK_NEAR(hand.run_out(Deed::lean_pipette, 10.0), spec.pipette.true_cm3 - 21.0 * kStem_cm3_mm, 0.02);
}

// An eye above the line takes a level below it for one on it, and the other way about (Snell, as at the
// burette): from 300 mm above, at the arm's length of 300 mm, by 1 to 4 mm of a stem 7.5 mm wide.
TEST_CASE("an eye above the line sets the level too low, an eye below too high") {
  const BenchSpec spec = by_hand();
  Hand hand(spec);
  hand.fill();
  for (const double eye_mm : {300.0, -300.0}) {
    Hand other = hand;
    other.state.hands.eye_mm = kPipetteLine_mm + eye_mm;
    other.let_down_to(0.0);
    const double off_mm = pipette_level_mm(spec, other.state) * (eye_mm > 0.0 ? -1.0 : 1.0);
    CHECK(off_mm > 1.0);
    CHECK(off_mm < 4.0);
  }
  hand.let_down_to(0.0);
  CHECK_NEAR(pipette_level_mm(spec, hand.state), 0.0, 0.03);
}

TEST_CASE("what cannot be done with a pipette by hand is refused by name") {
  const BenchSpec spec = by_hand(), practised = titration_bench();
  Hand hand(spec);
  CHECK(check(practised, lay_out(practised), Deed::dip_pipette) == Refusal::pipette_practised);
  CHECK(check(spec, hand.state, Deed::fill_pipette) == Refusal::pipette_by_hand);
  CHECK(check(spec, hand.state, Deed::lift_pipette) == Refusal::not_there);
  CHECK(check(spec, hand.state, Deed::wipe_pipette) == Refusal::nothing_to_wipe);
  CHECK(check(spec, hand.state, Deed::lean_pipette) == Refusal::pipette_empty);
  CHECK(check(spec, hand.state, Deed::blow_out_pipette) == Refusal::pipette_empty);
  hand.fill();
  CHECK(check(spec, hand.state, Deed::rinse_pipette_with_sample) == Refusal::pipette_full);
  hand.state.hands.flask_x_cm = 0.0;
  CHECK(check(spec, hand.state, Deed::lean_pipette) == Refusal::flask_under_jet);
  hand.state.hands.flask_x_cm = 26.0;
  hand.act(Deed::lean_pipette);
  CHECK(check(spec, hand.state, Deed::lean_pipette) == Refusal::already_done);
  CHECK(check(spec, hand.state, Deed::dip_pipette) == Refusal::pipette_in_use);
  CHECK(check(spec, hand.state, Deed::rinse_flask) == Refusal::pipette_over_flask);
}

TEST_CASE("held long it is drawn up to the top of its stem and no further") {
  const BenchSpec spec = by_hand();
  Hand hand(spec);
  hand.act(Deed::dip_pipette);
  hand.hold(-1.0, 30.0);
  CHECK_NEAR(pipette_level_mm(spec, hand.state), kStemAboveLine_mm, 1e-6);
}

TEST_CASE("its last drop can be blown out over the flask only") {
  const BenchSpec spec = by_hand();
  Hand hand(spec);
  hand.fill();
  hand.act(Deed::wipe_pipette);
  hand.let_down_to(0.0);
  static_cast<void>(hand.run_out(Deed::lean_pipette, 6.0));
  hand.act(Deed::blow_out_pipette);
  CHECK_NEAR(cm3(hand.state, Account::flask), spec.pipette.true_cm3 + kPipetteKeeps_cm3, 0.0005);
}

}  // namespace halfdrop

#include "physics/bench/clamp.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/bench/flight.h"
#include "physics/bench/reach.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

BenchState held_at(BenchState state, double clamp_mm) {
  state.hands.clamp_mm = clamp_mm;
  return state;
}

/// Bench seconds from letting a drop go until it has arrived somewhere.
double falls_s(const BenchSpec& spec, BenchState& state, double limit_s = 2.0) {
  state.ledger.transfer(Account::titrant_bottle, Account::pendant_drop, volume_quanta(0.05));
  const Hands hands = state.hands;
  let_go(spec, state, state.ledger.balance(Account::pendant_drop), 0.0);
  double s = 0.0;
  for (; s < limit_s && !state.ledger.balance(Account::in_flight).empty(); s += kSecondsPerTick)
    step(spec, state, hands);
  return s;
}

BenchState bare(const BenchSpec& spec) {
  BenchState state = lay_out(spec);
  state.hands.tap = state.plug = 0.0;
  return state;
}

}  // namespace

TEST_CASE("the burette's top is its parts above the tip") {
  // By hand, mm: tip 112, jet 90, below the scale 60, scale 550, 4 cm3 above zero at 11 mm each.
  const BenchSpec spec = titration_bench();
  CHECK_NEAR(top_above_bench_mm(spec, {}), 856.0, 1e-9);
  Hands hands;
  CHECK_FALSE(top_below_eye(spec, hands));
  hands.clamp_mm = -256.0;
  CHECK_FALSE(top_below_eye(spec, hands));
  hands.clamp_mm = -257.0;
  CHECK(top_below_eye(spec, hands));
}

TEST_CASE("a drop from a raised or lowered burette falls for as long as free fall takes") {
  // Source: free fall, t = sqrt(2 h / g), g = 9.80665 m/s2; h from the tip to the drop's underside on the
  // bench.
  const BenchSpec spec = titration_bench();
  const double radius_cm = std::cbrt(3.0 * 0.05 / (4.0 * kPi));
  for (const double clamp_mm : {-60.0, -20.0, 0.0, 15.0, 30.0}) {
    CAPTURE(clamp_mm);
    BenchState state = held_at(bare(spec), clamp_mm);
    const double high_m = 0.01 * (spec.tip_above_bench_cm + 0.1 * clamp_mm - radius_cm);
    CHECK_NEAR(falls_s(spec, state), std::sqrt(2.0 * high_m / 9.80665), 0.011);
    CHECK_NEAR(cm3(state, Account::bench_top), 0.05, 1e-9);
  }
}

TEST_CASE("over the edge a drop falls to the floor, past flask and beaker that stand on the bench") {
  // Source: free fall from 90 cm and the tip's height above the bench.
  const BenchSpec spec = titration_bench();
  for (const bool beaker : {false, true}) {
    BenchState state = held_at(bare(spec), -290.0);
    state.over_edge = true;
    state.beaker_under = beaker;
    state.hands.flask_x_cm = beaker ? 26.0 : 0.0;
    CHECK(under_the_jet(spec, state) == Account::bench_top);
    CHECK_FALSE(flask_under_jet(spec, state));
    const double high_m = 0.01 * (90.0 + spec.tip_above_bench_cm - 29.0);
    CHECK_NEAR(falls_s(spec, state), std::sqrt(2.0 * high_m / 9.80665), 0.011);
    CHECK_NEAR(cm3(state, Account::bench_top), 0.05, 1e-9);
  }
}

TEST_CASE("a drop in the air stays where it is in the room when the burette is moved") {
  const BenchSpec spec = titration_bench();
  BenchState moved = bare(spec), left = bare(spec);
  for (BenchState* state : {&moved, &left}) {
    state->ledger.transfer(Account::titrant_bottle, Account::pendant_drop, volume_quanta(0.05));
    let_go(spec, *state, state->ledger.balance(Account::pendant_drop), 0.0);
    run(spec, *state, state->hands, 0.05);
  }
  moved.hands.clamp_mm = 30.0;
  run(spec, moved, moved.hands, 0.05);
  run(spec, left, left.hands, 0.05);
  CHECK(moved.falling == left.falling);
}

TEST_CASE("the jet is lowered until it would meet bench, liquid or flask, and raised without let") {
  const BenchSpec spec = titration_bench();
  BenchState state = bare(spec);
  state.hands.flask_x_cm = 26.0;
  CHECK_FALSE(in_the_way_of_clamp(spec, state, -101.9));
  CHECK(in_the_way_of_clamp(spec, state, -102.1) == Refusal::bench_in_the_way);
  CHECK_FALSE(in_the_way_of_clamp(spec, held_at(state, -102.0), 30.0));
  // 50 cm3 stand 1.43 cm deep in a cone of 3.5 cm (reach_test), 3 mm are kept clear: 11.2 - 1.73 = 9.47 cm.
  state.ledger.transfer(Account::wash_bottle, Account::flask, volume_quanta(50.0));
  state.hands.flask_x_cm = 0.0;
  CHECK_FALSE(in_the_way_of_clamp(spec, state, -94.0));
  CHECK(in_the_way_of_clamp(spec, state, -95.5) == Refusal::jet_would_dip_down);
  state.hands.flask_x_cm = 2.5;  // beside the neck: the shoulder is below
  CHECK_FALSE(in_the_way_of_clamp(spec, state, -40.0));
  CHECK(in_the_way_of_clamp(spec, state, -80.0) == Refusal::flask_in_the_way);
  state.hands.flask_x_cm = 26.0;
  state.beaker_under = true;
  CHECK_FALSE(in_the_way_of_clamp(spec, state, -100.0));
  // By hand: 100 cm3 in a beaker of 3 cm are 3.54 cm deep.
  state.ledger.transfer(Account::wash_bottle, Account::beaker, volume_quanta(100.0));
  CHECK_FALSE(in_the_way_of_clamp(spec, state, -73.0));
  CHECK(in_the_way_of_clamp(spec, state, -74.0) == Refusal::jet_would_dip_down);
  state.over_edge = true;
  CHECK_FALSE(in_the_way_of_clamp(spec, state, -300.0));
  state.hands.tilt_degrees = 85.0;
  CHECK(in_the_way_of_clamp(spec, state, -10.0) == Refusal::burette_in_hand);
}

TEST_CASE("it is swung only through free space, and nothing while drops fall") {
  const BenchSpec spec = titration_bench();
  BenchState state = bare(spec);
  state.hands.flask_x_cm = 26.0;
  CHECK(check(spec, state, Deed::swing_back) == Refusal::already_done);
  CHECK_FALSE(check(spec, state, Deed::swing_over_edge));
  BenchState under = state;
  under.hands.flask_x_cm = 0.0;
  CHECK(check(spec, under, Deed::swing_over_edge) == Refusal::flask_in_the_way);
  CHECK_FALSE(check(spec, held_at(under, 20.0), Deed::swing_over_edge));  // the jet clears the rim
  BenchState beaker = state;
  beaker.beaker_under = true;
  CHECK_FALSE(check(spec, beaker, Deed::swing_over_edge));
  CHECK(check(spec, held_at(beaker, -40.0), Deed::swing_over_edge) == Refusal::beaker_in_the_way);
  BenchState falls = state;
  falls.ledger.transfer(Account::titrant_bottle, Account::in_flight, volume_quanta(0.05));
  CHECK(check(spec, falls, Deed::swing_over_edge) == Refusal::still_falls);
  BenchState aslant = state;
  aslant.hands.tilt_degrees = 85.0;
  CHECK(check(spec, aslant, Deed::swing_over_edge) == Refusal::burette_in_hand);

  apply(spec, state, Deed::swing_over_edge);
  CHECK(state.over_edge);
  CHECK(check(spec, state, Deed::swing_over_edge) == Refusal::already_done);
  CHECK(check(spec, state, Deed::put_beaker_under) == Refusal::burette_over_edge);
  CHECK(check(spec, held_at(state, -290.0), Deed::swing_back) == Refusal::jet_too_low);
  CHECK_FALSE(check(spec, state, Deed::swing_back));
  state.ledger.transfer(Account::titrant_bottle, Account::pendant_drop, volume_quanta(0.02));
  state.hands.flask_x_cm = 0.0;
  CHECK(check(spec, state, Deed::touch_off_drop) == Refusal::nothing_to_touch);
}

TEST_CASE("a flask does not pass through a jet that hangs low") {
  const BenchSpec spec = titration_bench();
  BenchState state = held_at(bare(spec), -90.0);
  state.hands.flask_x_cm = 26.0;
  CHECK(in_the_way_of_flask(spec, state, 0.0, 0.0) == Refusal::jet_too_low);
  CHECK_FALSE(in_the_way_of_flask(spec, held_at(state, 0.0), 0.0, 0.0));
  state.over_edge = true;
  CHECK_FALSE(in_the_way_of_flask(spec, state, 0.0, 0.0));
}

TEST_CASE("what is touched off from a raised jet clings higher, and above the rim there is no glass") {
  const BenchSpec spec = titration_bench();
  BenchState state = bare(spec);
  state.hands.flask_x_cm = 0.0;
  state.ledger.transfer(Account::titrant_bottle, Account::pendant_drop, volume_quanta(0.02));
  CHECK_FALSE(check(spec, held_at(state, 7.0), Deed::touch_off_drop));
  CHECK(check(spec, held_at(state, 9.0), Deed::touch_off_drop) == Refusal::nothing_to_touch);
}

}  // namespace halfdrop

#include "physics/bench/rigid_world.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/bench/flight.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

/// A bench from whose tip one drop just let go.
BenchState drop_let_go(const BenchSpec& spec) {
  BenchState state = filled_bench(spec);
  const Quanta full = volume_quanta(spec.settled.full_drop_cm3);
  state.ledger.transfer(Account::jet, Account::pendant_drop, full);
  let_go(spec, state, state.ledger.balance(Account::pendant_drop), 0.0);
  return state;
}

/// Lets it fall with the flask's axis at a place; where it ended.
Account landed(const BenchSpec& spec, BenchState state, double flask_x_cm, double flask_y_cm = 0.0) {
  Hands hands = at_rest();
  hands.flask_x_cm = flask_x_cm;
  hands.flask_y_cm = flask_y_cm;
  run(spec, state, hands, 3.0);
  for (const Account end : {Account::flask, Account::flask_wall, Account::beaker, Account::bench_top}) {
    if (!state.ledger.moved(Account::in_flight, end).empty()) return end;
  }
  return Account::in_flight;
}

Account foreseen(const BenchSpec& spec, BenchState state, double flask_x_cm) {
  state.hands.flask_x_cm = flask_x_cm;
  return under_the_jet(spec, state);
}

}  // namespace

// Source: free fall, s = g t^2 / 2 and v = g t with standard gravity 9.80665 m/s2.
TEST_CASE("a drop falls freely, straight down") {
  const BenchSpec spec = titration_bench();
  BenchState state = drop_let_go(spec);
  Hands hands = at_rest();
  hands.flask_x_cm = 26.0;
  for (int tick = 1; tick <= 30; ++tick) {
    step(spec, state, hands);
    const FallingDrop& drop = state.falling[0];
    REQUIRE(drop.flying);
    const double t = tick * kSecondsPerTick;
    CHECK(drop.x_cm == 0.0);
    CHECK(drop.across_cm_s == 0.0);
    CHECK_NEAR(drop.speed_cm_s, 980.665 * t, 0.01);
    // Whole ticks overtake the parabola by g t dt / 2.
    CHECK_NEAR(drop.fallen_cm, 980.665 * t * t / 2.0, 980.665 * t * kSecondsPerTick / 2.0 + 0.01);
  }
}

TEST_CASE("a drop into the flask lands when it meets the liquid, later the emptier the flask") {
  const BenchSpec spec = titration_bench();
  Tick full_flask = 0;
  for (const double liquid_cm3 : {140.0, 60.0, 0.0}) {
    BenchState state = drop_let_go(spec);
    state.ledger.transfer(Account::wash_bottle, Account::flask, volume_quanta(liquid_cm3));
    const double way_cm = spec.tip_above_bench_cm - liquid_depth_cm(spec.flask, liquid_cm3);
    while (state.falling[0].flying && state.tick < 1000) step(spec, state, at_rest());
    const double radius_cm = drop_radius_cm(spec.settled.full_drop_cm3);
    CHECK_NEAR(seconds(state.tick), std::sqrt(2.0 * (way_cm - radius_cm) / 980.665), 1.5 * kSecondsPerTick);
    CHECK(state.tick > full_flask);
    full_flask = state.tick;
    CHECK(cm3(state, Account::in_flight) == 0.0);
    CHECK(state.ledger.moved(Account::in_flight, Account::flask).volume ==
          volume_quanta(spec.settled.full_drop_cm3));
  }
}

TEST_CASE("a drop hits the neck when the flask is nearly off line, and the bench when it is off line") {
  const BenchSpec spec = titration_bench();
  const BenchState state = drop_let_go(spec);
  const double neck_cm = spec.flask.neck_radius_cm;
  const double radius_cm = drop_radius_cm(spec.settled.full_drop_cm3);
  CHECK(landed(spec, state, 0.0) == Account::flask);
  for (const double side : {-1.0, 1.0}) {
    CHECK(landed(spec, state, side * (neck_cm - radius_cm - 0.02)) == Account::flask);
    CHECK(landed(spec, state, side * (neck_cm - radius_cm + 0.02)) == Account::flask_wall);
    CHECK(landed(spec, state, side * (neck_cm - 0.02)) == Account::flask_wall);
    CHECK(landed(spec, state, side * (neck_cm + 0.02)) == Account::bench_top);
    CHECK(landed(spec, state, side * 3.0) == Account::bench_top);
    CHECK(landed(spec, state, side * 26.0) == Account::bench_top);
  }
}

TEST_CASE("where a hanging drop would end is where it does end") {
  const BenchSpec spec = titration_bench();
  const BenchState state = drop_let_go(spec);
  for (int i = -40; i <= 40; ++i) {
    const double x = i * 0.0501;
    CHECK_MESSAGE(landed(spec, state, x) == foreseen(spec, state, x), "flask at " << x << " cm");
  }
}

TEST_CASE("a drop that meets the flask's outside slides off it to the bench") {
  const BenchSpec spec = titration_bench();
  BenchState state = drop_let_go(spec);
  Hands hands = at_rest();
  hands.flask_x_cm = 2.5;
  double furthest_cm = 0.0;
  for (int i = 0; i < 240 && state.falling[0].flying; ++i) {
    step(spec, state, hands);
    furthest_cm = std::fmin(furthest_cm, state.falling[0].x_cm);
  }
  CHECK_FALSE(state.falling[0].flying);
  CHECK(furthest_cm < -0.5);  // the flask's foot reaches 1 cm beyond the jet, and it is pushed clear of that
  CHECK_NEAR(cm3(state, Account::bench_top), spec.settled.full_drop_cm3, 1e-11);
}

TEST_CASE("a neck moved against a drop in the air catches it on its wall") {
  const BenchSpec spec = titration_bench();
  BenchState state = drop_let_go(spec);
  run(spec, state, at_rest(), 0.02);
  Hands hands = at_rest();
  while (state.falling[0].flying && hands.flask_x_cm < 1.4) {
    hands.flask_x_cm += 0.3;
    step(spec, state, hands);
  }
  CHECK_NEAR(cm3(state, Account::flask_wall), spec.settled.full_drop_cm3, 1e-11);
}

TEST_CASE("a beaker under the jet catches every drop") {
  const BenchSpec spec = titration_bench();
  BenchState state = drop_let_go(spec);
  state.beaker_under = true;
  CHECK(landed(spec, state, 26.0) == Account::beaker);
}

TEST_CASE("a flask lifted until the tip dips in takes the drop at once") {
  const BenchSpec spec = titration_bench();
  BenchState state = drop_let_go(spec);
  state.ledger.transfer(Account::wash_bottle, Account::flask, volume_quanta(100.0));
  Hands hands = at_rest();
  hands.flask_y_cm = 10.0;
  step(spec, state, hands);
  CHECK(cm3(state, Account::in_flight) == 0.0);
  CHECK(state.ledger.moved(Account::in_flight, Account::flask).volume > 0);
}

TEST_CASE("a drop that almost meets something flies as one that nothing is near") {
  const BenchSpec spec = titration_bench();
  const double radius_cm = drop_radius_cm(spec.settled.full_drop_cm3);
  BenchState nothing_near = drop_let_go(spec), flask_beside = nothing_near;
  Hands far = at_rest(), beside = at_rest();
  far.flask_x_cm = 26.0;
  beside.flask_x_cm = -(spec.flask.base_radius_cm + radius_cm + 0.01);  // the foot a hair away
  for (int i = 0; i < 60 && nothing_near.falling[0].flying; ++i) {
    step(spec, nothing_near, far);
    step(spec, flask_beside, beside);
    const FallingDrop &one = nothing_near.falling[0], &other = flask_beside.falling[0];
    REQUIRE(one.flying == other.flying);
    CHECK_NEAR(one.x_cm, other.x_cm, 0.0);
    CHECK_NEAR(one.fallen_cm, other.fallen_cm, 8.0 * kFlightGrain);
    CHECK_NEAR(one.speed_cm_s, other.speed_cm_s, 8.0 * kFlightGrain);
  }
  CHECK_FALSE(nothing_near.falling[0].flying);
}

TEST_CASE("places and speeds of drops are whole grains") {
  const BenchSpec spec = titration_bench();
  BenchState state = drop_let_go(spec);
  Hands hands = at_rest();
  hands.flask_x_cm = 2.5;
  while (state.falling[0].flying && state.tick < 1000) {
    const FallingDrop& drop = state.falling[0];
    for (const double value : {drop.x_cm, drop.fallen_cm, drop.across_cm_s, drop.speed_cm_s}) {
      CHECK(std::fmod(value, kFlightGrain) == 0.0);
    }
    step(spec, state, hands);
  }
}

TEST_CASE("more drops in the air than there is room for lose nothing") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  state.hands = at_rest();
  const Quanta drop = volume_quanta(0.005);
  for (std::size_t i = 0; i < kMostFalling + 4; ++i) {
    state.ledger.transfer(Account::jet, Account::pendant_drop, drop);
    let_go(spec, state, state.ledger.balance(Account::pendant_drop), 0.0);
  }
  run(spec, state, at_rest(), 1.0);
  CHECK(state.ledger.moved(Account::in_flight, Account::flask).volume ==
        drop * static_cast<Quanta>(kMostFalling + 4));
}

}  // namespace halfdrop

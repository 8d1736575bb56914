#include "physics/flask/sloshing.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

/// A straight vessel: surface of 3 cm radius whatever its filling.
FlaskSpec straight() {
  FlaskSpec flask;
  flask.base_radius_cm = flask.neck_radius_cm = 3.0;
  return flask;
}

double thrown_cm3(double swirl, double water_cm3, double for_s) {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  state.ledger.transfer(Account::wash_bottle, Account::flask, volume_quanta(water_cm3));
  run(spec, state, swirling(swirl), for_s);
  return cm3(state, Account::bench_top);
}

}  // namespace

TEST_CASE("a slow hand tilts the surface as a slope of acceleration over gravity") {
  // The limit far below resonance: A w^2 R / g.
  const double swirl = 0.05, hand_rad_s = 2.0 * kPi * kRounds_per_s * swirl;
  CHECK_NEAR(crest_cm(straight(), 200.0, swirl), kReach_cm * hand_rad_s * hand_rad_s * 3.0 / 980.665, 2e-4);
}

TEST_CASE("far above its own pace the first mode takes its share off the slope") {
  // The other limit, deep water: A w^2 R / g (1 - 2 / (1.8412^2 - 1)) = 0.163 A w^2 R / g.
  const double swirl = 40.0, hand_rad_s = 2.0 * kPi * kRounds_per_s * swirl;
  const double slope_cm = kReach_cm * hand_rad_s * hand_rad_s * 3.0 / 980.665;
  CHECK_NEAR(crest_cm(straight(), 200.0, swirl) / slope_cm, 0.163, 0.005);
}

TEST_CASE("the wave answers most where the hand goes round as fast as the wave does by itself") {
  // Deep water in a round tank of 3 cm radius: w1 = sqrt(g 1.8412 / R) = 24.5 rad/s (Lamb, Hydrodynamics,
  // art. 191; from memory), 3.9 rounds a second: a hand does not get there, and its wave grows all the way.
  const double own_rounds_per_s = std::sqrt(980.665 * 1.8412 / 3.0) / (2.0 * kPi);
  CHECK_NEAR(own_rounds_per_s, 3.90, 0.01);
  CHECK(kRounds_per_s < own_rounds_per_s);
  double last_cm = 0.0;
  for (double swirl = 0.1; swirl <= 1.0; swirl += 0.1) {
    const double now_cm = crest_cm(straight(), 200.0, swirl);
    CHECK(now_cm > last_cm);
    last_cm = now_cm;
  }
  const auto answer = [](double rounds_per_s) {
    return crest_cm(straight(), 200.0, rounds_per_s / kRounds_per_s) / (rounds_per_s * rounds_per_s);
  };
  CHECK(answer(0.9 * own_rounds_per_s) > answer(0.5 * own_rounds_per_s));
  CHECK(answer(0.9 * own_rounds_per_s) > answer(1.5 * own_rounds_per_s));
}

TEST_CASE("swirling well throws nothing out, swirling as hard as one can does") {
  for (const double water_cm3 : {0.0, 30.0, 60.0}) {
    CHECK(thrown_cm3(0.8, water_cm3, 60.0) == 0.0);
    // About a drop of 0.02 cm3 a second (our own estimate).
    CHECK(thrown_cm3(1.0, water_cm3, 60.0) > 40 * kThrown_cm3);
    CHECK(thrown_cm3(1.0, water_cm3, 60.0) < 80 * kThrown_cm3);
  }
}

TEST_CASE("what is thrown out is of the flask's liquid and lies on the bench") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  const Parcel before = flask_liquid(state.ledger);
  run(spec, state, swirling(1.0), 60.0);
  const Parcel& thrown = state.ledger.balance(Account::bench_top);
  CHECK(thrown == state.ledger.moved(Account::flask, Account::bench_top));
  CHECK_NEAR(thrown.amount_mol(Component::analyte) / thrown.volume_cm3(),
             before.amount_mol(Component::analyte) / before.volume_cm3(), 1e-9);
}

TEST_CASE("the hand goes round with the swirl and everything comes to rest after it") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  run(spec, state, swirling(0.5), 2.0);
  const double rounds = 0.5 * kRounds_per_s * 2.0;
  CHECK_NEAR(state.slosh.turns, rounds - std::floor(rounds), 1e-9);
  CHECK_NEAR(state.slosh.reach_cm, kReach_cm, 1e-3);
  run(spec, state, at_rest(), 10.0);
  CHECK(state.slosh == Slosh{});
}

}  // namespace halfdrop

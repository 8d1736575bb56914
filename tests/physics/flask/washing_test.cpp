#include "physics/flask/washing.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/flask/contents.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

double strength(const BenchState& state, Account zone) {
  const Parcel& parcel = state.ledger.balance(zone);
  return parcel.amount_mol(Component::titrant) / parcel.volume_cm3();
}

double gap(const BenchState& state) {
  return std::fabs(strength(state, Account::flask) - strength(state, Account::flask));
}

/// An aliquot, titrant mixed in up to a share of equivalence, then one drop let fall into the landing zone.
BenchState one_more_drop(const BenchSpec& spec, double share_of_equivalence) {
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  state.ledger.transfer(Account::titrant_bottle, Account::flask,
                        volume_quanta(share_of_equivalence * spec.pipette.true_cm3));
  const Quanta drop = volume_quanta(spec.settled.full_drop_cm3);
  state.ledger.transfer(Account::column, Account::flask, drop);
  settle_zones(spec, state);
  return state;
}

double seconds_to_mix(const BenchSpec& spec, double swirl) {
  BenchState state = one_more_drop(spec, 0.5);
  const double start = gap(state);
  while (gap(state) > 0.05 * start && seconds(state.tick) < 600.0) step(spec, state, swirling(swirl));
  return seconds(state.tick);
}

double seen_change(const BenchSpec& spec, const BenchState& state, Account zone) {
  const Parcel& parcel = state.ledger.balance(zone);
  const double path_cm = sight_path_cm(spec.flask, flask_liquid(state.ledger).volume_cm3());
  Parcel before = parcel;
  before.amounts[static_cast<std::size_t>(Component::titrant)] = 0;
  return ciede2000(to_lab(colour_of(spec, parcel, path_cm, Backdrop::white_tile)),
                   to_lab(colour_of(spec, before, path_cm, Backdrop::white_tile)));
}

}  // namespace

// Bench experience, no source: a swirled flask is mixed in one to five seconds, a still one streaks for
// minutes.
TEST_CASE("swirled well, 95 % of a drop is mixed in within seconds; left alone it takes minutes") {
  const BenchSpec spec = titration_bench();
  CHECK(seconds_to_mix(spec, 1.0) >= 1.0);
  CHECK(seconds_to_mix(spec, 1.0) <= 5.0);
  CHECK(seconds_to_mix(spec, 0.6) <= 5.0);
  CHECK(seconds_to_mix(spec, 0.0) >= 60.0);
  CHECK(seconds_to_mix(spec, 0.0) <= 600.0);
}

TEST_CASE("the harder the swirling, the faster the mixing") {
  const BenchSpec spec = titration_bench();
  double before_s = 1000.0;
  for (const double swirl : {0.0, 0.2, 0.4, 0.6, 0.8, 1.0}) {
    CHECK(seconds_to_mix(spec, swirl) < before_s);
    before_s = seconds_to_mix(spec, swirl);
  }
}

TEST_CASE(
    "a drop near the endpoint flashes pink where it lands while the rest is colourless, and swirling takes "
    "it") {
  const BenchSpec spec = titration_bench();
  BenchState state = one_more_drop(spec, 0.9);
  CHECK(seen_change(spec, state, Account::flask) > kFirstVisibleChange);
  CHECK(seen_change(spec, state, Account::flask) < kFirstVisibleChange);
  BenchState left_alone = state;
  run(spec, left_alone, at_rest(), 1.0);
  CHECK(seen_change(spec, left_alone, Account::flask) > kFirstVisibleChange);
  run(spec, state, swirling(1.0), 5.0);
  CHECK(seen_change(spec, state, Account::flask) < kFirstVisibleChange);
  CHECK(seen_change(spec, state, Account::flask) < kFirstVisibleChange);
}

TEST_CASE("early in a titration one drop shows no flash, past the endpoint the pink stays") {
  const BenchSpec spec = titration_bench();
  CHECK(seen_change(spec, one_more_drop(spec, 0.1), Account::flask) < kFirstVisibleChange);
  BenchState past = one_more_drop(spec, 1.004);
  run(spec, past, swirling(1.0), 20.0);
  CHECK(seen_change(spec, past, Account::flask) > kFirstVisibleChange);
  CHECK(seen_change(spec, past, Account::flask) > kFirstVisibleChange);
}

TEST_CASE("washing takes drops down from the wall and adds nothing but water") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  state.ledger.transfer(Account::column, Account::flask_wall, volume_quanta(0.05));
  const Parcel clung = state.ledger.balance(Account::flask_wall);
  const Parcel before = flask_liquid(state.ledger);
  run(spec, state, at_rest(), 30.0);
  CHECK(state.ledger.balance(Account::flask_wall) == clung);
  Hands hands = at_rest();
  hands.wash = 1.0;
  run(spec, state, hands, 3.0);
  CHECK(state.ledger.balance(Account::flask_wall) == Parcel{});
  Parcel gained = flask_liquid(state.ledger) - before;
  CHECK_NEAR(gained.volume_cm3(), clung.volume_cm3() + 3.0 * spec.wash_cm3_s, 1e-8);
  for (const Component c : {Component::titrant, Component::analyte, Component::indicator})
    CHECK(gained.amount(c) == clung.amount(c));
}

TEST_CASE("mixing moves liquid between the zones and changes neither's volume") {
  const BenchSpec spec = titration_bench();
  BenchState state = one_more_drop(spec, 0.5);
  const Quanta landing = quanta(state, Account::flask);
  const Quanta rest = quanta(state, Account::flask);
  CHECK(landing == volume_quanta(spec.flask.landing_cm3));
  run(spec, state, swirling(0.7), 3.0);
  CHECK(quanta(state, Account::flask) == landing);
  CHECK(quanta(state, Account::flask) == rest);
}

TEST_CASE("a flask washed beyond its capacity runs over on the bench") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  Hands hands = at_rest();
  hands.wash = 1.0;
  run(spec, state, hands, 100.0);
  CHECK(flask_liquid(state.ledger).volume == volume_quanta(spec.flask.capacity_cm3));
  CHECK(cm3(state, Account::bench_top) > 10.0);
}

}  // namespace halfdrop

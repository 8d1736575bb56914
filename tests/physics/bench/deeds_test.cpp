#include "physics/bench/deeds.h"

#include <doctest/doctest.h>

#include "physics/flask/liquid.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

BenchState flask_aside(const BenchSpec& spec) {
  BenchState state = filled_bench(spec);
  state.hands.flask_x_cm = 26.0;
  return state;
}

}  // namespace

TEST_CASE("a pipette delivers into the flask just its volume, of what it holds") {
  const BenchSpec spec = titration_bench();
  BenchState state = flask_aside(spec);
  CHECK(check(spec, state, Deed::deliver_aliquot) == Refusal::pipette_empty);
  apply(spec, state, Deed::fill_pipette);
  CHECK(check(spec, state, Deed::fill_pipette) == Refusal::pipette_full);
  const Parcel held = state.ledger.balance(Account::pipette);
  apply(spec, state, Deed::deliver_aliquot);
  CHECK(flask_liquid(state.ledger) == held.share(volume_quanta(spec.pipette.true_cm3)));
}

TEST_CASE("a flask rinsed with the sample keeps some of it; rinsed with water it keeps none") {
  const BenchSpec spec = titration_bench();
  BenchState state = flask_aside(spec);
  apply(spec, state, Deed::rinse_flask_with_sample);
  const Parcel& flask = state.ledger.balance(Account::flask);
  CHECK_NEAR(flask.volume_cm3(), spec.rinse_left_cm3, 1e-9);
  CHECK_NEAR(1e3 * flask.amount_mol(Component::analyte), spec.rinse_left_cm3 * spec.sample.true_mol_dm3,
             1e-9);
  apply(spec, state, Deed::rinse_flask);
  CHECK(1e6 * state.ledger.balance(Account::flask).amount_mol(Component::analyte) < 0.01);
}

TEST_CASE("a burette in the hand takes no funnel") {
  const BenchSpec spec = titration_bench();
  BenchState state = flask_aside(spec);
  state.hands.tilt_degrees = 80.0;
  CHECK(check(spec, state, Deed::put_in_funnel) == Refusal::burette_in_hand);
  state.hands.tilt_degrees = 0.0;
  CHECK(!check(spec, state, Deed::put_in_funnel).has_value());
}

TEST_CASE("the jet stands in the way of the pipette, and the flask in the way of the beaker") {
  const BenchSpec spec = titration_bench();
  BenchState state = flask_aside(spec);
  apply(spec, state, Deed::fill_pipette);
  state.hands.flask_x_cm = 0.0;
  CHECK(check(spec, state, Deed::deliver_aliquot) == Refusal::flask_under_jet);
  CHECK(check(spec, state, Deed::empty_flask) == Refusal::flask_under_jet);
  CHECK(check(spec, state, Deed::put_beaker_under) == Refusal::flask_in_the_way);
}

TEST_CASE("a flask filled to its rim takes neither an aliquot nor a drop of indicator") {
  const BenchSpec spec = titration_bench();
  BenchState state = flask_aside(spec);
  apply(spec, state, Deed::fill_pipette);
  state.ledger.transfer(Account::wash_bottle, Account::flask, volume_quanta(spec.flask.capacity_cm3 - 0.01));
  CHECK(check(spec, state, Deed::deliver_aliquot) == Refusal::flask_full);
  CHECK(check(spec, state, Deed::add_indicator) == Refusal::flask_full);
}

TEST_CASE("a hanging drop touched off clings to the flask's wall, or falls in the beaker") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  state.hands.flask_x_cm = 0.0;
  CHECK(check(spec, state, Deed::touch_off_drop) == Refusal::nothing_hangs);
  run(spec, state, tap_at(0.5), 0.3);
  const Parcel hanging = state.ledger.balance(Account::pendant_drop);
  REQUIRE(hanging.volume > 0);
  BenchState over_bench = state;
  over_bench.hands.flask_x_cm = 26.0;
  CHECK(check(spec, over_bench, Deed::touch_off_drop) == Refusal::nothing_to_touch);
  BenchState over_beaker = over_bench;
  apply(spec, over_beaker, Deed::put_beaker_under);
  apply(spec, over_beaker, Deed::touch_off_drop);
  CHECK(over_beaker.ledger.balance(Account::beaker) == hanging);
  apply(spec, state, Deed::touch_off_drop);
  CHECK(state.ledger.balance(Account::flask_wall) == hanging);
  CHECK(state.ledger.balance(Account::pendant_drop) == Parcel{});
}

TEST_CASE("an emptied flask keeps a heel of the last run; two rinses leave less than a thousandth of that") {
  const BenchSpec spec = titration_bench();
  BenchState state = flask_aside(spec);
  charge_flask(spec, state);
  apply(spec, state, Deed::empty_flask);
  const Parcel heel = flask_liquid(state.ledger);
  CHECK_NEAR(heel.volume_cm3(), spec.rinse_left_cm3, 1e-11);
  CHECK(heel.amount_mol(Component::analyte) > 1e-5);
  apply(spec, state, Deed::rinse_flask);
  const Parcel rinsed = flask_liquid(state.ledger);
  CHECK_NEAR(rinsed.volume_cm3(), spec.rinse_left_cm3, 1e-11);
  CHECK(rinsed.amount_mol(Component::analyte) < 1e-3 * heel.amount_mol(Component::analyte));
}

TEST_CASE("without pure water there is no rinsing: a flask is not clean because somebody meant it") {
  const BenchSpec spec = titration_bench();
  BenchState state = flask_aside(spec);
  charge_flask(spec, state);
  apply(spec, state, Deed::empty_flask);
  Ledger& ledger = state.ledger;
  const Quanta wanted = 2 * volume_quanta(spec.rinse_cm3);
  ledger.transfer(Account::wash_bottle, Account::sink, ledger.balance(Account::wash_bottle).volume - wanted);
  CHECK(!check(spec, state, Deed::rinse_flask));
  ledger.transfer(Account::wash_bottle, Account::sink, 1);
  CHECK(check(spec, state, Deed::rinse_flask) == Refusal::bottle_empty);
}

}  // namespace halfdrop

#include "physics/flask/washing.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/flask/liquid.h"
#include "physics/flask/wall.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

TEST_CASE("washing takes drops down from the wall and adds nothing but water") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  cling(spec, state, Account::column, state.ledger.balance(Account::column).share(volume_quanta(0.02)), -1.0,
        10.0);
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

#include "physics/flask/wall.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

/// A flask with an aliquot, and titrant on its right wall 1 cm below the rim.
BenchState wet_wall(const BenchSpec& spec, double volume_cm3) {
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  cling(spec, state, Account::column, state.ledger.balance(Account::column).share(volume_quanta(volume_cm3)),
        1.0, spec.flask.height_cm - 1.0);
  return state;
}

Parcel on_wall(const FlaskWall& wall) {
  Parcel sum;
  for (const ClingingDrop& drop : wall.drops) sum += drop.liquid;
  for (const Trail& trail : wall.trail)
    for (const Parcel& length : trail) sum += length;
  return sum;
}

double trail_cm3(const FlaskWall& wall) {
  double sum = 0.0;
  for (const Trail& trail : wall.trail)
    for (const Parcel& length : trail) sum += length.volume_cm3();
  return sum;
}

}  // namespace

TEST_CASE("a drop hangs on as long as its edge can hold its weight (Furmidge 1962)") {
  // By hand, water at 20 C: foot radius from rho g 0.5971 a^3 = 2 a gamma (cos 15 - cos 65), a = 3.68 mm; its
  // cap holds 29.7 mm3.
  const LiquidFlow water{998.2, 1.0e-3, 0.0727};
  CHECK_NEAR(clings_at_most_cm3(water), 0.0297, 1e-4);
  CHECK(runs_cm_s(water, 0.999 * clings_at_most_cm3(water), 1.0) == 0.0);
  CHECK(runs_cm_s(water, 1.001 * clings_at_most_cm3(water), 1.0) > 0.0);
  // Half the surface tension holds a drop smaller by 2^(3/2).
  CHECK_NEAR(clings_at_most_cm3({998.2, 1.0e-3, 0.03635}), 0.0297 / std::pow(2.0, 1.5), 1e-4);
}

TEST_CASE("a half drop stays where it was touched off, a whole drop runs down and leaves a trail") {
  const BenchSpec spec = titration_bench();
  // What hands that aim at half a drop leave (they see it swell, and shut the tap a little late).
  const double half_cm3 = 0.55 * spec.settled.full_drop_cm3;
  BenchState half = wet_wall(spec, half_cm3);
  run(spec, half, at_rest(), 60.0);
  CHECK_NEAR(half.wall.drops[0].height_cm, spec.flask.height_cm - 1.0, 1e-12);
  CHECK_NEAR(cm3(half, Account::flask_wall), half_cm3, 1e-11);

  BenchState whole = wet_wall(spec, 0.05);
  run(spec, whole, at_rest(), 5.0);
  for (const ClingingDrop& drop : whole.wall.drops) CHECK(drop.liquid.empty());
  CHECK(trail_cm3(whole.wall) > 0.005);
  CHECK(trail_cm3(whole.wall) < 0.025);
  CHECK_NEAR(trail_cm3(whole.wall), cm3(whole, Account::flask_wall), 1e-15);
}

TEST_CASE("the second drop along a trail loses less to the wall than the first") {
  const BenchSpec spec = titration_bench();
  BenchState state = wet_wall(spec, 0.05);
  run(spec, state, at_rest(), 5.0);
  const double first_cm3 = cm3(state, Account::flask_wall);
  cling(spec, state, Account::column, state.ledger.balance(Account::column).share(volume_quanta(0.05)), 1.0,
        spec.flask.height_cm - 1.0);
  run(spec, state, at_rest(), 5.0);
  CHECK(cm3(state, Account::flask_wall) - first_cm3 < 0.3 * first_cm3);
}

TEST_CASE("two half drops at one place run down together, on two sides they hang on") {
  const BenchSpec spec = titration_bench();
  for (const double side : {1.0, -1.0}) {
    BenchState state = wet_wall(spec, 0.02);
    cling(spec, state, Account::column, state.ledger.balance(Account::column).share(volume_quanta(0.02)),
          side, spec.flask.height_cm - 1.2);
    run(spec, state, at_rest(), 20.0);
    CAPTURE(side);
    CHECK((trail_cm3(state.wall) > 0.0) == (side > 0.0));
    if (side < 0.0) CHECK_NEAR(cm3(state, Account::flask_wall), 0.04, 1e-11);
  }
}

TEST_CASE("a wave that is high enough takes down what clings just above the liquid") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  const double depth_cm = liquid_depth_cm(spec.flask, flask_liquid(state.ledger).volume_cm3());
  cling(spec, state, Account::column, state.ledger.balance(Account::column).share(volume_quanta(0.02)), 1.0,
        depth_cm + 0.5);
  run(spec, state, at_rest(), 5.0);
  CHECK_NEAR(cm3(state, Account::flask_wall), 0.02, 1e-11);
  run(spec, state, swirling(0.8), 5.0);
  CHECK(cm3(state, Account::flask_wall) == 0.0);
}

TEST_CASE("drops and trails together are the wall's account, to the bit, whatever happens to them") {
  const BenchSpec spec = titration_bench();
  BenchState state = wet_wall(spec, 0.05);
  const Parcel all = state.ledger.total();
  for (int i = 0; i < 40; ++i) {
    const Parcel more =
        state.ledger.balance(Account::column).share(volume_quanta(0.003 * static_cast<double>(i % 17)));
    cling(spec, state, Account::column, more, i % 3 == 0 ? -1.0 : 1.0, 4.0 + 0.5 * (i % 16));
    run(spec, state, swirling(i % 5 == 0 ? 0.6 : 0.0), 0.2);
    if (i % 11 == 0) {
      Hands hands = at_rest();
      hands.wash = 0.3;
      run(spec, state, hands, 0.15);
    }
    CHECK(on_wall(state.wall) == state.ledger.balance(Account::flask_wall));
  }
  clear_wall(state);
  CHECK(on_wall(state.wall) == Parcel{});
  CHECK(state.ledger.total() == all);
}

}  // namespace halfdrop

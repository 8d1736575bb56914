#include "physics/bench/reach.h"

#include <doctest/doctest.h>

#include "physics/flask/contents.h"
#include "tests/physics/bench/at_the_bench.h"

namespace halfdrop {

using namespace test;

namespace {

/// Put there from straight below.
std::optional<Refusal> at(const BenchSpec& spec, BenchState state, double x_cm, double y_cm) {
  state.hands.flask_x_cm = x_cm;
  state.hands.flask_y_cm = 0.0;
  return in_the_way_of_flask(spec, state, x_cm, y_cm);
}

}  // namespace

TEST_CASE("on the bench the flask goes anywhere but through the beaker") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  for (int i = -80; i <= 80; ++i) CHECK_FALSE(at(spec, state, 0.5 * i, 0.0));
  state.beaker_under = true;
  CHECK(at(spec, state, 0.0, 0.0) == Refusal::beaker_in_the_way);
  CHECK(at(spec, state, 6.9, 4.0) == Refusal::beaker_in_the_way);
  CHECK_FALSE(at(spec, state, 7.0, 0.0));
}

TEST_CASE("a flask is lifted until the jet would dip into its liquid") {
  // By hand: the tip 11.2 cm above the bench, 50 cm3 of liquid 1.43 cm deep in a cone of 3.5 cm; so 9.4 cm.
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  state.ledger.transfer(Account::wash_bottle, Account::flask, volume_quanta(50.0));
  const double depth_cm = liquid_depth_cm(spec.flask, 50.0);
  CHECK(depth_cm > 1.40);
  CHECK(depth_cm < 1.47);
  CHECK_FALSE(at(spec, state, 0.0, 9.4));
  CHECK(at(spec, state, 0.0, 9.6) == Refusal::jet_would_dip);
}

TEST_CASE("a lifted flask does not take the jet through its wall") {
  const BenchSpec spec = titration_bench();
  const BenchState state = filled_bench(spec);
  CHECK_FALSE(at(spec, state, 0.0, 6.0));
  CHECK(at(spec, state, 2.0, 6.0) == Refusal::jet_in_the_way);
  CHECK(at(spec, state, -2.0, 6.0) == Refusal::jet_in_the_way);
  CHECK_FALSE(at(spec, state, 4.0, 6.0));
  CHECK_FALSE(at(spec, state, 2.0, 1.0));  // the tip is beside the neck
}

TEST_CASE("a flask moved in one go meets what is on its way") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  state.hands.flask_x_cm = 6.0;
  state.hands.flask_y_cm = 6.0;
  CHECK(in_the_way_of_flask(spec, state, -6.0, 6.0) == Refusal::jet_in_the_way);
  state.hands.flask_y_cm = 0.0;
  CHECK_FALSE(in_the_way_of_flask(spec, state, -20.0, 0.0));
  state.hands.flask_x_cm = 20.0;
  state.beaker_under = true;
  CHECK(in_the_way_of_flask(spec, state, -20.0, 0.0) == Refusal::beaker_in_the_way);
}

TEST_CASE("a flask whose liquid has risen to the jet can be lowered") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec);
  state.ledger.transfer(Account::wash_bottle, Account::flask, volume_quanta(80.0));
  state.hands.flask_x_cm = 0.0;
  state.hands.flask_y_cm = 9.4;
  CHECK(in_the_way_of_flask(spec, state, 0.0, 9.5) == Refusal::jet_would_dip);
  CHECK_FALSE(in_the_way_of_flask(spec, state, 0.0, 9.3));
  CHECK_FALSE(in_the_way_of_flask(spec, state, 0.0, 0.0));
}

}  // namespace halfdrop

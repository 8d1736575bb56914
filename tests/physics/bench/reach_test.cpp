#include "physics/bench/reach.h"

#include <doctest/doctest.h>

#include "physics/flask/contents.h"
#include "tests/physics/bench/at_the_bench.h"

namespace halfdrop {

using namespace test;

namespace {

std::optional<Refusal> at(const BenchSpec& spec, const BenchState& state, double x_cm, double y_cm) {
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

}  // namespace halfdrop

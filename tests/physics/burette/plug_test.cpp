#include "physics/burette/plug.h"

#include <doctest/doctest.h>

#include "physics/burette/jet.h"
#include "physics/burette/tap.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

constexpr double kDegree = 1.0 / 90.0;

/// Where the plug stands after the hand went to each position in turn.
double plug_led(const BenchSpec& spec, std::initializer_list<double> positions) {
  double plug = 0.0;
  for (const double position : positions) plug = plug_after(spec.tap, plug, position);
  return plug;
}

}  // namespace

TEST_CASE("a well-kept plug follows the hand exactly") {
  const BenchSpec spec = titration_bench();
  CHECK(plug_led(spec, {0.5123}) == 0.5123);
  CHECK(plug_led(spec, {0.5123, 0.5124}) == 0.5124);
}

TEST_CASE("a stiff plug stays while the hand turns a little, then jumps after it") {
  BenchSpec spec = titration_bench();
  spec.tap.stiff_degrees = 4.0;
  CHECK(plug_led(spec, {3.9 * kDegree}) == 0.0);
  CHECK_NEAR(plug_led(spec, {4.1 * kDegree}), 3.3 * kDegree, 1e-12);
  CHECK_NEAR(plug_led(spec, {40.0 * kDegree, 37.0 * kDegree}), 39.2 * kDegree, 1e-12);
}

TEST_CASE("no steady hand keeps a stiff tap between two drops as it does a good one") {
  BenchSpec spec = titration_bench();
  const auto positions = [](const BenchSpec& bench) {
    int stops = 0;
    double plug = 0.0;
    for (double hand = 0.40; hand <= 0.60; hand += 0.1 * kDegree) {
      const double next = plug_after(bench.tap, plug, hand);
      stops += next != plug ? 1 : 0;
      plug = next;
    }
    return stops;
  };
  const int good = positions(spec);
  spec.tap.stiff_degrees = 4.0;
  CHECK(positions(spec) * 10 < good);
}

TEST_CASE("a loose plug comes along only when its play is taken up, one way and back") {
  BenchSpec spec = titration_bench();
  spec.tap.loose_degrees = 6.0;
  CHECK_NEAR(plug_led(spec, {40.0 * kDegree}), 37.0 * kDegree, 1e-12);
  CHECK_NEAR(plug_led(spec, {40.0 * kDegree, 35.0 * kDegree}), 37.0 * kDegree, 1e-12);
  CHECK_NEAR(plug_led(spec, {40.0 * kDegree, 30.0 * kDegree}), 33.0 * kDegree, 1e-12);
}

TEST_CASE("a leaking tap drips on to the bench while it is shut, less as the column falls") {
  BenchSpec spec = titration_bench();
  spec.tap.leak_cm3_min = 0.3;
  const auto leaked_cm3 = [&](double reading_cm3) {
    BenchState state = filled_bench(spec, reading_cm3);
    run(spec, state, at_rest(), 60.0);
    CHECK(quanta(state, Account::plug_drop) < volume_quanta(spec.settled.full_drop_cm3));
    CHECK(quanta(state, Account::pendant_drop) == 0);
    return cm3(state, Account::plug_drop) + cm3(state, Account::bench_top);
  };
  CHECK_NEAR(leaked_cm3(0.0), 0.3, 0.001);
  CHECK(leaked_cm3(40.0) < 0.5 * leaked_cm3(0.0));
  spec.tap.leak_cm3_min = 0.0;
  CHECK(leaked_cm3(0.0) == 0.0);
}

TEST_CASE("grease in the bore slows the open tap and takes the fine groove away first") {
  BenchSpec spec = titration_bench();
  const BenchState state = filled_bench(spec);
  const auto flow = [&](double position) { return tap_flow_cm3_s(spec, state, position); };
  const double open = flow(1.0), groove = flow(0.45);
  REQUIRE(groove > 0.0);
  spec.tap.grease_in_bore = 0.5;
  CHECK(flow(1.0) < open);
  CHECK(flow(0.45) / groove < 0.5 * flow(1.0) / open);
}

}  // namespace halfdrop

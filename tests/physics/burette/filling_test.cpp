#include "physics/burette/filling.h"

#include <doctest/doctest.h>

#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

Hands pouring() {
  Hands hands = at_rest();
  hands.pour = 1.0;
  return hands;
}

}  // namespace

TEST_CASE("titrant poured through a funnel all goes into the tube but what wets the funnel") {
  const BenchSpec spec = titration_bench();
  BenchState state = lay_out(spec);
  state.funnel_in = true;
  run(spec, state, pouring(), 4.0);
  CHECK(quanta(state, Account::bench_top) == 0);
  CHECK_NEAR(cm3(state, Account::funnel), spec.funnel_keeps_cm3, 1e-11);
  CHECK_NEAR(cm3(state, Account::column) + spec.funnel_keeps_cm3, 4.0 * spec.pour_cm3_s, 1e-8);
}

TEST_CASE("titrant poured without a funnel spills on the bench") {
  const BenchSpec spec = titration_bench();
  BenchState state = lay_out(spec);
  run(spec, state, pouring(), 2.0);
  CHECK_NEAR(cm3(state, Account::bench_top), kMissesTube * 2.0 * spec.pour_cm3_s, 1e-8);
  CHECK_NEAR(cm3(state, Account::column), (1.0 - kMissesTube) * 2.0 * spec.pour_cm3_s, 1e-8);
}

// Bench experience, no source: a funnel left in lets drops fall into the burette after the reading.
TEST_CASE("a funnel left in drips and raises the meniscus; lifted out it does not") {
  const BenchSpec spec = titration_bench();
  BenchState state = lay_out(spec);
  state.funnel_in = true;
  run(spec, state, pouring(), 3.0);
  BenchState lifted = state;
  apply(spec, lifted, Deed::lift_out_funnel);
  const double before = reading(spec, state);
  run(spec, state, at_rest(), kFunnelDripEvery_s + 0.1);
  CHECK_NEAR(before - reading(spec, state), kFunnelDrop_cm3, 1e-4);  // the tube holds its film besides
  run(spec, state, at_rest(), 60.0);
  CHECK_NEAR(before - reading(spec, state), spec.funnel_keeps_cm3, kFunnelDrop_cm3);
  CHECK(cm3(state, Account::funnel) < kFunnelDrop_cm3);
  run(spec, lifted, at_rest(), 60.0);
  CHECK_NEAR(reading(spec, lifted), before, 1e-12);
}

TEST_CASE("a burette filled over its rim runs over on the bench") {
  const BenchSpec spec = titration_bench();
  BenchState state = lay_out(spec);
  state.funnel_in = true;
  run(spec, state, pouring(), 12.0);
  CHECK(quanta(state, Account::column) == volume_quanta(column_capacity_cm3(spec.burette)));
  CHECK_NEAR(cm3(state, Account::bench_top),
             12.0 * spec.pour_cm3_s - spec.funnel_keeps_cm3 - column_capacity_cm3(spec.burette), 1e-8);
}

TEST_CASE("an empty bottle pours nothing more") {
  BenchSpec spec = titration_bench();
  spec.titrant.volume_cm3 = 10.0;
  BenchState state = lay_out(spec);
  state.funnel_in = true;
  run(spec, state, pouring(), 5.0);
  CHECK(quanta(state, Account::titrant_bottle) == 0);
  CHECK(quanta(state, Account::column) + quanta(state, Account::funnel) == volume_quanta(10.0));
}

TEST_CASE("what is poured into the burette is what is in hand") {
  const BenchSpec spec = titration_bench();
  for (const auto& [deed, bottle] : {std::pair{Deed::take_up_sample, Account::sample_bottle},
                                     std::pair{Deed::take_up_water, Account::wash_bottle}}) {
    BenchState state = lay_out(spec);
    state.funnel_in = true;
    apply(spec, state, deed);
    CHECK(check(spec, state, deed) == Refusal::already_done);
    const double titrant_cm3 = cm3(state, Account::titrant_bottle), before_cm3 = cm3(state, bottle);
    Hands hands = at_rest();
    hands.pour = 1.0;
    run(spec, state, hands, 2.0);
    CHECK_NEAR(before_cm3 - cm3(state, bottle), 2.0 * spec.pour_cm3_s, 1e-8);
    CHECK_NEAR(cm3(state, Account::titrant_bottle), titrant_cm3, 1e-12);
  }
}

}  // namespace halfdrop

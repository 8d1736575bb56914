#pragma once
// What the wash bottle takes down from the flask's neck and wall, and what runs over its rim.

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

/// One tick of washing down: water in, taking along what clings to the wall.
void wash_down(const BenchSpec& spec, BenchState& state, double wash);
/// What is more than the flask holds goes over its rim.
void run_over(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

#pragma once
// Water from the wash bottle, and what runs over the flask's rim. What it takes down is wall.h's.

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

/// One tick of washing down: water in.
void wash_down(const BenchSpec& spec, BenchState& state, double wash);
/// What is more than the flask holds goes over its rim.
void run_over(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

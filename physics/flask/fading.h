#pragma once
// An indicator's colour that strong alkali takes away, and gives back when it is weakened again: first order
// in the coloured form and in hydroxide (Indicator::fading). In the flask only; at an endpoint's pH it is
// slower than an hour. Its heat of activation is left out: the rate is that of a room.

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

/// One step of kGasTicks, with those of gas_exchange.h; does nothing in the ticks between.
void fade(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

#pragma once
// An indicator's colour that strong alkali takes away, and gives back when it is weakened again: first order
// in the coloured form and in hydroxide (Indicator::fading), quicker the more ions there are: both are
// negative (primary salt effect of Broensted and Bjerrum, activities by Davies). In the flask only; at an
// endpoint's pH it is slower than an hour. Left out: its heat of activation (the rate is that of a room), and
// the charge that the colourless form carries (some 1e-5 mol/dm3 of it, beside alkali of 0.01 and more).

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

/// One step of kGasTicks, with those of gas_exchange.h; does nothing in the ticks between.
void fade(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

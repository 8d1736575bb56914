#pragma once

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/bench/deeds.h"

namespace halfdrop {

/// A bench as the day begins: burette clean, rinsed with titrant and drained, tap open, bottles full.
[[nodiscard]] BenchState lay_out(const BenchSpec& spec);

/// One tick (1/240 s). All that moves the bench. Deeds of this tick are applied before.
void step(const BenchSpec& spec, BenchState& state, const Hands& hands);

/// Nearest the flask's axis may come to the jet while the beaker stands there.
inline constexpr double kBeakerKeeps_cm = 7.0;

/// True when the flask stands where a drop from the jet falls into its neck.
[[nodiscard]] bool flask_under_jet(const BenchSpec& spec, const BenchState& state);
/// True when the flask stands on a laid tile.
[[nodiscard]] bool flask_on_tile(const BenchState& state);

}  // namespace halfdrop

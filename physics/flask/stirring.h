#pragma once
// The flask's liquid in motion: what came in is laid into its cells, flow carries it, it spreads, titrant
// meets its surroundings. A step is taken every kStirTicks, and only where there is something to be done:
// liquid that is the same throughout and that nothing comes into costs nothing, nor does a flow that has come
// to rest.

#include <vector>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/units.h"

namespace halfdrop {

inline constexpr Tick kStirTicks = kTicksPerSecond / 24;
inline constexpr double kStir_s = static_cast<double>(kStirTicks) * kSecondsPerTick;
/// A flow slower than this has come to rest ...
inline constexpr double kRest_cm_s = 3e-5;
/// ... and so has a drop's own, once it is this slow, in liquid that turns fast.
inline constexpr double kRestTurning_cm_s = 0.05;
/// Shallower liquid than this is the same throughout as soon as anything comes into it (our own
/// simplification).
inline constexpr double kShallow_cm = 0.2;
/// Liquid that turns faster than this breaks a drop's own flow up at once: it is held at so many cm/s (our
/// own simplification). In a still flask it is followed as it is.
inline constexpr double kTurnsFast_rad_s = 2.0;
inline constexpr double kHeldTurning_cm_s = 0.35;
/// Shares of the flask that differ by less than this are the same: a hundredth of a drop's.
inline constexpr double kEven = 1e-5;

/// Share of the momentum of a drop that goes on as the flow beneath it; the rest goes into ripples and the
/// hollow that it makes (our own estimate).
inline constexpr double kGoesOn = 0.5;
/// Shares of a drop that its impact alone brings on to the two later stages (our own estimate: its energy,
/// dissipated in 1 cm3 within 0.2 s, would engulf more than fiftyfold).
inline constexpr double kMeetsAtOnce = 0.1, kMixesAtOnce = 0.1;
/// Diffusion in water, cm2/s (sodium hydroxide about 2e-5, salts 1.5e-5 at 25 C; from memory).
inline constexpr double kDiffusion_cm2_s = 1.5e-5;

/// The box that a liquid's flow is worked out in.
[[nodiscard]] FlowBox flow_box(const FlaskSpec& flask, double volume_cm3);
/// Volumes of the cells, quanta, of a liquid of this volume.
[[nodiscard]] std::vector<double> cell_quanta(const BenchSpec& spec, Quanta volume);

/// One tick. Does nothing in the ticks between.
void stir(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

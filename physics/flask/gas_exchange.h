#pragma once
// Carbon dioxide of the flask's liquid: to and from the air through the surface, and slowly into carbonate
// and back. It is why a first pink fades.
//
// Flux through the surface = K A (saturated - dissolved), 1/K = 1/(E kL) + A/G. kL, liquid side, from
// kStill_m_s to kSwirled_m_s with the square of the swirl; E, enhancement by the reaction with OH- within the
// film, Ha / tanh(Ha) taken as sqrt(1 + Ha^2), Ha^2 = k D / kL^2 (Danckwerts; within 8 %). G, what the
// flask's neck lets through to the air above the liquid: diffusion, and what swirling renews (our own
// estimate). Left out: the air above the liquid getting poorer or richer (G stands for it), warm breath, gas
// bubbles, exchange in any other vessel.

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/units.h"

namespace halfdrop {

/// Five times a second: slow beside mixing, quick beside fading.
inline constexpr Tick kGasTicks = 48;
inline constexpr double kGasStep_s = static_cast<double>(kGasTicks) * kSecondsPerTick;
/// Liquid at rest: 1 to 2 cm an hour is usual for quiet water (from memory).
inline constexpr double kStill_m_s = 5e-6;
/// Swirled hard, taken as 200 turns a minute: 0.0056 s^-1 for oxygen in 100 cm3 with 50 cm2 of surface (Maier
/// and others, shaken flasks; 100 turns a minute would give 5e-5).
inline constexpr double kSwirled_m_s = 1.1e-4;

/// Carbon dioxide that the surface takes up (negative: gives off), mol/s.
[[nodiscard]] double uptake_mol_s(const BenchSpec& spec, const Parcel& liquid, double swirl);

/// One step of kGasTicks; does nothing in the ticks between.
void exchange_gas(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

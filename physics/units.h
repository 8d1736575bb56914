#pragma once
// Units are part of every name (volume_cm3, head_mm, tap_degrees); plain double otherwise.
// One way throughout: cm3 and mol/dm3 for liquids, mm for glass, cm for the bench, seconds and ticks for
// time.

#include <cstdint>

namespace halfdrop {

#ifdef HALFDROP_TICKS_PER_SECOND  // tests/convergence only
inline constexpr int kTicksPerSecond = HALFDROP_TICKS_PER_SECOND;
#else
inline constexpr int kTicksPerSecond = 240;
#endif
inline constexpr double kSecondsPerTick = 1.0 / kTicksPerSecond;

/// A bench moment: ticks since the attempt began.
using Tick = std::int64_t;

inline constexpr double kPi = 3.14159265358979323846;

/// Standard gravity, m/s2 (CGPM 1901, exact).
inline constexpr double kGravity_m_s2 = 9.80665;

inline constexpr double seconds(Tick tick) { return static_cast<double>(tick) * kSecondsPerTick; }

}  // namespace halfdrop

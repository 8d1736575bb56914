#pragma once
// What is poured into the burette, of whichever bottle is in hand: through the funnel or past it, the
// funnel's later drips, the rim's overflow.

namespace halfdrop {

struct BenchSpec;
struct BenchState;

/// Without a funnel this share of what is poured misses the tube (our own estimate).
inline constexpr double kMissesTube = 0.6;
/// A wet funnel lets go of one drop of this size at a time, this often, while it holds that much (our own
/// estimate).
inline constexpr double kFunnelDrop_cm3 = 0.03;
inline constexpr double kFunnelDripEvery_s = 8.0;

/// One tick of pouring and dripping.
void fill(const BenchSpec& spec, BenchState& state, double pour);

}  // namespace halfdrop

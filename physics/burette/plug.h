#pragma once
// The tap's plug between hand and bore: it follows the hand unless it sticks or has play, and may let liquid
// seep out at its ends. Sticks (TapSpec::stiff_degrees): it stays until the hand is that far ahead, then
// slips after it; a sliding plug with kinetic friction of 0.6 of the static one (our own estimate) stops a
// fifth of that behind the hand (spring and slider: 2 x 0.6 - 1). Play (loose_degrees): the hand turns that
// far before the plug comes along. Seeps (leak_cm3_min): in proportion to the head, as laminar flow in a gap
// does; it gathers to drops below the plug, which fall on to the bench. Left out: seepage from bore to bore,
// into the jet.

namespace halfdrop {

struct BenchSpec;
struct BenchState;
struct TapSpec;

/// Where a plug comes to stand when the hand goes to a position (0 across .. 1 in line).
[[nodiscard]] double plug_after(const TapSpec& tap, double plug, double hand);
/// cm3/s that seep out of the column at the plug's ends now.
[[nodiscard]] double seeps_cm3_s(const BenchSpec& spec, const BenchState& state);
/// One tick: what seeps out of the column at the plug's ends, and drips from there.
void seep(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

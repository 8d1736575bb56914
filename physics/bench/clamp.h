#pragma once
// The burette in its clamps: raised and lowered on the stand's rod, and swung out over the bench's edge,
// where there is room to bring its top below eye level for filling. What leaves the jet there falls on the
// floor, which counts as the bench top. Left out: that a burette may lean, and the time a swing takes.

#include <optional>

#include "physics/bench/deeds.h"

namespace halfdrop {

/// A standing eye above the bench. Assumed, not measured: someone 1.6 m tall, eyes 0.1 m below the crown, at
/// a bench of 0.9 m (common practice).
inline constexpr double kStandingEye_mm = 600.0;
/// Bench to floor.
inline constexpr double kBenchHeight_cm = 90.0;

/// The beaker that stands under the jet (our own): wide enough for every drop from the tip.
inline constexpr double kBeakerRadius_cm = 3.0, kBeakerHeight_cm = 8.0;

/// The jet's tip above the bench.
[[nodiscard]] double tip_height_cm(const BenchSpec& spec, const Hands& hands);
/// The burette's rim above the bench, without the funnel.
[[nodiscard]] double top_above_bench_mm(const BenchSpec& spec, const Hands& hands);
[[nodiscard]] bool top_below_eye(const BenchSpec& spec, const Hands& hands);

/// What the jet would run into where the clamps hold it at a height (as Hands::clamp_mm); nothing when there
/// is room. Raising is never refused but to the burette in the hand.
[[nodiscard]] std::optional<Refusal> in_the_way_of_clamp(const BenchSpec& spec, const BenchState& state,
                                                         double clamp_mm);
/// Why the burette cannot be swung over the edge, or back, now.
[[nodiscard]] std::optional<Refusal> check_swing(const BenchSpec& spec, const BenchState& state, Deed deed);

}  // namespace halfdrop

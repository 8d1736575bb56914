#pragma once
// A standard made up on the bench: a solid weighed by difference, dissolved in a beaker, poured into a
// volumetric flask, the beaker rinsed after it, filled to the line, turned over. The flask is the standard's
// own account: what the pipette takes, or what is poured into the burette, comes out of it.
//
// The solid falls in lumps. What comes into the flask below its neck mixes with what is there; what comes
// into the neck lies on top of it until the flask is turned over, and each turn mixes half of what is still
// unmixed (our own simplification). A pipette with its tip deep takes what is below. Left out: heat of
// dissolving and warm liquid in the flask, contraction, solid that does not dissolve or clings to the
// balance, drops on the neck's wall above the line, single drops of the water that is let in.

#include <optional>

#include "physics/bench/deeds.h"

namespace halfdrop {

/// Neck of a 250 cm3 flask (practice, by calculation: 0.18 cm3 a mm, a bore of 15 mm); its length below and
/// above the line, and its wall (our own estimates).
inline constexpr double kNeck_cm3_mm = 0.18, kNeckBelowLine_mm = 40.0, kNeckAboveLine_mm = 55.0,
                        kNeckWall_mm = 1.5;
/// The line of a flask that stands on the bench, as Hands::eye_mm (our own bench).
inline constexpr double kNeckLine_mm = -600.0;
/// Stays on beaker, rod and funnel when it was poured out (our own estimate: 0.3 to 0.5 cm3).
inline constexpr double kStaysInBeaker_cm3 = 0.5;
/// Dissolved in so much of the flask's volume (practice: under half of it); each rinse.
inline constexpr double kDissolvedInShare = 0.4, kBeakerRinse_cm3 = 20.0;
/// A bottle tilted fully, and water let in fully; both go with the square of how far (our own estimates).
inline constexpr double kTips_g_s = 0.25, kFills_cm3_s = 6.0;
/// Of the mean lump of solid, and the largest.
inline constexpr double kMeanLump_g = 0.004, kLargestLump_g = 0.03;
/// Loads at which the balance's error is drawn, and its last figure.
inline constexpr double kBalanceStep_g = 0.5, kBalanceShows_g = 0.001;
inline constexpr double kBalanceCapacity_g = 60.0;

/// Whose bottle the volumetric flask is: the standard's.
[[nodiscard]] Account standard_account(const BenchSpec& spec);
/// Solid and bottle on the balance, truly.
[[nodiscard]] double weighing_bottle_g(const BenchSpec& spec, const BenchState& state);
/// What the balance shows with the bottle on it: to 0.001 g, with its own error.
[[nodiscard]] double balance_shows_g(const BenchSpec& spec, const BenchState& state);
/// Solid that has left the weighing bottle, truly.
[[nodiscard]] double tipped_out_g(const BenchSpec& spec, const BenchState& state);

/// Level in the volumetric flask above its line (negative: below), mm, as if it were all neck.
[[nodiscard]] double neck_level_mm(const BenchSpec& spec, const BenchState& state);
/// How an eye at its height sees the meniscus against the line, mm above it: its bottom, and its upper edge.
struct NeckSeen {
  double bottom_mm = 0.0, edge_mm = 0.0;
};
[[nodiscard]] NeckSeen neck_seen(const BenchSpec& spec, const BenchState& state);
/// The same for an eye so far above the line.
[[nodiscard]] NeckSeen neck_seen_from(const BenchSpec& spec, double level_mm, double eye_above_mm);

/// Takes a liquid out of a bottle, from below where it is the flask that was made up.
Parcel take_from_bottle(const BenchSpec& spec, BenchState& state, Account bottle, Account to, Quanta volume);
/// The flask was to be made up here, and nothing is in it yet.
[[nodiscard]] bool nothing_made_up(const BenchSpec& spec, const BenchState& state, Account bottle);

/// The solid, and an empty flask. Precondition: a preparation is asked for.
void lay_out_solid(const BenchSpec& spec, BenchState& state);
[[nodiscard]] std::optional<Refusal> check_preparation(const BenchSpec& spec, const BenchState& state,
                                                       Deed deed);
/// Precondition: check_preparation() returned nothing.
void prepare(const BenchSpec& spec, BenchState& state, Deed deed);
/// A tick of tipping solid out and of letting water in.
void work_preparation(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

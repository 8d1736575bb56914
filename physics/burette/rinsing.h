#pragma once
// The burette in the hand, held aslant and turned about, so that what little is in it runs over the whole
// wall and takes up what clung there. Turned so, each length of wall gives up its film and is wetted anew,
// with the film that a meniscus at kRolls_mm_s lays (wall_film.h), and gets even with the liquid in
// kRollsRound_s. What is more than lies in an almost level tube runs out at the rim, into the sink. Nothing
// leaves at the tap meanwhile: the head is gone. A greasy share of the wall gives up its drops and stays dry.
// Left out: how fast it is turned, drops that a dirty wall keeps, what clings in the jet.

#include "physics/bench/ledger.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;

/// From here on the liquid lies along the tube, degrees from upright.
inline constexpr double kRolls_degrees = 60.0;
inline constexpr double kFlat_degrees = 90.0;
/// As a hand holds it.
inline constexpr double kHeldAslant_degrees = 85.0;
/// Less than this does not reach all round, and more than that runs out at the rim (our own estimates; 5 to
/// 10 cm3 are taken, common practice).
inline constexpr double kLeastToRoll_cm3 = 2.0, kMostToRoll_cm3 = 20.0;
inline constexpr double kRollsRound_s = 1.5;
inline constexpr double kRolls_mm_s = 20.0;

/// Held so that the liquid lies along the tube.
[[nodiscard]] bool held_aslant(const BenchState& state);
/// Lays water evenly over the wall of an empty tube, of a bench that is laid out.
void wet_tube(const BenchSpec& spec, BenchState& state, const Parcel& water);
/// One tick of it. Precondition: held aslant.
void roll(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

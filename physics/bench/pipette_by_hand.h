#pragma once
// The pipette worked by hand: dipped, drawn up past its line with a filler, lifted, wiped, let down to the
// line, and run out with its tip on the flask's wall. At its line it holds what it is to deliver (true_cm3)
// and what it keeps; run out and drained on the wall it delivers true_cm3 (ISO 648: adjusted to deliver).
//
// Flow: Torricelli from the head over the tip, times the filler's valve; its one constant from a delivery
// time of 17.5 s, the middle of class AS (15 to 20 s for 25 cm3, from memory of ISO 648), taken for every
// size. Left out: film that an overfull stem leaves, a drop at the tip while it is let down (touched off on
// the waste beaker), liquid drawn into the filler (it stops at the top of the stem), froth that bursts, the
// hand's warmth.

#include <optional>

#include "physics/bench/deeds.h"

namespace halfdrop {

/// The stem at the line (practice, by calculation; a bore of 4.5 mm), its length above the line to the
/// filler, and below it to the bulb (our own estimates).
inline constexpr double kStem_cm3_mm = 0.016;
inline constexpr double kStemAboveLine_mm = 120.0, kStemBelowLine_mm = 40.0;
/// Wall of the stem's glass (our own estimate), for the eye.
inline constexpr double kStemWall_mm = 1.5;
/// Where the line is held, above the burette's zero mark, as Hands::eye_mm.
inline constexpr double kPipetteLine_mm = -150.0;
/// Clings outside to a tip that was dipped, and rides over (practice, from memory: 0.02 to 0.05 cm3).
inline constexpr double kClingsOutside_cm3 = 0.03;
/// Hangs on at a tip that touches nothing, beyond what the pipette keeps (practice, from memory: 0.03 to
/// 0.1).
inline constexpr double kHangsAtFreeTip_cm3 = 0.03;
/// Still on the walls when the bulb has run out (Jeffreys' law of draining: about 0.08 cm3 on a bulb of 25;
/// the trade's 0.03 to 0.1), and how long it takes to run down: class AS's waiting time (ISO 648; 5 s).
inline constexpr double kDrainingFilm_cm3 = 0.05, kDrains_s = 5.0;
/// Filler squeezed or sucked fully (our own estimate).
inline constexpr double kDrawsUp_cm3_s = 2.5;
/// Most air that froths in the bulb.
inline constexpr double kMostFroth_cm3 = 1.0;

/// What it holds at its line.
[[nodiscard]] double pipette_line_cm3(const BenchSpec& spec);
/// Level in it above its line (negative: below), mm; in the bulb and under it as if it were all stem.
[[nodiscard]] double pipette_level_mm(const BenchSpec& spec, const BenchState& state);
/// ... as the eye at its height sees it against the line: the bottom of the meniscus, with parallax.
[[nodiscard]] double pipette_seen_mm(const BenchSpec& spec, const BenchState& state);
/// What runs out at its tip now.
[[nodiscard]] double pipette_flow_cm3_s(const BenchSpec& spec, const BenchState& state);
/// Held over the flask.
[[nodiscard]] bool pipette_over_flask(const BenchState& state);
/// Has run out over the flask, and film still runs down inside.
[[nodiscard]] bool pipette_drains(const BenchState& state);

[[nodiscard]] std::optional<Refusal> check_pipette_by_hand(const BenchSpec& spec, const BenchState& state,
                                                           Deed deed);
/// Precondition: check_pipette_by_hand() returned nothing.
void hold_pipette(const BenchSpec& spec, BenchState& state, Deed deed);
/// A tick of drawing up, letting down, running out, draining.
void work_pipette(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

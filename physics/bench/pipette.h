#pragma once
// The pipette in practised hands: filled to its line, it delivers its true volume and keeps the last drop
// (ISO 648: a one-mark pipette is made to deliver). What it keeps, or was left wet with, mixes with what is
// drawn up next. Left out: the hand that misses the line, outside of the tip, and draining time.

#include <optional>

#include "physics/bench/deeds.h"

namespace halfdrop {

/// What stays in the tip when it has drained (from memory: somewhat less than a drop).
inline constexpr double kPipetteKeeps_cm3 = 0.04;
/// Drawn up to rinse it, turned about and thrown away: a fifth or so of the bulb (common practice).
inline constexpr double kPipetteRinse_cm3 = 6.0;

[[nodiscard]] std::optional<Refusal> check_pipette(const BenchSpec& spec, const BenchState& state, Deed deed);
/// Precondition: check_pipette() returned nothing.
void use_pipette(const BenchSpec& spec, BenchState& state, Deed deed);

}  // namespace halfdrop

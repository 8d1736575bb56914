#pragma once
// What a player says went wrong, before the breakdown is shown, and what that earns: points of its own,
// beside the marks and never in them. The points are our own choice.

#include <optional>
#include <string>

#include "game/marking/marks.h"

namespace halfdrop {

/// A cause and what it did to the titres of the runs that count, on average.
struct LargestCause {
  Cause cause = Cause::rounding;
  double mean_cm3 = 0.0;
};
/// The cause that moved the titres of the runs that count most on average; nothing below one drop (0.05 cm3).
[[nodiscard]] std::optional<LargestCause> largest_cause(const MarkedAttempt& marked);

/// What the player says went wrong; `nothing` when no cause is given.
struct Diagnosis {
  std::optional<Cause> cause;
  bool too_high = false;
};

inline constexpr int kPointsForCause = 2, kPointsForWay = 1;
struct DiagnosisPoints {
  int cause = 0, way = 0;
};
/// Two for the largest cause, or one that was worth four fifths of it; one for another that was worth a drop;
/// none for what was worth less. One for the way that the named cause pushed, or the largest where the named
/// one was worth less than a drop. "Nothing" earns all where no cause was worth a drop, and none elsewhere.
/// Nothing without an accurate titre.
[[nodiscard]] std::optional<DiagnosisPoints> diagnosis_points(const Diagnosis& said,
                                                              const MarkedAttempt& marked);

/// The answer beside what was: sentences.
[[nodiscard]] std::string verdict(const Diagnosis& said, const MarkedAttempt& marked);

}  // namespace halfdrop

#pragma once
// The one thing to change next time.

#include <optional>
#include <string>

#include "game/marking/marks.h"

namespace halfdrop {

struct NextFix {
  std::string id;                  ///< criterion it is about, or cause where no criterion speaks of it
  std::string why;                 ///< what it did, a sentence
  std::string advice;              ///< what to do
  std::optional<double> gain_cm3;  ///< what mending it takes off a titre, or what that is worth in the result
  double marks = 0.0;              ///< that it lost
  Tick tick = 0;                   ///< when it can be seen
};

/// What gains most when mended: safety before all, then microlitres in the titres that count, then marks.
/// Below 10 µL, a fifth of a drop, a gain is none that a reading could show. A cause that no criterion speaks
/// of counts from half a drop on, the endpoint from a whole one, and only where hands or eyes can mend it:
/// glass, rounding and what the indicator itself takes are left alone. Nothing where all is well.
[[nodiscard]] std::optional<NextFix> next_fix(const MarkedAttempt& marked);

/// Its why and its advice in a line.
[[nodiscard]] std::string next_fix_text(const NextFix& fix);

}  // namespace halfdrop

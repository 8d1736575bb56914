#pragma once
// Words of paper, eye view, marks page and level list, in one place.

#include "game/marking/titre_breakdown.h"

namespace halfdrop::words {

inline constexpr const char* kMeniscusLower = "meniscus is lower \u2193";
inline constexpr const char* kMeniscusHigher = "meniscus is higher \u2191";

/// Causes of the titre breakdown in words of the bench.
struct CauseWords {
  const char* name;    ///< beside its bar
  const char* choice;  ///< as an answer to "What went wrong?"
};
[[nodiscard]] CauseWords cause_words(Cause cause);

}  // namespace halfdrop::words

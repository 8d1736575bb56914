#pragma once
// Earlier goes at the same drill by the same person, from the shelf of attempts.

#include <string>
#include <vector>

#include "game/marking/marks.h"

namespace halfdrop {

inline constexpr std::size_t kMostGoes = 12;  ///< beside one attempt

struct EarlierGo {
  std::string when;  ///< "25 Nov 14:50"
  MarkedAttempt marked;
};

/// The first of them and the latest, `most` at most, oldest first; of the folder's files that carry the
/// level's name, those handed in before this attempt, under the same alias, with something done. Attempts
/// that cannot be read or do not replay are left out: the desk tells why. Empty for an exercise.
[[nodiscard]] std::vector<EarlierGo> earlier_goes(const std::string& folder, const Attempt& attempt,
                                                  std::size_t most = kMostGoes);

}  // namespace halfdrop

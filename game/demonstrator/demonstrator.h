#pragma once
// A scripted pair of hands that performs a level from the coat to the last figure, rightly or with chosen
// mistakes. It knows the level as handed out and perceives only `Senses`; the same level and seed give the
// same attempt.

#include <optional>
#include <string>
#include <vector>

#include "game/session/attempt.h"

namespace halfdrop {

struct Performance {
  Attempt attempt;                     ///< handed in, or left where the hands gave up
  std::optional<std::string> gave_up;  ///< why, if so
};

/// Precondition: every mistake is a name in the catalogue (mistakes.h).
[[nodiscard]] Performance perform(Level level, std::uint64_t seed, const std::string& alias,
                                  const std::vector<std::string>& mistakes = {});

}  // namespace halfdrop

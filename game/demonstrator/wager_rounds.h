#pragma once
// The attempts of a wager, performed and marked.

#include <cstdint>

#include "game/level/level.h"
#include "game/level/wager.h"
#include "game/marking/marks.h"
#include "game/session/attempt.h"

namespace halfdrop {

struct WagerRound {
  Attempt attempt;
  MarkedAttempt marked;
};

/// Mistakes that are in no catalogue, or that the level leaves no room for.
[[nodiscard]] std::vector<Fault> wager_faults(const Wager& wager, const Level& level,
                                              const std::string& file);

/// The round that is shown as number `shown` (from 0), each with an unknown and a glass of its own. The flask
/// is cut half as finely as the player's, so that nobody waits. Precondition: wager_faults() found none.
[[nodiscard]] Result<WagerRound> wager_round(const Wager& wager, const Level& level, std::uint64_t seed,
                                             std::size_t shown);

}  // namespace halfdrop

#pragma once
// A wager with its level, and its attempts, performed and marked.

#include <cstdint>

#include "game/level/level.h"
#include "game/level/wager.h"
#include "game/marking/bet.h"
#include "game/marking/marks.h"
#include "game/session/attempt.h"

namespace halfdrop {

struct PlayableWager {
  Wager wager;
  Level level;
};
struct WagerRound {
  Attempt attempt;
  MarkedAttempt marked;
  MeanTruth truth;
};

/// A wager's file and its level, of levels/ in the data folder. Every fault at once, wager_faults() among
/// them.
[[nodiscard]] Result<PlayableWager> read_playable_wager(const std::string& path);

/// Mistakes that are in no catalogue, or that the level leaves no room for.
[[nodiscard]] std::vector<Fault> wager_faults(const Wager& wager, const Level& level,
                                              const std::string& file);

/// The round that is shown as number `shown` (from 0), each with an unknown and a glass of its own. The flask
/// is cut half as finely as the player's, so that nobody waits. A fault where there is no mean to bet on.
[[nodiscard]] Result<WagerRound> wager_round(const PlayableWager& playable, std::uint64_t seed,
                                             std::size_t shown);

}  // namespace halfdrop

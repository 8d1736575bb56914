#pragma once
// A wager, as its JSON file says it: attempts of others at a level, on whose mean titres the player bets
// before the truth is shown.

#include <string>
#include <vector>

#include "game/level/fault.h"

namespace halfdrop {

struct Wager {
  std::string id;  ///< file's stem
  std::string title, story, why;
  std::string closing;                           ///< what it was about, read at the end
  std::string level;                             ///< id of the level that was played, a file of levels/
  double within_cm3 = 0.1;                       ///< a mean that is no further off is right
  std::vector<std::vector<std::string>> rounds;  ///< mistakes of each attempt; their order is drawn
};

/// Whether a file is JSON with a "wager"; a file that cannot be read is none.
[[nodiscard]] bool is_wager(const std::string& path);
/// Every fault at once. Names of level and mistakes are not looked up.
[[nodiscard]] Result<Wager> read_wager(const std::string& path);
[[nodiscard]] Result<Wager> read_wager_text(const std::string& json, const std::string& name_for_faults);

/// Which round is shown when: 0 .. rounds - 1 in an order drawn by the seed.
[[nodiscard]] std::vector<std::size_t> round_order(const Wager& wager, std::uint64_t seed);

}  // namespace halfdrop

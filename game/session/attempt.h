#pragma once
// One play of one level: the level itself, a seed, and every change of hands and every action by tick. Inputs
// only.

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "game/level/level.h"
#include "game/session/way.h"
#include "physics/bench/deeds.h"
#include "physics/bench/hands.h"

namespace halfdrop {

/// Version of the physics and of what deeds mean; changes when an old attempt would replay otherwise.
inline constexpr int kModelVersion = 13;
/// Four simulated hours.
inline constexpr Tick kLongestAttempt = Tick{4} * 3600 * kTicksPerSecond;

/// Only what changed.
struct HandsChange {
  std::optional<double> tap, eye_mm, flask_x_cm, flask_y_cm, swirl, wash, pour, tilt_degrees, card_mm,
      clamp_mm, valve, tip, fill;

  [[nodiscard]] bool empty() const;
  void apply_to(Hands& hands) const;
  friend bool operator==(const HandsChange&, const HandsChange&) = default;
};

/// Something written into a cell of the results sheet. An empty text strikes the cell out.
struct Writing {
  std::string cell;
  std::string text;
  friend bool operator==(const Writing&, const Writing&) = default;
};

/// The attempt's last line.
struct Ending {
  std::string how;         ///< "handed in" or "left"
  std::string state_hash;  ///< of the bench at that tick; the sheet is not in it
  friend bool operator==(const Ending&, const Ending&) = default;
};

struct Change {
  Tick tick = 0;
  std::variant<HandsChange, Deed, Writing, Ending> what;
  friend bool operator==(const Change&, const Change&) = default;
};

struct Attempt {
  Level level;
  std::uint64_t seed = 0;
  std::string alias;
  std::vector<Change> changes;  ///< in tick order
  Way way = Way::independent;   ///< of playing; the bench never feels it
};
/// Handed in or left for good: nothing can follow.
[[nodiscard]] bool has_ended(const Attempt& attempt);

}  // namespace halfdrop

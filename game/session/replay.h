#pragma once
// Plays an attempt again. What marks an attempt, resumes it or draws it at a moment goes through here.

#include <functional>

#include "game/session/session.h"

namespace halfdrop {

/// Called as the replay goes.
struct ReplayWatcher {
  std::function<void(const Session&)> after_tick;                     ///< after every tick
  std::function<void(const Session&, const Change&)> before_change;   ///< at its tick, before it is applied
  std::function<void(const Session&, const Change&)> after_change;    ///< at its tick, after it was applied
};

struct ReplayOutcome {
  bool reproduced = true;     ///< no change was refused and the state's hash is the attempt's own
  Tick first_difference = 0;  ///< tick of the first change that was refused, or of the end
  std::string message;        ///< empty when reproduced
};

/// Replays up to `until` (or the attempt's end). The session is left as it stood then.
struct Replay {
  Session session;
  ReplayOutcome outcome;
};
[[nodiscard]] Replay replay(const Attempt& attempt, const ReplayWatcher& watcher = {},
                            Tick until = kLongestAttempt);

}  // namespace halfdrop

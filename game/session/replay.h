#pragma once
// Plays an attempt again. What marks an attempt, resumes it or draws it at a moment goes through here.
//
// What is compared is the bench: a change of hands or a deed that was altered, and a bench that behaves
// otherwise, end in another state. Figures on the sheet are inputs that the bench never feels: an altered
// figure replays as altered.

#include <functional>

#include "game/session/session.h"

namespace halfdrop {

/// Called as the replay goes.
struct ReplayWatcher {
  std::function<void(const Session&)> after_tick;                    ///< after every tick
  std::function<void(const Session&, const Change&)> before_change;  ///< at its tick, before it is applied
  std::function<void(const Session&, const Change&)> after_change;   ///< at its tick, after it was applied
};

struct ReplayOutcome {
  bool reproduced =
      true;  ///< no change was refused, and the closing line, if there is one, has the bench's hash
  Tick first_difference = 0;  ///< tick of the first change that was refused, or of the end
  std::string message;        ///< empty when reproduced
  bool compared = false;      ///< there was a closing line; without one nothing says how the bench should end
};

/// Replays up to `until` (or the attempt's end). The session is left as it stood then.
struct Replay {
  Session session;
  ReplayOutcome outcome;
};
[[nodiscard]] Replay replay(const Attempt& attempt, const ReplayWatcher& watcher = {},
                            Tick until = kLongestAttempt);

}  // namespace halfdrop

#pragma once
// A level being played: hands and actions in, ticks on, every change logged.

#include <functional>
#include <map>
#include <string>

#include "game/session/action.h"
#include "game/session/attempt.h"
#include "physics/bench/bench.h"

namespace halfdrop {

class Session {
 public:
  Session(Level level, std::uint64_t seed, std::string alias, Way way = Way::independent);

  /// Told of each change as it is logged (for a journal).
  std::function<void(const Change&)> on_change;

  /// Changes what the hands do from now on; the next tick feels it. Values are rounded to 1e-4; returns why
  /// not, if not.
  [[nodiscard]] std::optional<std::string> set_hands(const HandsChange& change);
  /// Does a deed now; returns why it cannot be done, if so.
  [[nodiscard]] std::optional<std::string> act(Deed deed);
  [[nodiscard]] std::optional<std::string> write(const Writing& writing);
  /// Ends the attempt ("handed in" or "left"). Nothing can be done after.
  void end(const std::string& how);

  /// Logs where the tap stands although it has not moved: an attempt that is taken up again stands at its
  /// last line's tick. Nothing where there is no tap to turn (time then changes nothing).
  void mark_time();

  /// One tick. Precondition: not ended.
  void tick();

  [[nodiscard]] bool ended() const { return ended_; }
  [[nodiscard]] bool time_is_up() const { return state_.tick >= kLongestAttempt; }
  [[nodiscard]] const BenchSpec& spec() const { return spec_; }
  [[nodiscard]] const BenchState& state() const { return state_; }
  [[nodiscard]] const Hands& hands() const { return state_.hands; }
  [[nodiscard]] const Attempt& attempt() const { return attempt_; }
  [[nodiscard]] const Level& level() const { return attempt_.level; }
  [[nodiscard]] Way way() const { return attempt_.way; }
  /// What stands in a cell now; empty if nothing.
  [[nodiscard]] std::string cell(const std::string& name) const;

 private:
  void log(decltype(Change::what) what);

  Attempt attempt_;
  BenchSpec spec_;
  BenchState state_;
  std::map<std::string, std::string> sheet_;
  bool ended_ = false;
};

}  // namespace halfdrop

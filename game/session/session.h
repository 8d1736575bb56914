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
  Session(Level level, std::uint64_t seed, std::string alias);

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

  /// One tick. Precondition: not ended.
  void tick();

  [[nodiscard]] bool ended() const { return ended_; }
  [[nodiscard]] bool time_is_up() const { return state_.tick >= kLongestAttempt; }
  [[nodiscard]] const BenchSpec& spec() const { return spec_; }
  [[nodiscard]] const BenchState& state() const { return state_; }
  [[nodiscard]] const Hands& hands() const { return state_.hands; }
  [[nodiscard]] const Attempt& attempt() const { return attempt_; }
  [[nodiscard]] const Level& level() const { return attempt_.level; }
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

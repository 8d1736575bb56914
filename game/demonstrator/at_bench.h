#pragma once
// All that the demonstrator's script has of a bench: hands to move, deeds to do, paper to write on, and
// senses. The session stays inside; the script never sees the bench's state or what is truly in a bottle.

#include <functional>
#include <optional>
#include <string>

#include "game/session/apparatus.h"
#include "game/session/session.h"
#include "game/session/view.h"

namespace halfdrop {

class AtBench {
 public:
  explicit AtBench(Session& session) : session_(session) {}

  /// What is perceived now.
  [[nodiscard]] Senses look() const { return senses(view(session_)); }
  /// What the hands hold now: a hand knows where it is.
  [[nodiscard]] const Hands& hands() const { return session_.hands(); }
  /// Sheet, labels and calculation, as handed out.
  [[nodiscard]] const Level& level() const { return session_.level(); }

  /// What the card of the drill of pieces asks, and what came of it so far.
  [[nodiscard]] ApparatusRound pieces() const { return apparatus_round(session_); }

  /// Moves one hand, e.g. hold(&HandsChange::tap, 0.0).
  void hold(std::optional<double> HandsChange::*hand, double value);
  /// Does a deed and takes the time it needs.
  void act(Deed deed);
  void write(const std::string& cell, const std::string& text);
  void wait(double seconds);
  /// Looks twenty times a second until it holds; false when `limit_s` passed first.
  bool watch_until(const std::function<bool(const Senses&)>& holds, double limit_s);

  /// Nothing more is done after; the first reason stays.
  void give_up(const std::string& reason);
  [[nodiscard]] const std::optional<std::string>& gave_up() const { return gave_up_; }

 private:
  void expect(const std::optional<std::string>& refused, std::string_view doing);
  [[nodiscard]] bool working();

  Session& session_;
  std::optional<std::string> gave_up_;
};

/// Twenty looks a second, as quick as an eye that watches for a change.
inline constexpr Tick kLookEvery = kTicksPerSecond / 20;

}  // namespace halfdrop

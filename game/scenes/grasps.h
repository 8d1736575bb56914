#pragma once
// Swirl, wash, pour, turning the burette about and the pipette's filler: what lasts only while a key or a
// button is held.

#include <array>
#include <optional>

#include "game/session/attempt.h"

namespace halfdrop {

/// What is let go in the frame in which it was taken was still held for this long on the bench: frames come
/// at intervals, and a quick touch must not be lost between two (a key tap lasts 50 to 100 ms).
inline constexpr Tick kShortestHold = kTicksPerSecond / 20;

enum class Grasp { swirl, wash, pour, turn, filler, tip, let_in };

class Grasps {
 public:
  /// Takes hold with `strength` 0…1 (filler −1…1); returns what the hands do.
  [[nodiscard]] HandsChange take(Grasp grasp, double strength, Tick now);
  /// Lets go; empty when the hold was too short to be noticed: `due` gives it later.
  [[nodiscard]] HandsChange release(Grasp grasp, Tick now);
  /// Releases whose time has come.
  [[nodiscard]] HandsChange due(Tick now);
  /// Lets go of everything at once: of what was taken, and of what these hands still hold (an attempt gone on
  /// with). Empty when that is nothing.
  [[nodiscard]] HandsChange release_all(const Hands& hands);

 private:
  struct Hold {
    std::optional<Tick> since;
    bool released = false;
  };
  Hold& hold(Grasp grasp) { return holds_[static_cast<std::size_t>(grasp)]; }
  std::array<Hold, 7> holds_;
};

}  // namespace halfdrop

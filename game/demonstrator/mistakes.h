#pragma once
// The catalogue: every wrong deed the demonstrator can perform, what it does to a titre, and which habit it
// spoils.

#include <optional>
#include <span>
#include <string_view>

#include "game/demonstrator/habits.h"
#include "game/level/say.h"
#include "game/marking/titre_breakdown.h"

namespace halfdrop {

struct Mistake {
  std::string_view name;       ///< as on the command line
  Phrase title;                ///< what is done, a sentence
  std::string_view family;     ///< "solutions", "rinsing", "filling", "reading", "titrating", "flask",
                               ///< "pipetting", "record", "arithmetic", "safety"
  std::optional<Cause> cause;  ///< through which it reaches a titre; nothing when it reaches none
  std::string_view titre;      ///< what it does to a titre it reaches: "high", "low", "either" or "none"
  /// Size of that: what it changes the cause by in accurate runs of the vinegar level, at most in each
  /// attempt, median of seeds 1 to 10. Without a cause: what it changes the mean by.
  double typical_cm3 = 0.0;
  void (*take_up)(Habits&) = nullptr;
  /// What is wrong with the apparatus as well: a merge patch of the level. Empty: nothing.
  std::string_view apparatus = {};
};

[[nodiscard]] std::span<const Mistake> mistakes();
/// Whether a level leaves room for a mistake: a drill does for those of its own skill, a titration for all
/// but what its working and its liquids rule out.
[[nodiscard]] bool has_room_for(const Level& level, std::string_view mistake);
/// Null when there is none of that name.
[[nodiscard]] const Mistake* find_mistake(std::string_view name);

}  // namespace halfdrop

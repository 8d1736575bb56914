#pragma once
// The catalogue: every wrong deed the demonstrator can perform, what it does to a titre, and which habit it
// spoils.

#include <optional>
#include <span>
#include <string_view>

#include "game/demonstrator/habits.h"
#include "game/marking/titre_breakdown.h"

namespace halfdrop {

struct Mistake {
  std::string_view name;       ///< as on the command line
  std::string_view title;      ///< what is done, a sentence
  std::string_view family;     ///< "filling", "reading", "titrating", "flask", "record", "safety"
  std::optional<Cause> cause;  ///< through which it reaches a titre; nothing when it reaches none
  std::string_view titre;      ///< what it does to the mean titre: "high", "low", "either" or "none"
  double typical_cm3 = 0.0;    ///< size of that, as performed on the vinegar level (mean of seeds 1 to 10)
  void (*take_up)(Habits&) = nullptr;
};

[[nodiscard]] std::span<const Mistake> mistakes();
/// Null when there is none of that name.
[[nodiscard]] const Mistake* find_mistake(std::string_view name);

}  // namespace halfdrop

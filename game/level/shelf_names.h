#pragma once
// What goes by which name on the shelf.

#include <string>
#include <string_view>

#include "game/level/assets.h"

namespace halfdrop {

/// What has this name or is also called so, whatever its capitals, or (a substance) has this formula, letter
/// by letter, when no other has. Null: nothing.
[[nodiscard]] const Shelved<Substance>* find_on(const Shelf<Substance>& shelf, std::string_view name);
[[nodiscard]] const Shelved<Indicator>* find_on(const Shelf<Indicator>& shelf, std::string_view name);

/// `unknown substance "..."` with the name that was meant, or else all that the shelf has, nearest first.
[[nodiscard]] std::string unknown_on(const Shelf<Substance>& shelf, std::string_view name);
[[nodiscard]] std::string unknown_on(const Shelf<Indicator>& shelf, std::string_view name);

/// A fault for each "also_called" that is another's name, or is said twice, capitals or not.
void check_names(const Shelf<Substance>& shelf, FaultList& faults);
void check_names(const Shelf<Indicator>& shelf, FaultList& faults);

}  // namespace halfdrop

#pragma once
// "Did you mean ...?"

#include <span>
#include <string>
#include <string_view>

namespace halfdrop {

/// Fewest letters to insert, drop, change or swap with a neighbour (optimal string alignment distance).
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known name nearest to `word`, if it is near enough to be a slip of the finger (two letters,
/// but no more than a third of them); empty otherwise. The first of equals.
[[nodiscard]] std::string_view nearest(std::string_view word, std::span<const std::string_view> known);

/// `; did you mean "..."?`, or nothing.
[[nodiscard]] std::string did_you_mean(std::string_view word, std::span<const std::string_view> known);

}  // namespace halfdrop

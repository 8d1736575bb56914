#pragma once
// Lines for a terminal. Columns are characters of UTF-8 text.

#include <string>

namespace halfdrop {

inline constexpr std::size_t kTextWidth = 96;

/// A byte that continues a character.
[[nodiscard]] bool continues(char c);
[[nodiscard]] std::size_t columns(const std::string& text);
/// Filled up with spaces on its left, or on its right.
[[nodiscard]] std::string right(const std::string& text, std::size_t width);
[[nodiscard]] std::string left(const std::string& text, std::size_t width);
/// A name out of a file must not steer the terminal.
[[nodiscard]] std::string tame(const std::string& text);
/// Words in lines of at most kTextWidth columns, after a first indent and hanging ones.
[[nodiscard]] std::string wrapped(const std::string& first, const std::string& text);

}  // namespace halfdrop

#pragma once
// The numbers of the command line: plain figures, whose unit the option fixes.

#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

namespace halfdrop::desk {

struct NumberWanted {
  double low, high;
  std::string_view words;   ///< "a number from 0 to 20", or "numbers ..." for a list
  std::string_view unit{};  ///< "mol/dm3"
};

/// A figure with a decimal point, such as "0.1", "1e-3" or "-0" (which is 0), and nothing after it; or what
/// was expected instead.
[[nodiscard]] tl::expected<double, std::string> plain_number(std::string_view text,
                                                             const NumberWanted& wanted);
/// The same with commas between: a comma is never a decimal one.
[[nodiscard]] tl::expected<std::vector<double>, std::string> plain_numbers(std::string_view text,
                                                                           const NumberWanted& wanted);

}  // namespace halfdrop::desk

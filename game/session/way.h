#pragma once
// Three ways to play a level. The bench is the same in all of them.

#include <cstdint>
#include <optional>
#include <string_view>

namespace halfdrop {

enum class Way : std::uint8_t {
  guided,       ///< the next step and its reason are shown as long as they help (guide.h)
  independent,  ///< silence; the method can be asked for
  assessed      ///< no help, no going back, an unknown of its own, handed in as a file
};
inline constexpr int kWays = 3;

/// "guided", "independent", "assessed": as attempts, options and people say it.
[[nodiscard]] std::string_view way_name(Way way);
/// The same as it is shown.
[[nodiscard]] std::string_view way_words(Way way);
[[nodiscard]] std::optional<Way> way_from_name(std::string_view name);
/// Why help is refused, as a sentence; empty where it is not.
[[nodiscard]] std::string_view no_help_words(Way way);

}  // namespace halfdrop

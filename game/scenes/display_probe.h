#pragma once

#include <optional>
#include <string>

namespace halfdrop {

/// Why no window can be opened, as one line that names halfdrop-desk; nothing when one can. Call before
/// anything of SFML, which ends the program where there is no display.
[[nodiscard]] std::optional<std::string> display_fault();

}  // namespace halfdrop

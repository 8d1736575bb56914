#include "game/session/way.h"

#include <algorithm>
#include <array>

namespace halfdrop {

namespace {

constexpr std::array<std::string_view, kWays> kNames = {"guided", "independent", "assessed"};

}  // namespace

std::string_view way_name(Way way) { return kNames[static_cast<std::size_t>(way)]; }

std::optional<Way> way_from_name(std::string_view name) {
  const auto found = std::find(kNames.begin(), kNames.end(), name);
  if (found == kNames.end()) return std::nullopt;
  return static_cast<Way>(found - kNames.begin());
}

std::string_view no_help_words(Way way) {
  return way == Way::assessed ? "This attempt is assessed: no method, no hints. F1 shows the keys." : "";
}

}  // namespace halfdrop

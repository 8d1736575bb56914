#include "game/session/way.h"

#include <algorithm>
#include <array>

#include "game/level/say.h"

namespace halfdrop {

namespace {

constexpr std::array<std::string_view, kWays> kNames = {"guided", "independent", "assessed"};

}  // namespace

std::string_view way_name(Way way) { return kNames[static_cast<std::size_t>(way)]; }

std::string_view way_words(Way way) {
  static constexpr std::array<Phrase, kWays> kWords = {"way.guided", "way.independent", "way.assessed"};
  return kWords[static_cast<std::size_t>(way)];
}

std::optional<Way> way_from_name(std::string_view name) {
  const auto found = std::find(kNames.begin(), kNames.end(), name);
  if (found == kNames.end()) return std::nullopt;
  return static_cast<Way>(found - kNames.begin());
}

std::string_view no_help_words(Way way) {
  return way == Way::assessed ? std::string_view(say("way.no_help")) : "";
}

}  // namespace halfdrop

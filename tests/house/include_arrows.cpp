#include "tests/house/include_arrows.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <utility>

namespace halfdrop::house {
namespace {

/// How high a room stands; it may include rooms below it, and not its neighbours on the same floor.
const std::map<std::string, int> floors = {{"physics", 0},      {"game/level", 1},   {"game/session", 2},
                                           {"game/marking", 3}, {"game/records", 4}, {"game/demonstrator", 4},
                                           {"game/desk", 5},    {"game/scenes", 5}};

struct Guest {
  std::string_view prefix;               ///< how the library's headers begin
  std::vector<std::string_view> places;  ///< where they may be included
};

const std::vector<Guest> guests = {
    {"SFML/", {"game/scenes/"}},
    {"X11/", {"game/scenes/"}},
    {"GL/", {"game/scenes/"}},
    {"box2d/", {"physics/bench/rigid_world."}},
    {"nlohmann/", {"game/level/", "game/records/"}},
    {"CLI/", {"game/desk/", "game/scenes/"}},
    {"tl/", {"game/"}},
};

/// A clock, the system's randomness, files and unordered containers would make a replay differ.
const std::set<std::string> unrepeatable = {"chrono",        "ctime",  "random",     "fstream",
                                            "unordered_map", "thread", "filesystem", "unordered_set"};

std::string room_of(const std::string& path) {
  if (path.starts_with("physics/")) return "physics";
  const std::size_t end = path.starts_with("game/") ? path.find('/', 5) : std::string::npos;
  return end == std::string::npos ? std::string() : path.substr(0, end);
}

std::string objection_to_own_header(const std::string& room, const std::string& name) {
  const auto target = floors.find(room_of(name));
  if (target == floors.end()) return "is not a path from the top into a room of the house";
  if (target->first == room || target->second < floors.at(room)) return {};
  return room + " may not include " + target->first;
}

std::string objection_to_library(const std::string& path, const std::string& room, const std::string& name) {
  for (const Guest& guest : guests) {
    if (!name.starts_with(guest.prefix)) continue;
    const bool welcome = std::any_of(guest.places.begin(), guest.places.end(),
                                     [&](std::string_view place) { return path.starts_with(place); });
    return welcome ? std::string() : std::string(guest.prefix) + " has no place here";
  }
  const bool repeatable_room = room == "physics" || room == "game/session";
  if (repeatable_room && unrepeatable.contains(name)) return "would make a replay differ";
  if (room == "physics" && name.find_first_of("./") != std::string::npos) {
    return "is not of the standard library";
  }
  return {};
}

/// Takes `word` and the space before it off the front of `text`, if it stands there.
bool take(std::string_view& text, std::string_view word) {
  const std::string_view rest = text.substr(std::min(text.find_first_not_of(" \t"), text.size()));
  if (!rest.starts_with(word)) return false;
  text = rest.substr(word.size());
  return true;
}

std::optional<Include> include_in(std::string_view line, int number) {
  if (!take(line, "#") || !take(line, "include")) return std::nullopt;
  const bool quoted = take(line, "\"");
  if (!quoted && !take(line, "<")) return std::nullopt;
  const std::size_t end = line.find_first_of("\">");
  if (end == 0 || end == std::string_view::npos) return std::nullopt;
  return Include{number, quoted, std::string(line.substr(0, end))};
}

}  // namespace

std::vector<Include> includes_of(const SourceFile& file) {
  std::vector<Include> includes;
  int number = 0;
  for (const std::string& line : lines_of(file.text)) {
    if (std::optional<Include> include = include_in(line, ++number)) includes.push_back(std::move(*include));
  }
  return includes;
}

std::string objection(const std::string& path, const Include& include) {
  const std::string room = room_of(path);
  if (!floors.contains(room)) return "stands in no room of the house";
  return include.quoted ? objection_to_own_header(room, include.name)
                        : objection_to_library(path, room, include.name);
}

std::vector<std::string> objections(const SourceFile& file) {
  std::vector<std::string> found;
  for (const Include& include : includes_of(file)) {
    const std::string why = objection(file.path, include);
    if (!why.empty()) {
      found.push_back(file.path + ":" + std::to_string(include.line) + ": " + include.name + ": " + why);
    }
  }
  return found;
}

}  // namespace halfdrop::house

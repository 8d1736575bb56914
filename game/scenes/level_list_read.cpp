// Reads the levels and the unfinished attempts for the list.

#include <algorithm>

#include "game/level/say.h"
#include "game/records/attempt_file.h"
#include "game/scenes/level_list.h"
#include "game/scenes/shelf_files.h"

namespace halfdrop {

namespace {

constexpr std::size_t kMostOffered = 3;

/// The latest unfinished attempts, latest first. What cannot be read is left out: the desk tells why.
std::vector<LevelList::Unfinished> unfinished_attempts(const std::string& folder) {
  auto paths = files_of(folder, ".jsonl");
  std::stable_sort(paths.begin(), paths.end(),
                   [](const auto& a, const auto& b) { return changed(a) > changed(b); });
  if (paths.size() > 4 * kMostOffered) paths.resize(4 * kMostOffered);
  std::vector<LevelList::Unfinished> found;
  for (const auto& path : paths) {
    if (found.size() == kMostOffered) break;
    const auto file = read_attempt(path.string());
    if (!file || has_ended(file->attempt)) continue;

    found.push_back({path.string(),
                     say("list.title_and_way", {{"title", file->attempt.level.title},
                                                {"way", std::string(way_words(file->attempt.way))}}),
                     day_and_time(changed(path))});
  }
  return found;
}

}  // namespace

LevelList LevelList::read(const std::string& attempts_folder) {
  std::vector<Entry> levels;
  std::vector<Fault> faults;
  auto paths = files_of(data_folder() + "/levels", ".json");
  const auto drills = files_of(data_folder() + "/levels/drills", ".json");
  paths.insert(paths.end(), drills.begin(), drills.end());
  for (const auto& path : paths) {
    auto level = read_level(path.string());
    if (level) {
      levels.push_back({path.string(), std::move(*level)});
    } else {
      faults.insert(faults.end(), level.error().begin(), level.error().end());
    }
  }
  std::vector<WagerEntry> wagers;
  for (const auto& path : files_of(data_folder() + "/levels/demonstrations", ".json")) {
    auto wager = read_wager(path.string());
    if (wager) {
      wagers.push_back({path.string(), std::move(*wager)});
    } else {
      faults.insert(faults.end(), wager.error().begin(), wager.error().end());
    }
  }
  return {std::move(levels), unfinished_attempts(attempts_folder), std::move(faults), std::move(wagers)};
}

}  // namespace halfdrop

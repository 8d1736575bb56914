#include "game/scenes/shelf_files.h"

#include <sys/stat.h>
#include <algorithm>
#include <array>

#include "game/level/say.h"

namespace halfdrop {

namespace {

constexpr std::array<Phrase, 12> kMonths = {"list.month.jan", "list.month.feb", "list.month.mar",
                                            "list.month.apr", "list.month.may", "list.month.jun",
                                            "list.month.jul", "list.month.aug", "list.month.sep",
                                            "list.month.oct", "list.month.nov", "list.month.dec"};

}  // namespace

std::vector<std::filesystem::path> files_of(const std::string& folder, const std::string& ending) {
  std::vector<std::filesystem::path> paths;
  std::error_code none;
  for (std::filesystem::directory_iterator file(folder, none), end; !none && file != end;
       file.increment(none)) {
    if (file->path().extension() == ending && file->path().filename() != "schema.json")
      paths.push_back(file->path());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

std::vector<std::filesystem::path> attempts_at(const std::string& folder, const std::string& level_id) {
  auto paths = files_of(folder, ".jsonl");
  std::erase_if(paths, [&](const auto& path) { return !path.filename().string().starts_with(level_id); });
  std::stable_sort(paths.begin(), paths.end(),
                   [](const auto& a, const auto& b) { return changed(a) < changed(b); });
  return paths;
}

std::time_t changed(const std::filesystem::path& path) {
  struct stat facts {};
  return ::stat(path.c_str(), &facts) == 0 ? facts.st_mtime : 0;
}

std::string day_and_time(std::time_t time) {
  std::tm local{};
  if (!localtime_r(&time, &local)) return {};
  std::array<char, 64> day{}, time_of_day{};
  std::strftime(day.data(), day.size(), "%d", &local);
  std::strftime(time_of_day.data(), time_of_day.size(), "%H:%M:%S", &local);
  return say("list.when", {{"day", day.data()},
                           {"month", say(kMonths[static_cast<std::size_t>(local.tm_mon)])},
                           {"time", time_of_day.data()}});
}

}  // namespace halfdrop

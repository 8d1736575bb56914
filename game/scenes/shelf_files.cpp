#include "game/scenes/shelf_files.h"

#include <sys/stat.h>
#include <algorithm>
#include <array>

namespace halfdrop {

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
  std::array<char, 64> text{};
  const std::size_t length = std::strftime(text.data(), text.size(), "%d %b %H:%M:%S", &local);
  return {text.data(), length};
}

}  // namespace halfdrop

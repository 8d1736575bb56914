#include <cstdlib>
#include <filesystem>
#include <system_error>

#include "game/level/level.h"

namespace halfdrop {
namespace {

bool holds_data(const std::filesystem::path& folder) {
  std::error_code none;
  return std::filesystem::is_directory(folder / "assets", none) &&
         std::filesystem::is_directory(folder / "levels", none);
}

}  // namespace

std::string data_folder() {
  const char* const wanted = std::getenv("HALFDROP_DATA");
  if (wanted != nullptr && *wanted != '\0') return wanted;
  if (holds_data(HALFDROP_SOURCE_FOLDER)) return HALFDROP_SOURCE_FOLDER;
  std::error_code none;
  const std::filesystem::path program = std::filesystem::read_symlink("/proc/self/exe", none);
  return (program.parent_path() / ".." / "share" / "halfdrop").lexically_normal().string();
}

}  // namespace halfdrop

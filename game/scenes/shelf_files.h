#pragma once
// Files of a folder and when they were last changed.

#include <ctime>
#include <filesystem>
#include <string>
#include <vector>

namespace halfdrop {

/// Paths of a folder's files with an ending, by name, the levels' schema apart; empty if there is no such
/// folder.
[[nodiscard]] std::vector<std::filesystem::path> files_of(const std::string& folder,
                                                          const std::string& ending);
/// Attempts of a level in a folder, by their names, the one changed first first.
[[nodiscard]] std::vector<std::filesystem::path> attempts_at(const std::string& folder,
                                                             const std::string& level_id);
/// 0 for a file that is not there.
[[nodiscard]] std::time_t changed(const std::filesystem::path& path);
/// "25 Nov 14:50:12", in local time.
[[nodiscard]] std::string day_and_time(std::time_t time);

}  // namespace halfdrop

#pragma once
// The project's own files as text, for the tests that guard the house rather than the bench.

#include <string>
#include <string_view>
#include <vector>

namespace halfdrop::house {

struct SourceFile {
  std::string path;  ///< from the top of the project, with '/'
  std::string text;
};

/// Every .h and .cpp below the given folders, in order of path.
[[nodiscard]] std::vector<SourceFile> sources_below(const std::vector<std::string>& folders);

[[nodiscard]] std::string text_of(const std::string& path_from_the_top);

[[nodiscard]] std::vector<std::string> lines_of(std::string_view text);

/// The text with comments and the insides of string and character literals blanked, line breaks kept.
[[nodiscard]] std::string code_of(std::string_view text);

/// Standard output of a command; fails the running test if it cannot run or ends badly.
[[nodiscard]] std::string output_of(const std::string& command);

}  // namespace halfdrop::house

#pragma once
// The words of one language: assets/text/<language>.json, one object of keys and texts. English is the first:
// every other language has its keys, no more and no fewer, and in each text its {placeholders}.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "game/level/fault.h"

namespace halfdrop {

inline constexpr std::string_view kFirstLanguage = "en";

struct TextCatalogue {
  std::map<std::string, std::string, std::less<>> texts;  ///< by key
};

/// Names of a text's {placeholders}, each once, sorted. Nothing where a brace is alone or a name is not made
/// of a-z, 0-9 and _.
[[nodiscard]] tl::expected<std::vector<std::string>, std::string> placeholders(std::string_view text);

/// Every fault of one file at once. `like` is English, or null while it is English that is read.
[[nodiscard]] Result<TextCatalogue> read_catalogue(const std::string& path, const TextCatalogue* like);

/// A language of a data folder, by the name of its file ("de"), checked against its English.
[[nodiscard]] Result<TextCatalogue> read_language(const std::string& folder, const std::string& language);
/// Every language of a data folder, sorted: what stands in assets/text.
[[nodiscard]] std::vector<std::string> languages(const std::string& folder);

/// A file of words, by the folder it lies in (text) or its name for its own language: not a level.
[[nodiscard]] bool is_catalogue(const std::string& path);

}  // namespace halfdrop

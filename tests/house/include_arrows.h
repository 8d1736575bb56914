#pragma once
// Which file may include what: scenes, desk -> demonstrator, records -> marking -> session -> level ->
// physics.

#include <string>
#include <vector>

#include "tests/house/source_files.h"

namespace halfdrop::house {

struct Include {
  int line = 0;
  bool quoted = false;  ///< "..." rather than <...>
  std::string name;
};

[[nodiscard]] std::vector<Include> includes_of(const SourceFile& file);

/// Why this file may not include that; empty if it may.
[[nodiscard]] std::string objection(const std::string& path, const Include& include);

/// "path:line: objection" for every include of the file that the house does not allow.
[[nodiscard]] std::vector<std::string> objections(const SourceFile& file);

}  // namespace halfdrop::house

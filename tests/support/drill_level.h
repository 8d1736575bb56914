#pragma once
// The drills of levels/drills, for tests.

#include "tests/support/good_level.h"

namespace halfdrop::test {

inline std::string drill_path(DrillKind kind) {
  const char* const name = kind == DrillKind::read_meniscus     ? "01-read-the-meniscus"
                           : kind == DrillKind::know_apparatus  ? "00-know-your-apparatus"
                           : kind == DrillKind::deliver_exactly ? "02-deliver-exactly"
                                                                : "03-fill-without-air";
  return source_file("levels/drills/" + std::string(name) + ".json");
}

inline Level drill_level(DrillKind kind) {
  Result<Level> level = read_level(drill_path(kind));
  REQUIRE_MESSAGE(level.has_value(), all_of(level.error()));
  return *level;
}

}  // namespace halfdrop::test

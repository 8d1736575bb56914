#pragma once
// The project's own shelf of chemicals, read once.

#include "game/level/assets.h"
#include "tests/support/good_level.h"

namespace halfdrop::test {

inline const Assets& shelf() {
  static const Assets assets = [] {
    const Result<Assets> read = read_assets(HALFDROP_SOURCE_FOLDER);
    REQUIRE_MESSAGE(read.has_value(), why_not(read));
    return *read;
  }();
  return assets;
}

}  // namespace halfdrop::test

#pragma once
// What a drill's bench has ready for a seed. Internal to game/level.

#include "game/level/level.h"

namespace halfdrop {

/// Precondition: the level has a drill. Pictures: one in each of as many equal parts of the scale, in an
/// order and at places drawn by the seed, the eye never level with the meniscus, in every third the card out
/// of sight.
[[nodiscard]] DrillSpec drill_spec(const Level& level, std::uint64_t seed);

}  // namespace halfdrop

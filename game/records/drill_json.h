#pragma once
// The `drill` object of marks as JSON. Internal to game/records.

#include <optional>

#include "game/level/strict_json.h"
#include "game/records/marks_json.h"

namespace halfdrop {

/// kind, the drill's key figures, what each picture, volume or filling came to, and first_go: null, or the
/// attempt and each figure then, now and what became of it.
[[nodiscard]] Json drill_object(const DrillFigures& drill, const std::optional<FirstGo>& first_go);

}  // namespace halfdrop

#pragma once
// A drill's figures for a person at a terminal. Internal to game/records.

#include <optional>
#include <string>

#include "game/records/marks_json.h"

namespace halfdrop {

[[nodiscard]] std::string drill_text(const DrillFigures& drill, const std::optional<FirstGo>& first_go);

}  // namespace halfdrop

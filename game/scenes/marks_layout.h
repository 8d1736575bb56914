#pragma once
// What the parts of the marks page have in common. Internal to it.

#include <string>

#include "game/level/say.h"
#include "game/marking/marks.h"
#include "game/scenes/canvas.h"
#include "game/scenes/palette.h"

namespace halfdrop::marks_layout {

inline constexpr float kLeft = 90.0F, kWidth = 1080.0F;
inline constexpr float kFooter = 652.0F;  ///< where the page ends and the buttons begin
inline constexpr float kGap = 20.0F;

[[nodiscard]] inline TextStyle plain(float size) { return {size, palette::print}; }

/// "15.5 of 16.5"
[[nodiscard]] std::string points(const Marks::Part& part);
/// Returns where what it heads begins. `large`: words at 4 % of the height.
float heading(Canvas& canvas, float y, Phrase text, Phrase under = {}, bool large = false);

}  // namespace halfdrop::marks_layout

#pragma once
// A waterfall drawn true to scale: bars hang between a start line and an end line, on an axis with figures.

#include <string>

#include "game/marking/waterfall.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

enum class FallsUnit { cm3, percent };

/// What the axis shows, in the unit of the steps.
struct FallsReach {
  double low = 0.0, high = 0.0;
};
/// All of a waterfall with a margin, and no less than `least` wide: a faultless run must not look like a
/// storm.
[[nodiscard]] FallsReach reach_of(const Waterfall& falls, double least);
[[nodiscard]] FallsReach both(const FallsReach& one, const FallsReach& other);

/// Distance of the axis's figures: 1, 2 or 5 times a power of ten, at most `most` of them over a reach.
[[nodiscard]] double axis_step(const FallsReach& reach, int most);

struct WaterfallCard {
  const Waterfall& falls;
  FallsReach reach;
  FallsUnit unit = FallsUnit::cm3;
  std::string start_name, start_value, end_name, end_value;
  bool large = false;  ///< words at 4 % of the height
};

[[nodiscard]] float waterfall_height(const WaterfallCard& card);
void draw_waterfall(Canvas& canvas, Point top_left, float width, const WaterfallCard& card);

}  // namespace halfdrop

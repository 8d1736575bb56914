#pragma once
// A drill's figures as pictures: errors one by one, the last figures somebody likes, one go after the other.

#include <vector>

#include "game/scenes/canvas.h"
#include "game/scenes/earlier_goes.h"

namespace halfdrop {

/// What is drawn, and how large its words are: `large` for the back row of a room.
struct DrillCharts {
  const DrillFigures& drill;
  const std::vector<EarlierGo>& earlier;
  bool large = false;
};

/// Draws from the top left corner on in a column of a width; returns the height used. Appends what can be
/// clicked: "picture/3".
float draw_drill_charts(Canvas& canvas, Point top_left, float width, const DrillCharts& charts,
                        std::vector<std::pair<std::string, Rect>>& places);

/// From a volume to a place: `low` lies at `from`, `high` at `to`, cut off beyond.
struct Axis {
  double low = 0.0, high = 1.0;
  float from = 0.0F, to = 1.0F;
  [[nodiscard]] float at(double value) const;
};
/// Half the reach of an axis about nought that shows these errors: at least `least`, a whole number of
/// `step`.
[[nodiscard]] double reach_of(const std::vector<double>& errors, double least, double step);

}  // namespace halfdrop

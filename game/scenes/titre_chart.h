#pragma once
// One run's way from the ideal titre to the recorded one, a bar for each cause.

#include <string>
#include <vector>

#include "game/marking/marks.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

/// A bar of the chart, cm3; the first and the last are levels (from == to), the others lead from one to the
/// other.
struct TitreBar {
  std::string name;
  double from_cm3 = 0.0, to_cm3 = 0.0;
  bool level = false;
};

/// Ideal titre, each cause of at least 0.005 cm3 in the order of the catalogue, the smaller ones together,
/// recorded.
[[nodiscard]] std::vector<TitreBar> titre_bars(const TitreBreakdown& breakdown);

/// Height the chart needs.
[[nodiscard]] float titre_chart_height(const TitreRow& row);
/// Draws a run that has a breakdown. `top_left` is its corner.
void draw_titre_chart(Canvas& canvas, Point top_left, float width, const TitreRow& row);

}  // namespace halfdrop

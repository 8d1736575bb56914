#pragma once
// What the charts of a drill have in common. Internal to them.

#include <string>

#include "game/scenes/drill_charts.h"
#include "game/scenes/palette.h"

namespace halfdrop {

/// Sizes of words; the large ones are 4 % of the height.
struct ChartWords {
  float heading, normal, small;
};
[[nodiscard]] ChartWords chart_words(bool large);

/// A card with a heading; returns what is left inside it.
Rect draw_chart_card(Canvas& canvas, const Rect& card, const std::string& heading, bool large);
/// A dot with a white rim: full, or a ring.
void draw_chart_dot(Canvas& canvas, Point at, float radius, bool full, sf::Color colour);
void draw_chart_cross(Canvas& canvas, Point at, float radius, sf::Color colour);

using ChartPlaces = std::vector<std::pair<std::string, Rect>>;
float draw_reading_charts(Canvas& canvas, Point top_left, float width, const DrillCharts& charts,
                          ChartPlaces& places);
float draw_delivery_chart(Canvas& canvas, Point top_left, float width, const DrillCharts& charts);
/// Each piece: found, taken for what, put to use.
float draw_pieces(Canvas& canvas, Point top_left, float width, const DrillCharts& charts);
/// Key figures now and in the first go.
float draw_key_figures(Canvas& canvas, Point top_left, float width, const DrillCharts& charts);
/// Bias and spread, one go after the other. Nothing with a single go.
float draw_reading_goes(Canvas& canvas, Point top_left, float width, const DrillCharts& charts);

}  // namespace halfdrop

#include "game/scenes/drill_charts.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/drill_marks.h"
#include "game/scenes/chart_pen.h"
#include "game/scenes/page_pen.h"

namespace halfdrop {

namespace {

constexpr float kBetween = 16.0F, kPad = 16.0F;

}  // namespace

float Axis::at(double value) const {
  const double share = std::clamp((value - low) / (high - low), 0.0, 1.0);
  return from + (to - from) * static_cast<float>(share);
}

double reach_of(const std::vector<double>& errors, double least, double step) {
  double most = least;
  for (const double error : errors) most = std::max(most, std::fabs(error));
  return step * std::ceil(most / step - 1e-9);
}

ChartWords chart_words(bool large) { return large ? ChartWords{34, 29, 29} : ChartWords{18, 16, 14}; }

Rect draw_chart_card(Canvas& canvas, const Rect& card, const std::string& heading, bool large) {
  const float size = chart_words(large).heading;
  canvas.rounded_rect(card, 8, rgb(0xffffff, 0.75));
  canvas.stroke(rounded_rect_points(card, 8), {1, true}, palette::paper_line);
  canvas.text(heading, {card.x + kPad, card.y + 10 + size}, {size, palette::print, Face::bold});
  const float top = 20 + size * 1.25F;
  return {card.x + kPad, card.y + top, card.w - 2 * kPad, card.h - top - 12};
}

void draw_chart_dot(Canvas& canvas, Point at, float radius, bool full, sf::Color colour) {
  canvas.circle(at, radius + 1.2F, rgb(0xfffdf8));
  if (full) return canvas.circle(at, radius, colour);
  canvas.stroke(ellipse_points(at, radius - 1, radius - 1), {2, true}, colour);
}

void draw_chart_cross(Canvas& canvas, Point at, float radius, sf::Color colour) {
  const StrokeStyle style{radius * 0.5F, false, true};
  canvas.stroke({{at.x - radius, at.y - radius}, {at.x + radius, at.y + radius}}, style, colour);
  canvas.stroke({{at.x - radius, at.y + radius}, {at.x + radius, at.y - radius}}, style, colour);
}

/// Each key figure beside that of the first go, or alone when there was none.
std::vector<FigureChange> changes_since_first(const DrillCharts& charts) {
  std::vector<FigureChange> changes;
  if (charts.earlier.empty()) {
    for (const DrillFigure& figure : key_figures(charts.drill)) changes.push_back({{}, figure, ""});
    return changes;
  }
  return compare_goes(*charts.earlier.front().marked.drill, charts.drill);
}

float draw_key_figures(Canvas& canvas, Point top_left, float width, const DrillCharts& charts) {
  const ChartWords sizes = chart_words(charts.large);
  const float row = sizes.normal * 1.6F;
  const bool compares = !charts.earlier.empty();
  const std::vector<FigureChange> changes = changes_since_first(charts);
  const float rows = static_cast<float>(changes.size() + (compares ? 1 : 0));
  const float height = 20 + sizes.heading * 1.25F + row * rows + 18;
  const Rect in = draw_chart_card(canvas, {top_left.x, top_left.y, width, height}, say("chart.key_figures"),
                                  charts.large);
  // The back row gets the figures; what is said of them would not fit beside.
  const bool says = compares && !charts.large;
  const float now_x = in.x + in.w * (says ? 0.46F : (compares ? 0.70F : 0.80F)),
              first_x = in.x + in.w * (says ? 0.68F : 1.0F);
  const TextStyle plain{sizes.normal, palette::print}, soft{sizes.small, palette::print_soft};
  float y = in.y + row / 2;
  const auto right = [](TextStyle style, Face face) {
    style.align = Align::right;
    style.face = face;
    return style;
  };
  if (compares) {
    canvas.text_middle(say("chart.now"), {now_x, y}, right(soft, Face::semibold));
    canvas.text_middle(say("chart.first_go"), {first_x, y}, right(soft, Face::semibold));
    if (says)
      canvas.text_middle(say("chart.against_first", {{"when", charts.earlier.front().when}}),
                         {first_x + 24, y}, soft);
    y += row;
  }
  for (const FigureChange& change : changes) {
    canvas.text_middle(
        change.second.title, {in.x, y},
        fitted(canvas, change.second.title,
               now_x - in.x - 10 - canvas.text_width(figure_words(change.second), plain), plain));
    canvas.text_middle(figure_words(change.second), {now_x, y}, right(plain, Face::semibold));
    if (compares) {
      canvas.text_middle(figure_words(change.first), {first_x, y}, right(plain, Face::regular));
      if (says) canvas.text_middle(change.verdict, {first_x + 24, y}, plain);
    }
    y += row;
  }
  return height;
}

float draw_drill_charts(Canvas& canvas, Point top_left, float width, const DrillCharts& charts,
                        ChartPlaces& places) {
  Point at = top_left;
  const auto below = [&](float height) {
    if (height > 0) at.y += height + kBetween;
  };
  if (std::holds_alternative<ReadingDrill>(charts.drill))
    below(draw_reading_charts(canvas, at, width, charts, places));
  if (std::holds_alternative<DeliveryDrill>(charts.drill))
    below(draw_delivery_chart(canvas, at, width, charts));
  if (std::holds_alternative<KnowingDrill>(charts.drill)) below(draw_pieces(canvas, at, width, charts));
  below(draw_key_figures(canvas, at, width, charts));
  below(draw_reading_goes(canvas, at, width, charts));
  return at.y - top_left.y;
}

}  // namespace halfdrop

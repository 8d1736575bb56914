// One go at "read the meniscus" after the other.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/chart_pen.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

/// One go: a figure and twice its standard error.
struct GoPoint {
  double value = 0.0, error = 0.0;
};

struct GoSeries {
  std::string name;
  std::vector<GoPoint> points;
  double low = 0.0, high = 0.1, step = 0.05;
  double line = 0.0;  ///< to be compared with
  std::string line_name;
  bool counted = true;  ///< every go is there: the second point is the second go
};

void draw_series(Canvas& canvas, const Rect& in, const GoSeries& series, bool large) {
  const ChartWords sizes = chart_words(large);
  canvas.text_middle(series.name, {in.x, in.y + sizes.normal * 0.6F},
                     {sizes.normal, palette::print, Face::semibold});
  const float labels = sizes.small * 3.1F, top = in.y + sizes.normal * 1.5F + sizes.small;
  const Rect plot{in.x + labels, top, in.w - labels, in.bottom() - top - sizes.small * 1.5F};
  const Axis axis{series.low, series.high, plot.bottom(), plot.y};
  const int steps = static_cast<int>(std::lround((series.high - series.low) / series.step));
  for (int i = 0; i <= steps; ++i) {
    const double value = series.low + i * series.step;
    canvas.line({plot.x, axis.at(value)}, {plot.right(), axis.at(value)}, 1, palette::paper_line);
    canvas.text_middle(series.low < 0 ? words::with_sign(value, 2) : words::fixed(value, 2),
                       {plot.x - 8, axis.at(value)},
                       {sizes.small, palette::print, Face::regular, Align::right});
  }
  canvas.dashed({{plot.x, axis.at(series.line)}, {plot.right(), axis.at(series.line)}}, 2, 7, 5,
                palette::tap_handle);
  canvas.text(series.line_name, {plot.right(), axis.at(series.line) - 4},
              {sizes.small, palette::tap_handle_dark, Face::regular, Align::right});
  canvas.flush();
  const float pitch = plot.w / static_cast<float>(series.points.size());
  for (std::size_t i = 0; i < series.points.size(); ++i) {
    const GoPoint& go = series.points[i];
    const float x = plot.x + pitch * (static_cast<float>(i) + 0.5F);
    canvas.line({x, axis.at(go.value - go.error)}, {x, axis.at(go.value + go.error)}, 2, palette::accent);
    const bool now = i + 1 == series.points.size();
    draw_chart_dot(canvas, {x, axis.at(go.value)}, now ? 7 : 5, true, palette::accent);
    const std::string name =
        now ? say("chart.now")
            : (i == 0 ? say("chart.first") : (series.counted ? std::to_string(i + 1) : ""));
    if (pitch > sizes.small * 1.2F || now)
      canvas.text_middle(name, {x, plot.bottom() + sizes.small * 0.9F},
                         {sizes.small, palette::print, now ? Face::bold : Face::regular, Align::centre});
  }
}

double reach_with_errors(const std::vector<GoPoint>& points, double least, double step) {
  std::vector<double> ends;
  for (const GoPoint& go : points) ends.push_back(std::fabs(go.value) + go.error);
  return reach_of(ends, least, step);
}

}  // namespace

float draw_reading_goes(Canvas& canvas, Point top_left, float width, const DrillCharts& charts) {
  const auto* now = std::get_if<ReadingDrill>(&charts.drill);
  if (now == nullptr || charts.earlier.empty()) return 0.0F;
  GoSeries bias{say("chart.bias_errors"), {}, 0, 0, 0.05, 0.0, ""};
  GoSeries spread{say("chart.spread"),      {}, 0, 0, 0.05, trained_sd_cm3(now->to_cm3),
                  say("chart.trained_line")};
  const auto add = [&](const ReadingDrill& drill) {
    if (drill.errors.count < 2) return;
    bias.points.push_back({drill.errors.mean, kSeenErrors * drill.errors.mean_error});
    spread.points.push_back({drill.errors.sd, kSeenErrors * drill.errors.sd_error});
  };
  for (const EarlierGo& go : charts.earlier) add(std::get<ReadingDrill>(*go.marked.drill));
  add(*now);
  if (bias.points.empty()) return 0.0F;
  bias.counted = spread.counted = charts.earlier.size() < kMostGoes;
  bias.high = reach_with_errors(bias.points, 0.05, 0.05);
  bias.low = -bias.high;
  spread.high = reach_with_errors(spread.points, 0.05, 0.05);
  const float height = charts.large ? 460.0F : 270.0F;
  const Rect in =
      draw_chart_card(canvas, {top_left.x, top_left.y, width, height}, say("chart.goes"), charts.large);
  const float each = (in.w - 32) / 2;
  draw_series(canvas, {in.x, in.y, each, in.h}, bias, charts.large);
  draw_series(canvas, {in.x + each + 32, in.y, each, in.h}, spread, charts.large);
  return height;
}

}  // namespace halfdrop

// Chart of "deliver exactly": each volume's error on an axis of its own.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/wording.h"
#include "game/scenes/chart_pen.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr double kVolumeReach_cm3 = 0.2, kVolumeStep_cm3 = 0.1;
constexpr double kDropReach_cm3 = 0.04, kDropStep_cm3 = 0.02;

struct DeliveryRow {
  const VolumeDelivered& volume;
  std::vector<double> earlier;  ///< errors of earlier goes
};

void draw_row(Canvas& canvas, const Rect& at, const DeliveryRow& row, bool large) {
  const ChartWords sizes = chart_words(large);
  const bool drop = row.volume.asked.what != Delivery::What::volume;
  const double step = drop ? kDropStep_cm3 : kVolumeStep_cm3;
  std::vector<double> now;  // earlier goes that were further off lie at the end of the axis
  if (const auto error = row.volume.error_cm3()) now.push_back(*error);
  const double reach = reach_of(now, drop ? kDropReach_cm3 : kVolumeReach_cm3, step);
  const float names = sizes.normal * 8.5F, figures = sizes.normal * 9.0F;
  const Rect plot{at.x + names, at.y, at.w - names - figures, at.h};
  const Axis axis{-reach, reach, plot.x, plot.right()};
  const float y = at.y + at.h * 0.38F;
  canvas.text_middle(asked_text(row.volume.asked), {at.x, y}, {sizes.normal, palette::print, Face::semibold});
  canvas.line({plot.x, y}, {plot.right(), y}, 1, palette::paper_line);
  for (const double tick : {-reach, -reach / 2, 0.0, reach / 2, reach}) {
    const float x = axis.at(tick);
    canvas.line({x, y - 9}, {x, y + 9}, tick == 0 ? 2.4F : 1,
                tick == 0 ? palette::print : palette::print_soft);
    canvas.text_middle(words::with_sign(tick, 2), {x, at.y + at.h * 0.38F + 9 + sizes.small * 0.7F},
                       {sizes.small, palette::print_soft, Face::regular, Align::centre});
  }
  for (const double error : row.earlier)
    draw_chart_dot(canvas, {axis.at(error), y}, 5, false, palette::print_soft);
  canvas.flush();
  const auto error = row.volume.error_cm3();
  if (error) draw_chart_dot(canvas, {axis.at(*error), y}, 8, true, palette::tap_handle_dark);
  canvas.text_middle(error ? signed_cm3_text(*error, 3) : say("chart.not_let_in"), {at.right(), y},
                     {sizes.normal, palette::print, Face::semibold, Align::right});
}

}  // namespace

float draw_delivery_chart(Canvas& canvas, Point top_left, float width, const DrillCharts& charts) {
  const auto& drill = std::get<DeliveryDrill>(charts.drill);
  const ChartWords sizes = chart_words(charts.large);
  const float row = 22 + sizes.small * 1.4F + sizes.normal * 0.5F;
  const float height =
      20 + sizes.heading * 1.25F + row * static_cast<float>(drill.volumes.size()) + sizes.small * 1.6F + 16;
  const Rect in =
      draw_chart_card(canvas, {top_left.x, top_left.y, width, height}, say("chart.delivery"), charts.large);
  for (std::size_t i = 0; i < drill.volumes.size(); ++i) {
    DeliveryRow one{drill.volumes[i], {}};
    for (const EarlierGo& go : charts.earlier) {
      const auto& before = std::get<DeliveryDrill>(*go.marked.drill).volumes;
      if (i < before.size() && before[i].error_cm3()) one.earlier.push_back(*before[i].error_cm3());
    }
    draw_row(canvas, {in.x, in.y + row * static_cast<float>(i), in.w, row}, one, charts.large);
  }
  const float y = in.bottom() - sizes.small * 0.6F;
  draw_chart_dot(canvas, {in.x + 8, y}, 7, true, palette::tap_handle_dark);
  canvas.text_middle(say("chart.now"), {in.x + 22, y}, {sizes.small, palette::print});
  if (!charts.earlier.empty()) {
    const float x = in.x + 40 + canvas.text_width(say("chart.now"), {sizes.small, palette::print});
    draw_chart_dot(canvas, {x, y}, 5, false, palette::print_soft);
    canvas.text_middle(say("chart.earlier_goes"), {x + 14, y}, {sizes.small, palette::print});
  }
  return height;
}

}  // namespace halfdrop

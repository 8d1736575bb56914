// Charts of "read the meniscus".

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/wording.h"
#include "game/scenes/chart_pen.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr double kGrid_cm3 = 0.05, kLeastReach_cm3 = 0.1;
const sf::Color kOff = rgb(0xc96a35);

std::string signed_hundredths(double cm3) { return words::with_sign(cm3, 2); }

/// Upwards is high: an axis from bottom to top.
Axis upright(const Rect& plot, double reach) { return {-reach, reach, plot.bottom(), plot.y}; }

void draw_grid(Canvas& canvas, const Rect& plot, const Axis& axis, bool large) {
  const float size = chart_words(large).small;
  const int lines = static_cast<int>(std::lround(axis.high / kGrid_cm3));
  const int every =
      std::max(1, static_cast<int>(std::ceil(size * 1.3F * static_cast<float>(2 * lines + 1) / plot.h)));
  for (int i = -lines; i <= lines; ++i) {
    const float y = axis.at(i * kGrid_cm3);
    canvas.line({plot.x, y}, {plot.right(), y}, i == 0 ? 1.6F : 1,
                i == 0 ? palette::print : palette::paper_line);
    if (i % every == 0)
      canvas.text_middle(signed_hundredths(i * kGrid_cm3), {plot.x - 8, y},
                         {size, palette::print, Face::regular, Align::right});
  }
}

/// Mean with twice its standard error.
void draw_bias(Canvas& canvas, const Rect& plot, const Axis& axis, const SampleStatistics& errors) {
  if (errors.count < 2) return;
  const float high = axis.at(errors.mean + kSeenErrors * errors.mean_error),
              low = axis.at(errors.mean - kSeenErrors * errors.mean_error);
  canvas.rect({plot.x, high, plot.w, low - high}, faded(palette::accent, 0.16));
  const float y = axis.at(errors.mean);
  canvas.line({plot.x, y}, {plot.right(), y}, 2.2F, palette::accent);
}

void draw_errors(Canvas& canvas, const Rect& plot, const Axis& axis, const ReadingDrill& drill,
                 ChartPlaces& places) {
  const float pitch = plot.w / static_cast<float>(std::max<std::size_t>(1, drill.pictures.size()));
  const float radius = std::min(6.0F, pitch * 0.3F);
  for (const PictureRead& picture : drill.pictures) {
    if (!picture.read()) continue;
    const Point at{plot.x + pitch * (static_cast<float>(picture.number) - 0.5F),
                   axis.at(picture.error_cm3())};
    places.emplace_back("picture/" + std::to_string(picture.number),
                        Rect{at.x - pitch / 2, plot.y, pitch, plot.h});
    if (picture.slip()) {
      draw_chart_cross(canvas, {at.x, std::clamp(at.y, plot.y + radius, plot.bottom() - radius)}, radius,
                       palette::bad);
    } else {
      draw_chart_dot(canvas, at, radius, !picture.off_level(), picture.off_level() ? kOff : palette::accent);
    }
  }
}

void draw_legend(Canvas& canvas, Point at, float right, const ReadingDrill& drill, bool large) {
  const float size = chart_words(large).small;
  const TextStyle style{size, palette::print};
  float x = at.x;
  const auto entry = [&](const std::string& text, const auto& mark) {
    const float wide = canvas.text_width(text, style) + 50;
    if (x + wide > right + 26) {
      x = at.x;
      at.y += size * 1.4F;
    }
    mark(Point{x + 8, at.y});
    canvas.text_middle(text, {x + 24, at.y}, style);
    x += wide;
  };
  entry(say("chart.eye_level"), [&](Point p) { draw_chart_dot(canvas, p, 6, true, palette::accent); });
  entry(say("chart.eye_off_level"), [&](Point p) { draw_chart_dot(canvas, p, 6, false, kOff); });
  if (drill.slips > 0)
    entry(say("chart.slip"), [&](Point p) { draw_chart_cross(canvas, p, 5, palette::bad); });
  // In the back row's letters a second row would not fit into the card.
  entry(large ? say("chart.bias_short") : say("chart.bias"), [&](Point p) {
    canvas.rect({p.x - 9, p.y - 6, 18, 12}, faded(palette::accent, 0.16));
    canvas.line({p.x - 9, p.y}, {p.x + 9, p.y}, 2.2F, palette::accent);
  });
}

float draw_error_chart(Canvas& canvas, Point top_left, float width, const DrillCharts& charts,
                       ChartPlaces& places) {
  const auto& drill = std::get<ReadingDrill>(charts.drill);
  const bool large = charts.large;
  const ChartWords sizes = chart_words(large);
  const float height = large ? 400.0F : 272.0F, legend = sizes.small * 1.7F;
  const Rect in = draw_chart_card(canvas, {top_left.x, top_left.y, width, height},
                                  large ? say("chart.errors_short") : say("chart.errors"), large);
  const float labels = sizes.small * 3.1F;
  const Rect plot{in.x + labels, in.y, in.w - labels, in.h - legend - 6};
  std::vector<double> errors;
  for (const PictureRead& picture : drill.pictures) {
    if (picture.read() && !picture.slip()) errors.push_back(picture.error_cm3());
  }
  const Axis axis = upright(plot, reach_of(errors, kLeastReach_cm3, kGrid_cm3));
  draw_grid(canvas, plot, axis, large);
  draw_bias(canvas, plot, axis, drill.errors);
  canvas.flush();
  draw_errors(canvas, plot, axis, drill, places);
  draw_legend(canvas, {plot.x, plot.bottom() + 6 + sizes.small * 0.85F}, plot.right(), drill, large);
  return height;
}

struct Bar {
  float x, width;
  int count;
  bool full;
};

void draw_digit_bar(Canvas& canvas, const Rect& plot, const Bar& bar, int most, float size) {
  const float high =
      (plot.h - size * 1.3F) * static_cast<float>(bar.count) / static_cast<float>(std::max(1, most));
  const Rect rect{bar.x, plot.bottom() - high, bar.width, high};
  if (bar.full) {
    canvas.rect(rect, palette::accent);
  } else {
    canvas.rect(rect, faded(palette::accent, 0.10));
    canvas.stroke(
        {{rect.x, rect.bottom()}, {rect.x, rect.y}, {rect.right(), rect.y}, {rect.right(), rect.bottom()}},
        {1.6F}, palette::accent);
  }
  if (bar.count > 0)
    canvas.text_middle(std::to_string(bar.count), {rect.centre().x, rect.y - size * 0.6F},
                       {size, palette::print, Face::semibold, Align::centre});
}

std::string digit_words(const ReadingDrill& drill) {
  if (drill.liked_digit) return say("chart.liked", {{"digit", std::to_string(*drill.liked_digit)}});
  int written = 0;
  for (const DigitCount& count : drill.digits) written += count.written;
  return written < kFewestValues ? say("chart.liking_too_few") : say("chart.liking_none");
}

float draw_digit_chart(Canvas& canvas, Point top_left, float width, const ReadingDrill& drill, bool large) {
  const ChartWords sizes = chart_words(large);
  const float height = large ? 380.0F : 236.0F;
  const Rect in =
      draw_chart_card(canvas, {top_left.x, top_left.y, width, height}, say("chart.digits"), large);
  const bool all = drill.to_cm3 <= 0.01;
  const float foot = sizes.small * 4.4F;
  const Rect plot{in.x, in.y, in.w, in.h - foot};
  std::vector<std::size_t> digits;
  int most = 1;
  for (std::size_t i = 0; i < drill.digits.size(); ++i) {
    const DigitCount& count = drill.digits[i];
    if (!all && i % 5 != 0 && count.written == 0) continue;
    digits.push_back(i);
    most = std::max({most, count.written, count.called_for});
  }
  const float pitch = plot.w / static_cast<float>(digits.size()), bar = std::min(60.0F, pitch * 0.32F);
  for (std::size_t i = 0; i < digits.size(); ++i) {
    const float middle = plot.x + pitch * (static_cast<float>(i) + 0.5F);
    const DigitCount& count = drill.digits[digits[i]];
    draw_digit_bar(canvas, plot, {middle - bar - 2, bar, count.written, true}, most, sizes.small);
    draw_digit_bar(canvas, plot, {middle + 2, bar, count.called_for, false}, most, sizes.small);
    canvas.text_middle(std::to_string(digits[i]), {middle, plot.bottom() + sizes.normal * 0.75F},
                       {sizes.normal, palette::print, Face::bold, Align::centre});
  }
  canvas.line({plot.x, plot.bottom()}, {plot.right(), plot.bottom()}, 1.4F, palette::print);
  const float y = plot.bottom() + sizes.small * 2.4F;
  canvas.rect({in.x, y - 6, 14, 12}, palette::accent);
  canvas.text_middle(say("chart.you_wrote"), {in.x + 22, y}, {sizes.small, palette::print});
  const float second = in.x + 40 + canvas.text_width(say("chart.you_wrote"), {sizes.small, palette::print});
  canvas.stroke({{second, y - 6}, {second + 14, y - 6}, {second + 14, y + 6}, {second, y + 6}}, {1.6F, true},
                palette::accent);
  canvas.text_middle(say("chart.called_for"), {second + 22, y}, {sizes.small, palette::print});
  canvas.text_middle(digit_words(drill), {in.x, y + sizes.small * 1.45F},
                     {sizes.small, palette::print, Face::semibold});
  return height;
}

/// A spread as a bar of twice its length about nought.
void draw_spread(Canvas& canvas, const Rect& row, const Axis& axis, const std::string& name, double sd,
                 const ChartWords& sizes, bool own) {
  const float middle = row.bottom() - sizes.normal * 0.55F;
  canvas.text_middle(say("chart.spread_of", {{"who", name}, {"size", figure_text(sd, 3)}}),
                     {row.x, row.y + sizes.normal * 0.6F},
                     {sizes.normal, palette::print, own ? Face::semibold : Face::regular});
  const float left = axis.at(-sd), right = axis.at(sd), high = sizes.normal * 0.8F;
  canvas.rounded_rect({left, middle - high / 2, std::max(2.0F, right - left), high}, 3,
                      own ? palette::accent : faded(palette::print_soft, 0.45));
  canvas.line({axis.at(0), middle - high * 0.8F}, {axis.at(0), middle + high * 0.8F}, 1.4F, palette::print);
}

float draw_trained_chart(Canvas& canvas, Point top_left, float width, const ReadingDrill& drill, bool large) {
  const ChartWords sizes = chart_words(large);
  const float height = large ? 380.0F : 236.0F;
  const Rect in =
      draw_chart_card(canvas, {top_left.x, top_left.y, width, height}, say("chart.spread_heading"), large);
  const double trained = trained_sd_cm3(drill.to_cm3);
  const double reach = 1.15 * std::max(trained, drill.errors.sd);
  const Axis axis{-reach, reach, in.x, in.right()};
  const float row = sizes.normal * 2.5F;
  float y = in.y;
  if (drill.errors.count >= 2) {
    draw_spread(canvas, {in.x, y, in.w, row}, axis, say("chart.you"), drill.errors.sd, sizes, true);
    y += row + 8;
  }
  const std::string readers = drill.to_cm3 > 0.01 && !large
                                  ? say("chart.trained_to", {{"to", figure_text(drill.to_cm3, 2)}})
                                  : say("chart.trained");
  draw_spread(canvas, {in.x, y, in.w, row}, axis, readers, trained, sizes, false);
  y += row + 10;
  canvas.paragraph(large ? say("chart.trained_note_short") : say("chart.trained_note"),
                   {in.x, y + sizes.small}, in.w, sizes.small * 1.3F, {sizes.small, palette::print_soft});
  return height;
}

}  // namespace

float draw_reading_charts(Canvas& canvas, Point top_left, float width, const DrillCharts& charts,
                          ChartPlaces& places) {
  constexpr float kGap = 16.0F;
  const auto& drill = std::get<ReadingDrill>(charts.drill);
  float y = top_left.y + draw_error_chart(canvas, top_left, width, charts, places) + kGap;
  const float each = (width - kGap) / 2;
  const float digits = draw_digit_chart(canvas, {top_left.x, y}, each, drill, charts.large);
  draw_trained_chart(canvas, {top_left.x + each + kGap, y}, each, drill, charts.large);
  return y + digits - top_left.y;
}

}  // namespace halfdrop

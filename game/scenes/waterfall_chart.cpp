#include "game/scenes/waterfall_chart.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

const sf::Color kRaised = rgb(0xb9541f), kLowered = rgb(0x2f6b8a);

struct Sizes {
  float words, small, row, margin, stages, names, values;
};
/// Large: the stages' column goes, for the names.
Sizes sizes_of(bool large) {
  return large ? Sizes{29, 29, 42, 16, 0, 560, 178} : Sizes{16, 14, 27, 16, 78, 318, 104};
}

Phrase stage_name(Stage stage) {
  switch (stage) {
    case Stage::flask:
      return "marks.stage.flask";
    case Stage::burette:
      return "marks.stage.burette";
    case Stage::eye:
      return "marks.stage.eye";
    case Stage::paper:
      return "marks.stage.paper";
  }
  return {};
}

/// The bars' field.
struct Field {
  Rect area;
  FallsReach reach;
  [[nodiscard]] float x(double value) const {
    return area.x + area.w * static_cast<float>((value - reach.low) / (reach.high - reach.low));
  }
};

std::string size_text(double size, FallsUnit unit) {
  return unit == FallsUnit::cm3 ? words::volume_with_sign(size) : words::with_sign(size, 2) + " %";
}

void draw_axis(Canvas& canvas, const Field& field, const WaterfallCard& card, const Sizes& sizes) {
  const double step = axis_step(field.reach, card.large ? 4 : 8);
  const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 4);
  for (double at = std::ceil(field.reach.low / step - 1e-9) * step; at <= field.reach.high + 1e-9 * step;
       at += step) {
    const float x = field.x(at);
    canvas.line({x, field.area.y}, {x, field.area.bottom()}, 1, faded(palette::print, 0.13));
    canvas.text_middle(card.unit == FallsUnit::cm3 ? words::fixed(at, std::max(2, decimals))
                                                   : words::with_sign(at, decimals),
                       {x, field.area.bottom() + sizes.small * 0.9F},
                       {sizes.small, palette::print, Face::regular, Align::centre});
  }
}

/// The axis's own measure: a drop, or half of one, in the names' column.
void draw_drop_measure(Canvas& canvas, const Field& field, Point left, const Sizes& sizes) {
  constexpr double kDrop_cm3 = 0.05;
  const float drop = field.x(field.reach.low + kDrop_cm3) - field.area.x;
  const bool whole = drop <= sizes.names * 0.45F;
  const float wide = whole ? drop : drop / 2;
  if (wide < 4) return;
  canvas.line(left, {left.x + wide, left.y}, 2, palette::print);
  for (const float x : {left.x, left.x + wide})
    canvas.line({x, left.y - 5}, {x, left.y + 5}, 2, palette::print);
  canvas.text_middle(whole ? say("marks.one_drop") : say("marks.half_drop"), {left.x + wide + 10, left.y},
                     {sizes.small, palette::print});
}

/// A bar from one level to the next; its point says the way without colour.
void draw_bar(Canvas& canvas, const Field& field, float y, const Sizes& sizes, const WaterfallStep& step) {
  const float a = field.x(step.from), b = field.x(step.to), half = sizes.row * 0.33F;
  const bool raised = step.to >= step.from;
  const sf::Color colour = raised ? kRaised : kLowered;
  const float point = std::min(half * 0.9F, std::abs(b - a)) * (raised ? 1.0F : -1.0F);
  if (std::abs(b - a) < 1.5F) {
    canvas.line({b, y - half}, {b, y + half}, 2, colour);
  } else {
    canvas.polygon({{a, y - half}, {b - point, y - half}, {b, y}, {b - point, y + half}, {a, y + half}},
                   colour);
  }
  canvas.line({b, y}, {b, y + sizes.row - half}, 1, faded(palette::print, 0.6));
}

void draw_level(Canvas& canvas, float x, float y, float row) {
  canvas.line({x, y - row * 0.4F}, {x, y + row * 0.4F}, 4, palette::accent);
}

struct Row {
  std::string stage, name, value;
  Face face = Face::regular;
};

void draw_row_words(Canvas& canvas, const Rect& line, const Sizes& sizes, const Row& row) {
  const float middle = line.centre().y;
  if (sizes.stages > 0)
    canvas.text_middle(row.stage, {line.x, middle}, {sizes.small, palette::print_soft, Face::italic});
  canvas.text_middle(row.name, {line.x + sizes.stages, middle},
                     fitted(canvas, row.name, sizes.names - 6, {sizes.words, palette::print, row.face}));
  canvas.text_middle(row.value, {line.right(), middle},
                     {sizes.words, palette::print, row.face, Align::right});
}

std::string name_of(const WaterfallStep& step) {
  return step.merged > 1 ? step.name + " (" + std::to_string(step.merged) + ")" : step.name;
}

/// Both lines all the way, so that every bar is seen between them.
void draw_end_lines(Canvas& canvas, const Field& field, const Waterfall& falls) {
  const float start = field.x(falls.start), end = field.x(falls.end);
  canvas.dashed({{start, field.area.y}, {start, field.area.bottom()}}, 1.4F, 5, 4, palette::accent);
  canvas.line({end, field.area.y}, {end, field.area.bottom()}, 1.4F, palette::accent);
}

void draw_steps(Canvas& canvas, const Field& field, const WaterfallCard& card, const Rect& lines,
                const Sizes& sizes) {
  const auto line = [&](std::size_t i) {
    return Rect{lines.x, lines.y + sizes.row * static_cast<float>(i), lines.w, sizes.row};
  };
  draw_row_words(canvas, line(0), sizes, {"", card.start_name, card.start_value, Face::semibold});
  draw_level(canvas, field.x(card.falls.start), line(0).centre().y, sizes.row);
  const auto& steps = card.falls.steps;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const bool first = (i == 0 || steps[i - 1].stage != steps[i].stage) && steps[i].merged == 0;
    const Rect at = line(i + 1);
    if (first || steps[i].merged > 0) canvas.line({at.x, at.y}, {at.right(), at.y}, 1, palette::paper_line);
    draw_row_words(canvas, at, sizes,
                   {first ? say(stage_name(steps[i].stage)) : "", name_of(steps[i]),
                    size_text(steps[i].size(), card.unit)});
    draw_bar(canvas, field, at.centre().y, sizes, steps[i]);
  }
  const Rect last = line(steps.size() + 1);
  canvas.line({last.x, last.y}, {last.right(), last.y}, 1, palette::paper_line);
  draw_row_words(canvas, last, sizes, {"", card.end_name, card.end_value, Face::semibold});
  draw_level(canvas, field.x(card.falls.end), last.centre().y, sizes.row);
}

}  // namespace

FallsReach reach_of(const Waterfall& falls, double least) {
  double low = std::min(falls.start, falls.end), high = std::max(falls.start, falls.end);
  for (const WaterfallStep& step : falls.steps) {
    low = std::min(low, step.to);
    high = std::max(high, step.to);
  }
  const double margin = std::max(0.0, least - (high - low)) / 2.0 + 0.03 * (high - low);
  return {low - margin, high + margin};
}

FallsReach both(const FallsReach& one, const FallsReach& other) {
  return {std::min(one.low, other.low), std::max(one.high, other.high)};
}

double axis_step(const FallsReach& reach, int most) {
  const double least = (reach.high - reach.low) / most;
  const double power = std::pow(10.0, std::floor(std::log10(least)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (times * power >= least * (1.0 - 1e-9)) return times * power;
  }
  return 10.0 * power;
}

float waterfall_height(const WaterfallCard& card) {
  const Sizes sizes = sizes_of(card.large);
  return 2 * sizes.margin + sizes.row * static_cast<float>(card.falls.steps.size() + 2) + sizes.small * 1.7F;
}

void draw_waterfall(Canvas& canvas, Point top_left, float width, const WaterfallCard& card) {
  const Sizes sizes = sizes_of(card.large);
  const Rect all{top_left.x, top_left.y, width, waterfall_height(card)};
  canvas.rounded_rect(all, 8, rgb(0xffffff, 0.8));
  canvas.stroke(rounded_rect_points(all, 8), {1, true}, palette::paper_line);
  const Rect lines{all.x + sizes.margin, all.y + sizes.margin, all.w - 2 * sizes.margin,
                   sizes.row * static_cast<float>(card.falls.steps.size() + 2)};
  const float left = lines.x + sizes.stages + sizes.names, right = lines.right() - sizes.values;
  const Field field{{left, lines.y, right - left, lines.h + 4}, card.reach};
  draw_axis(canvas, field, card, sizes);
  canvas.text_middle(card.unit == FallsUnit::cm3 ? "cm\u00b3" : "%",
                     {lines.right(), field.area.bottom() + sizes.small * 0.9F},
                     {sizes.small, palette::print, Face::regular, Align::right});
  if (card.unit == FallsUnit::cm3) {
    draw_drop_measure(canvas, field, {lines.x + sizes.stages, field.area.bottom() + sizes.small * 0.9F},
                      sizes);
  }
  draw_end_lines(canvas, field, card.falls);
  draw_steps(canvas, field, card, lines, sizes);
}

}  // namespace halfdrop

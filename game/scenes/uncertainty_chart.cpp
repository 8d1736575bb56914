#include "game/scenes/uncertainty_chart.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/wording.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/waterfall_chart.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

struct Sizes {
  float heading, words, small, row, margin;
};
Sizes sizes_of(bool large) { return large ? Sizes{36, 29, 29, 42, 18} : Sizes{24, 16, 15, 27, 16}; }

void draw_card(Canvas& canvas, const Rect& card) {
  canvas.rounded_rect(card, 8, rgb(0xffffff, 0.8));
  canvas.stroke(rounded_rect_points(card, 8), {1, true}, palette::paper_line);
}

/// Results along a line.
struct Line {
  float left, right;
  FallsReach reach;
  [[nodiscard]] float x(double value) const {
    return left + (right - left) * static_cast<float>((value - reach.low) / (reach.high - reach.low));
  }
};

Line line_of(const OwnUncertainty& own, double true_value, float left, float right) {
  const double value = own.budget.value, mine = own.budget.expanded, best = own.perfect_hands_expanded;
  const double low = std::min(value - mine, true_value - best),
               high = std::max(value + mine, true_value + best);
  const double margin = 0.06 * (high - low);
  return {left, right, {low - margin, high + margin}};
}

void draw_interval(Canvas& canvas, const Line& line, float y, double middle, double expanded, bool full) {
  const float a = line.x(middle - expanded), b = line.x(middle + expanded);
  const sf::Color colour = full ? palette::ink : palette::good;
  canvas.line({a, y}, {b, y}, full ? 3.0F : 2.0F, colour);
  for (const float x : {a, b}) canvas.line({x, y - 7}, {x, y + 7}, 2, colour);
  canvas.circle({line.x(middle), y}, 5.5F, colour);
  if (!full) canvas.circle({line.x(middle), y}, 3.2F, rgb(0xffffff));
}

void draw_ticks(Canvas& canvas, const Line& line, float top, float bottom, const Sizes& sizes) {
  const double step = axis_step(line.reach, 6);
  const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 6);
  canvas.line({line.left, bottom}, {line.right, bottom}, 1, palette::print_soft);
  for (double at = std::ceil(line.reach.low / step) * step; at <= line.reach.high; at += step) {
    const float x = line.x(at);
    canvas.line({x, top}, {x, bottom + 4}, 1, faded(palette::print, 0.15));
    canvas.text_middle(words::fixed(at, decimals), {x, bottom + 6 + sizes.small * 0.7F},
                       {sizes.small, palette::print, Face::regular, Align::centre});
  }
}

/// The own interval above, that of perfect hands about the truth below.
void draw_line(Canvas& canvas, const Rect& area, const MarkedAttempt& marked, const Sizes& sizes) {
  const OwnUncertainty& own = *marked.uncertainty;
  const Line line = line_of(own, marked.true_value, area.x, area.right());
  const float first = area.y + sizes.row * 1.4F, second = first + sizes.row * 2.1F;
  const float bottom = second + sizes.row * 0.8F;
  draw_ticks(canvas, line, area.y, bottom, sizes);
  const float truth = line.x(marked.true_value);
  canvas.dashed({{truth, area.y}, {truth, bottom}}, 1.6F, 5, 4, palette::good);
  const auto above = [&](const std::string& text, float y, double middle, sf::Color colour) {
    const float half = canvas.text_width(text, {sizes.words, colour, Face::semibold}) / 2 + 4;
    const float x = std::clamp(line.x(middle), area.x + half, area.right() - half);
    canvas.rect({x - half, y - sizes.words * 1.8F, 2 * half, sizes.words * 1.4F}, rgb(0xfdfcfa));
    canvas.text_middle(text, {x, y - sizes.words * 1.1F},
                       {sizes.words, colour, Face::semibold, Align::centre});
  };
  above(say("uncertainty.yours"), first, own.budget.value, palette::ink);
  draw_interval(canvas, line, first, own.budget.value, own.budget.expanded, true);
  above(say("uncertainty.perfect"), second, marked.true_value, palette::good);
  draw_interval(canvas, line, second, marked.true_value, own.perfect_hands_expanded, false);
}

std::string first_words(const OwnUncertainty& own) {
  const std::string best = rounded_like(own.perfect_hands_expanded, own.perfect_hands_expanded);
  return say("uncertainty.first",
             {{"percent", words::figures(200.0 * own.budget.relative, 2)}, {"best", best}});
}

/// Height of the line with both intervals and its figures.
float line_height(const Sizes& sizes) { return sizes.row * 4.4F + sizes.small * 1.9F; }

void draw_result(Canvas& canvas, const Rect& card, const MarkedAttempt& marked, const Sizes& sizes) {
  const OwnUncertainty& own = *marked.uncertainty;
  const UncertaintyBudget& budget = own.budget;
  const float left = card.x + sizes.margin, width = card.w - 2 * sizes.margin, step = sizes.words * 1.4F;
  float y = card.y + sizes.margin + sizes.heading * 0.8F;
  canvas.text(rounded_like(budget.value, budget.expanded) + " \u00b1 " +
                  rounded_like(budget.expanded, budget.expanded) + " " + budget.unit,
              {left, y}, {sizes.heading, palette::ink, Face::bold});
  y += sizes.row;
  y += canvas.paragraph(first_words(own), {left, y}, width, step, {sizes.words, palette::print});
  draw_line(canvas, {left + 8, y - 4, width - 16, 0}, marked, sizes);
  y += line_height(sizes) + sizes.words;
  canvas.paragraph(within_words(own, marked.true_value), {left, y}, width, step,
                   {sizes.words, palette::print, Face::semibold});
}

float result_height(const Canvas& canvas, float width, const MarkedAttempt& marked, const Sizes& sizes) {
  const float inside = width - 2 * sizes.margin;
  const auto lines = [&](const std::string& text, Face face) {
    return static_cast<float>(canvas.wrapped(text, inside, {sizes.words, palette::print, face}).size());
  };
  const float texts = lines(first_words(*marked.uncertainty), Face::regular) +
                      lines(within_words(*marked.uncertainty, marked.true_value), Face::semibold);
  return 2 * sizes.margin + sizes.heading * 0.8F + sizes.row + sizes.words * 1.4F * texts +
         line_height(sizes);
}

void draw_shares(Canvas& canvas, const Rect& card, const UncertaintyBudget& budget, const Sizes& sizes) {
  const float left = card.x + sizes.margin, right = card.right() - sizes.margin;
  const float names = sizes.words * 12.4F, figures = sizes.words * 3.7F;
  float y = card.y + sizes.margin + sizes.heading * 0.5F;
  canvas.text_middle(say("uncertainty.shares"), {left, y}, {sizes.words + 1, palette::print, Face::bold});
  y += sizes.row;
  for (const BudgetLine& line : by_share(budget)) {
    canvas.text_middle(line.quantity.name, {left, y},
                       fitted(canvas, line.quantity.name, names - 6, {sizes.words, palette::print}));
    const Rect bar{left + names, y - sizes.row * 0.26F, right - figures - left - names, sizes.row * 0.52F};
    canvas.rect(bar, faded(palette::accent, 0.10));
    canvas.rect({bar.x, bar.y, std::max(1.5F, bar.w * static_cast<float>(line.share)), bar.h},
                palette::accent);
    canvas.text_middle(words::fixed(100.0 * line.share, 1) + " %", {right, y},
                       {sizes.words, palette::print, Face::regular, Align::right});
    y += sizes.row;
  }
}

}  // namespace

std::string within_words(const OwnUncertainty& own, double true_value) {
  const double off = std::fabs(own.budget.value - true_value);
  if (off <= own.budget.expanded) return say("uncertainty.within");
  return say("uncertainty.outside");
}

float draw_uncertainty(Canvas& canvas, Point top_left, float width, const MarkedAttempt& marked, bool large) {
  const Sizes sizes = sizes_of(large);
  const float gap = 20, each = large ? width : (width - gap) / 2;
  const float rows = static_cast<float>(marked.uncertainty->budget.lines.size());
  const float shares_height = 2 * sizes.margin + sizes.heading * 0.5F + sizes.row * (rows + 0.5F);
  const float height = std::max(large ? 0.0F : shares_height, result_height(canvas, each, marked, sizes));
  const Rect result{top_left.x, top_left.y, each, height};
  draw_card(canvas, result);
  draw_result(canvas, result, marked, sizes);
  const Rect shares{large ? top_left.x : result.right() + gap, large ? result.bottom() + gap : top_left.y,
                    each, large ? shares_height : height};
  draw_card(canvas, shares);
  draw_shares(canvas, shares, marked.uncertainty->budget, sizes);
  return shares.bottom() - top_left.y;
}

}  // namespace halfdrop

#include "game/scenes/titre_chart.h"

#include <algorithm>
#include <cmath>

#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr double kSmall_cm3 = 0.005;
constexpr float kHeading = 42.0F, kRow = 25.0F, kFoot = 10.0F;
constexpr float kNames = 0.54F, kFigures = 62.0F;  ///< share for the names; width of the figures

/// From volume to screen: all bars of a chart between two margins.
struct Reach {
  float left, right;
  double low, high;
  [[nodiscard]] float x(double cm3) const {
    return left + (right - left) * static_cast<float>((cm3 - low) / (high - low));
  }
};

Reach reach_of(const std::vector<TitreBar>& bars, float left, float right) {
  double low = bars.front().to_cm3, high = low;
  for (const TitreBar& bar : bars) {
    low = std::min(low, bar.to_cm3);
    high = std::max(high, bar.to_cm3);
  }
  // At least a drop wide, so that a faultless run does not look like a storm.
  const double margin = std::max(0.0, 0.06 - (high - low)) / 2.0 + 0.04 * (high - low);
  return {left, right, low - margin, high + margin};
}

void draw_bar(Canvas& canvas, const Reach& reach, float y, const TitreBar& bar) {
  const float a = reach.x(bar.from_cm3), b = reach.x(bar.to_cm3);
  if (bar.level) {
    canvas.line({b, y - kRow * 0.42F}, {b, y + kRow * 0.42F}, 3, palette::accent);
    return;
  }
  const bool raised = bar.to_cm3 >= bar.from_cm3;
  const sf::Color colour = raised ? rgb(0xc96a35) : rgb(0x3f7d9c);
  const float left = std::min(a, b), width = std::max(1.5F, std::abs(b - a));
  canvas.rect({left, y - 8, width, 16}, colour);
  // A point on its end says the way without colour.
  const float tip = raised ? 5.0F : -5.0F;
  canvas.polygon({{b, y - 8}, {b + tip, y}, {b, y + 8}}, colour);
  canvas.line({b, y + 8}, {b, y + kRow - 8}, 1, faded(palette::print, 0.5));
}

}  // namespace

std::vector<TitreBar> titre_bars(const TitreBreakdown& breakdown) {
  std::vector<TitreBar> bars = {{"Ideal titre", breakdown.ideal_cm3, breakdown.ideal_cm3, true}};
  double at = breakdown.ideal_cm3, small = 0.0;
  for (std::size_t i = 0; i < kCauses; ++i) {
    const double part = breakdown.causes_cm3[i];
    if (std::fabs(part) < kSmall_cm3) {
      small += part;
      continue;
    }
    bars.push_back({words::cause_name(static_cast<Cause>(i)), at, at + part, false});
    at += part;
  }
  small += breakdown.remainder_cm3;
  if (std::fabs(small) >= 1e-4) bars.push_back({"Smaller causes together", at, at + small, false});
  bars.push_back({"Recorded titre", breakdown.recorded_cm3, breakdown.recorded_cm3, true});
  return bars;
}

float titre_chart_height(const TitreRow& row) {
  return kHeading + kRow * static_cast<float>(titre_bars(*row.breakdown).size()) + kFoot;
}

void draw_titre_chart(Canvas& canvas, Point top_left, float width, const TitreRow& row) {
  const auto bars = titre_bars(*row.breakdown);
  const Rect card{top_left.x, top_left.y, width, titre_chart_height(row)};
  canvas.rounded_rect(card, 8, rgb(0xffffff, 0.75));
  canvas.stroke(rounded_rect_points(card, 8), {1, true}, palette::paper_line);
  const std::string heading = row.run == "trial" ? "Trial run" : "Run " + row.run;
  const float left = card.x + 14;
  canvas.text_middle(heading, {left, card.y + 22}, {18, palette::print, Face::bold});
  if (row.used) {
    canvas.text_middle("\u2713 counts", {card.right() - 14, card.y + 22},
                       {15, palette::ink, Face::semibold, Align::right});
  }
  const float figures = card.right() - 14, names = left + (card.w - 28) * kNames;
  const Reach reach = reach_of(bars, names + 8, figures - kFigures);
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const TitreBar& bar = bars[i];
    const float y = card.y + kHeading + kRow * (static_cast<float>(i) + 0.5F);
    const Face face = bar.level ? Face::semibold : Face::regular;
    canvas.text_middle(bar.name, {left, y}, {15, palette::print, face});
    draw_bar(canvas, reach, y, bar);
    canvas.text_middle(
        bar.level ? words::fixed(bar.to_cm3, 2) : words::with_sign(bar.to_cm3 - bar.from_cm3, 3),
        {figures, y}, {15, palette::print, face, Align::right});
  }
}

}  // namespace halfdrop

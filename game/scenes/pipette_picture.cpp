#include <algorithm>

#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"
#include "physics/bench/pipette_by_hand.h"

namespace halfdrop {

namespace {

constexpr float kBulbFrom = 116, kBulbTo = 196, kBulb = 9,
                kStem = 2.2F;  ///< along the pipette from its tip; half widths
constexpr float kLineBeforeEnd = 84, kFillerLong = 44;

/// A pipette along an axis: lying with its tip at the left, or upright with its tip below.
class Pipette {
 public:
  Pipette(Canvas& canvas, const Rect& place)
      : canvas_(canvas),
        upright_(place.h > place.w),
        length_(std::max(place.w, place.h)),
        centre_(place.centre()) {}

  void draw(float left) const {
    const Points glass = outline(0, length_ - kFillerLong);
    canvas_.polygon(glass, faded(sf::Color::White, 0.45));
    // What is left stands from the tip up to where it has sunk.
    const float level = left * (length_ - kLineBeforeEnd);
    if (left > 0.01F)
      canvas_.polygon(outline(0, level), across(kBulb, {{0, faded(palette::water_edge, 0.75)},
                                                        {0.4F, palette::water},
                                                        {1, palette::water_edge}}));
    canvas_.polygon(glass, across(kBulb, {{0, faded(palette::glass_edge, 0.35)},
                                          {0.25F, faded(sf::Color::White, 0.6)},
                                          {0.5F, faded(palette::glass_tint, 0.15)},
                                          {1, faded(palette::glass_edge, 0.45)}}));
    canvas_.stroke(glass, {1.0F, true}, faded(palette::glass_edge, 0.95));
    canvas_.line(at(length_ - kLineBeforeEnd, -3.5F), at(length_ - kLineBeforeEnd, 3.5F), 1.4F,
                 palette::scale_print);
    draw_filler();
  }

 private:
  [[nodiscard]] Point at(float along, float off) const {
    if (upright_) return {centre_.x + off, centre_.y + length_ / 2 - along};
    return {centre_.x - length_ / 2 + along, centre_.y + off};
  }
  [[nodiscard]] Paint across(float half, const std::vector<Stop>& stops) const {
    return upright_ ? Paint::horizontal(centre_.x - half, centre_.x + half, stops)
                    : Paint::vertical(centre_.y - half, centre_.y + half, stops);
  }
  [[nodiscard]] static float half_width(float along) {
    if (along < 22) return 0.8F + (kStem - 0.8F) * along / 22;
    const float into = std::min(along - kBulbFrom, kBulbTo - along) / 20;
    const float share = std::clamp(into, 0.0F, 1.0F);
    return kStem + (kBulb - kStem) * share * share * (3 - 2 * share);
  }
  [[nodiscard]] Points outline(float from, float to) const {
    Points points;
    for (float along = from; along < to; along += 3) points.push_back(at(along, -half_width(along)));
    points.push_back(at(to, -half_width(to)));
    points.push_back(at(to, half_width(to)));
    for (float along = to; along > from; along -= 3) points.push_back(at(along, half_width(along)));
    return points;
  }
  void draw_filler() const {
    const Point a = at(length_ - kFillerLong - 2, -8), b = at(length_ - 2, 8);
    const Rect filler{std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x), std::abs(b.y - a.y)};
    const Point c = at(length_ - kFillerLong - 9, -4), d = at(length_ - kFillerLong, 4);
    canvas_.rounded_rect({std::min(c.x, d.x), std::min(c.y, d.y), std::abs(d.x - c.x), std::abs(d.y - c.y)},
                         2, palette::rubber);
    canvas_.rounded_rect(filler, 7,
                         across(8, {{0, palette::rubber_light},
                                    {0.35F, palette::rubber},
                                    {1, mixed(palette::rubber, palette::shadow, 0.4)}}));
  }

  Canvas& canvas_;
  bool upright_;
  float length_;
  Point centre_;
};

}  // namespace

void draw_pipette_rack(Canvas& canvas, const Rect& r) {
  const float y = r.y + r.h / 2;
  for (const float x : {r.x + 40, r.right() - 46}) {
    canvas.rounded_rect({x, y - 2, 6, 9}, 2,
                        Paint::vertical(y - 2, y + 7, {{0, palette::wood}, {1, palette::wood_dark}}));
  }
  canvas.soft_rect({r.x + 8, y + 9, r.w - 40, 5}, 2, 5, faded(palette::shadow, 0.14));
  Pipette(canvas, r).draw(0);
}

float pipette_filled(double level_mm, double share) {
  constexpr float long_units = 312, line = long_units - kLineBeforeEnd, top = long_units - kFillerLong;
  const auto above = static_cast<float>(level_mm);
  const auto in_stem = static_cast<float>(kStemBelowLine_mm),
             over_line = static_cast<float>(kStemAboveLine_mm);
  if (above >= 0) return (line + (top - line) * above / over_line) / line;
  if (above >= -in_stem) return (line + (line - kBulbTo) * above / in_stem) / line;
  constexpr float lower_stem = 0.1F, bulb = 0.97F;  // shares of its volume
  const auto filled = static_cast<float>(share);
  if (filled < lower_stem) return kBulbFrom * filled / lower_stem / line;
  return (kBulbFrom + (kBulbTo - kBulbFrom) * std::min(1.0F, (filled - lower_stem) / (bulb - lower_stem))) /
         line;
}

void draw_pipette_tip(Canvas& canvas, Point tip, const PipetteTip& look) {
  if (look.outside_wet) {
    for (const float side : {-2.6F, 2.6F}) {
      canvas.ellipse({tip.x + side, tip.y - 12}, 2.4F, 5, faded(palette::water_edge, 0.95));
      canvas.ellipse({tip.x + side - 0.6F, tip.y - 13}, 0.9F, 2, faded(sf::Color::White, 0.9));
    }
  }
  if (look.runs) canvas.line(tip, {tip.x, tip.y + 14}, 1.8F, palette::water_edge);
  if (!look.froths) return;
  for (int i = 0; i < 7; ++i) {
    const float across = static_cast<float>((i * 5) % 13) - 6, up = static_cast<float>((i * 7) % 12);
    canvas.circle({tip.x + across, tip.y - kBulbTo + 6 + up}, 2.0F, faded(sf::Color::White, 0.8));
  }
}

void draw_held_pipette(Canvas& canvas, const Rect& r, float left) { Pipette(canvas, r).draw(left); }

}  // namespace halfdrop

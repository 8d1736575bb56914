#include "game/scenes/eye_neck.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

constexpr double kShows_mm = 30.0;  ///< of the neck, top to bottom

/// The neck on the screen: heights above the line as the eye sees them on the neck's front.
struct Neck {
  Canvas& canvas;
  Rect place;
  float per_mm, line_y, outer, bore;
  float round;  ///< how much a ring opens: its half height over its half width

  [[nodiscard]] float y(double above_line_mm) const {
    return line_y - static_cast<float>(above_line_mm) * per_mm;
  }
  [[nodiscard]] Points half_ring(float y, float half_width, bool far) const {
    constexpr int kPieces = 32;
    Points points;
    for (int i = 0; i <= kPieces; ++i) {
      const double angle = kPi * i / kPieces;
      const float down = half_width * round * static_cast<float>(std::sin(angle));
      points.push_back(
          {place.centre().x - half_width * static_cast<float>(std::cos(angle)), y + (far ? -down : down)});
    }
    return points;
  }
};

/// A ring's near half comes forward by the neck's radius, so that it is seen where the eye's height puts it.
Neck neck_of(Canvas& canvas, const Rect& place, const PreparationView& work, const BenchSpec& spec) {
  const SightGeometry& sight = spec.settled.neck_sight;
  const auto per_mm = static_cast<float>(place.h / kShows_mm);
  const double slope = work.eye_above_mm / sight.eye_distance_mm;
  const auto round = static_cast<float>(std::clamp(slope, -2.0, 2.0) / std::sqrt(1.0 + slope * slope));
  return {canvas,
          place,
          per_mm,
          place.centre().y,
          static_cast<float>(sight.outer_mm) * per_mm,
          static_cast<float>(sight.bore_mm) * per_mm,
          round};
}

/// The surface climbs the wall from its lowest point, which is what is brought to the line.
void draw_liquid(const Neck& neck, const PreparationView& work) {
  const float foot = neck.place.bottom(), low = std::max(neck.y(work.bottom_mm), neck.place.y - 60);
  if (low >= foot) return;
  const float climb = std::max(4.0F, low - neck.y(work.edge_mm));
  const float x = neck.place.centre().x;
  Points liquid;
  for (int i = 0; i <= 32; ++i) {
    const float across = 2.0F * static_cast<float>(i) / 32.0F - 1.0F;
    liquid.push_back({x + across * neck.bore, low - climb * across * across * across * across});
  }
  Points dark = liquid;
  liquid.push_back({x + neck.bore, foot});
  liquid.push_back({x - neck.bore, foot});
  neck.canvas.polygon(
      liquid,
      Paint::horizontal(x - neck.bore, x + neck.bore,
                        {{0, palette::water_edge}, {0.5F, palette::water}, {1, palette::water_edge}}));
  for (Point& point : dark) point.y -= 2.0F;
  neck.canvas.stroke(dark, {4.0F}, faded(palette::scale_print, 0.85));
}

void draw_glass(const Neck& neck) {
  const float x = neck.place.centre().x;
  for (const float side : {-1.0F, 1.0F}) {
    const float from = x + side * neck.bore, to = x + side * neck.outer;
    const Rect wall{std::min(from, to), neck.place.y, std::abs(to - from), neck.place.h};
    neck.canvas.rect(wall, Paint::horizontal(wall.x, wall.right(),
                                             {{0, faded(palette::glass_edge, 0.5)},
                                              {0.5F, faded(sf::Color::White, 0.6)},
                                              {1, faded(palette::glass_edge, 0.5)}}));
    neck.canvas.line({to, neck.place.y}, {to, neck.place.bottom()}, 1.6F, palette::glass_edge);
  }
}

/// The line's two halves lie on each other for an eye that is level with it.
void draw_ring(const Neck& neck) {
  const float middle = neck.line_y - neck.outer * neck.round;
  neck.canvas.stroke(neck.half_ring(middle, neck.outer, true), {1.6F}, faded(palette::scale_print, 0.45));
  neck.canvas.stroke(neck.half_ring(middle, neck.outer, false), {2.4F}, palette::scale_print);
}

void draw_words(const Neck& neck, const PreparationView& work) {
  const Rect& in = neck.place;
  std::string words = say("making_up.line");
  if (neck.y(work.bottom_mm) < in.y) words = say("eye.level_higher");
  if (neck.y(work.bottom_mm) > in.bottom()) words = say("eye.level_lower");
  neck.canvas.rounded_rect({in.centre().x - 80, in.bottom() - 30, 160, 24}, 12, palette::pill);
  const TextStyle style{15, palette::pill_text, Face::semibold, Align::centre};
  neck.canvas.text_middle(words, {in.centre().x, in.bottom() - 18}, fitted(neck.canvas, words, 150, style));
}

}  // namespace

void draw_eye_neck(Canvas& canvas, const Rect& place, const PreparationView& work, const BenchSpec& spec) {
  const Neck neck = neck_of(canvas, place, work, spec);
  canvas.rect(place,
              Paint::vertical(place.y, place.bottom(), {{0, palette::wall_light}, {1, palette::wall}}));
  canvas.flush();
  draw_liquid(neck, work);
  canvas.flush();
  draw_glass(neck);
  draw_ring(neck);
  canvas.flush();
  draw_words(neck, work);
  canvas.flush();
}

}  // namespace halfdrop

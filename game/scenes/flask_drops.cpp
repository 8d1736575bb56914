#include <algorithm>
#include <cmath>

#include "game/scenes/bench_layout.h"
#include "game/scenes/flask_parts.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

using layout::kNearUnits_cm;

void clinging_drop(Canvas& canvas, Point p, float r, float high) {
  canvas.ellipse(
      p, r, r * high,
      Paint::vertical(p.y - r, p.y + r,
                      {{0, faded(palette::water_edge, 0.75)}, {1, faded(sf::Color::White, 0.85)}}));
  canvas.stroke(ellipse_points(p, r, r * high, 20), {0.9F, true}, faded(palette::glass_dark, 0.7));
  canvas.circle(p + Point{-r * 0.3F, -r * 0.5F}, r * 0.3F, sf::Color::White);
}

/// A centimetre of wall that a drop has run down.
void wet_trail(Canvas& canvas, const FlaskShape& shape, Point foot, const ClingingView& trail) {
  const float middle = -static_cast<float>(trail.height_cm) * kNearUnits_cm, reach = 0.5F * kNearUnits_cm;
  Points wet;
  for (const float part : {-1.0F, -0.5F, 0.0F, 0.5F, 1.0F}) {
    const float y = middle + part * reach;
    wet.push_back(foot + Point{static_cast<float>(trail.side) * (shape.half_at(y) - kFlaskWall - 2.5F), y});
  }
  canvas.stroke(wet, {2.6F, false, true}, faded(palette::water_edge, 0.45));
  canvas.stroke(wet, {0.9F, false, true}, faded(sf::Color::White, 0.75));
}

void bead(Canvas& canvas, const FlaskShape& shape, Point foot, const ClingingView& drop) {
  const auto r = static_cast<float>(std::cbrt(drop.volume_cm3 * 3 / (4 * kPi))) * kNearUnits_cm;
  const float y = -static_cast<float>(drop.height_cm) * kNearUnits_cm;
  const float in = shape.half_at(y) - kFlaskWall - 0.75F * r;
  clinging_drop(canvas, foot + Point{static_cast<float>(drop.side) * in, y}, std::max(1.2F, 0.85F * r),
                1.40F);
}

}  // namespace

void draw_wall_drops(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
  for (const ClingingView& trail : picture.view.trails) wet_trail(canvas, shape, foot, trail);
  for (const ClingingView& drop : picture.view.clinging) bead(canvas, shape, foot, drop);
}

}  // namespace halfdrop

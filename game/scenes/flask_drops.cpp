#include <algorithm>
#include <array>
#include <cmath>

#include "game/scenes/bench_layout.h"
#include "game/scenes/flask_parts.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

using layout::kNearUnits_cm;

/// Shares of the half width and of the height.
const std::array<Point, 14> kWallPlaces{{{-0.62F, 0.42F},
                                         {0.55F, 0.50F},
                                         {-0.30F, 0.58F},
                                         {0.78F, 0.36F},
                                         {-0.80F, 0.30F},
                                         {0.24F, 0.40F},
                                         {-0.50F, 0.66F},
                                         {0.66F, 0.62F},
                                         {0.05F, 0.52F},
                                         {-0.72F, 0.52F},
                                         {0.40F, 0.70F},
                                         {-0.12F, 0.72F},
                                         {0.82F, 0.48F},
                                         {-0.4F, 0.36F}}};

void clinging_drop(Canvas& canvas, Point p, float r, float high) {
  canvas.ellipse(
      p, r, r * high,
      Paint::vertical(p.y - r, p.y + r,
                      {{0, faded(palette::water_edge, 0.75)}, {1, faded(sf::Color::White, 0.85)}}));
  canvas.stroke(ellipse_points(p, r, r * high, 20), {0.9F, true}, faded(palette::glass_dark, 0.7));
  canvas.circle(p + Point{-r * 0.3F, -r * 0.5F}, r * 0.3F, sf::Color::White);
}

/// What was touched off at the neck hangs there, below a wet trace, where the wash bottle's jet meets it.
void neck_drop(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
  const double volume_cm3 = std::min(picture.view.wall_cm3, picture.view.full_drop_cm3);
  const auto r = static_cast<float>(std::cbrt(volume_cm3 * 3 / (4 * kPi))) * kNearUnits_cm;
  const float touched = -shape.height() + 26, hangs = touched + 12;
  const auto wall = [&](float y) { return foot.x + shape.half_at(y) - kFlaskWall; };
  Points trace;
  for (float y = touched; y <= hangs; y += 2) trace.push_back({wall(y) - 1.5F, foot.y + y});
  canvas.stroke(trace, {3.0F, false, true}, faded(palette::water_edge, 0.7));
  canvas.stroke(trace, {1.0F, false, true}, faded(sf::Color::White, 0.9));
  clinging_drop(canvas, {wall(hangs) - r * 0.7F, foot.y + hangs + r * 0.5F}, r * 0.85F, 1.45F);
}

}  // namespace

void draw_wall_drops(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
  const View& view = picture.view;
  if (view.wall_cm3 < 0.002) return;
  neck_drop(canvas, picture, shape, foot);
  const double share = (view.wall_cm3 - view.full_drop_cm3) / 0.25;
  const auto count =
      static_cast<std::size_t>(std::clamp(std::ceil(14 * std::sqrt(std::max(0.0, share))), 0.0, 14.0));
  for (std::size_t i = 0; i < count; ++i) {
    const float y = -shape.height() * kWallPlaces[i].y;
    if (y > -static_cast<float>(view.flask_depth_cm) * kNearUnits_cm - 10) continue;
    clinging_drop(canvas, foot + Point{kWallPlaces[i].x * (shape.half_at(y) - 6), y},
                  2.1F + static_cast<float>(i % 3) * 0.6F, 1.35F);
  }
}

}  // namespace halfdrop

#include <cmath>

#include "game/scenes/flask_parts.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

/// A line that follows the glass at a share of its half width, between two heights.
Points along_wall(const FlaskShape& shape, Point foot, float share, float from, float to) {
  Points points;
  for (int i = 0; i <= 26; ++i) {
    const float y = -shape.height() * (from + (to - from) * static_cast<float>(i) / 26);
    points.push_back(foot + Point{share * shape.half_at(y), y});
  }
  return points;
}

/// Thick where one looks along the wall: dark outside, light caught within, a thin dark line inside.
void draw_wall(Canvas& canvas, const FlaskShape& shape, Point foot) {
  const float left = foot.x - shape.half_at(-20), right = foot.x + shape.half_at(-20);
  const auto within = [&](float share) { return shape.line(foot, share * kFlaskWall, share * kFlaskFloor); };
  canvas.stroke(within(0.55F), {3.6F}, faded(palette::glass_tint, 0.55));
  canvas.stroke(within(0.62F), {1.1F},
                Paint::horizontal(left, right,
                                  {{0, faded(sf::Color::White, 0.95)},
                                   {0.5F, faded(sf::Color::White, 0.65)},
                                   {1, faded(sf::Color::White, 0.60)}}));
  canvas.stroke(within(1.15F), {0.9F}, faded(palette::glass_edge, 0.65));
  canvas.stroke(within(0), {2.1F},
                Paint::horizontal(left, right,
                                  {{0, faded(palette::glass_edge, 0.95)},
                                   {0.5F, faded(palette::glass_edge, 0.85)},
                                   {1, faded(palette::glass_dark, 0.95)}}));
}

}  // namespace

void draw_flask_back(Canvas& canvas, const FlaskShape& shape, Point foot) {
  const float base = shape.half_at(-20);
  canvas.polygon(shape.outline(foot), Paint::horizontal(foot.x - base, foot.x + base,
                                                        {{0, faded(palette::glass_tint, 0.55)},
                                                         {0.3F, faded(sf::Color::White, 0.16)},
                                                         {0.7F, faded(sf::Color::White, 0.10)},
                                                         {1, faded(palette::glass_tint, 0.5)}}));
  canvas.stroke(ellipse_points(foot + Point{0, -shape.height() + 2}, shape.neck() + 6, 5), {1.4F, true},
                faded(palette::glass_edge, 0.8));
}

void draw_flask_front(Canvas& canvas, const FlaskShape& shape, Point foot) {
  draw_wall(canvas, shape, foot);
  // The window in the glass: a long light on the left, its echo on the right.
  const Points light = along_wall(shape, foot, -0.80F, 0.93F, 0.13F),
               light_in = along_wall(shape, foot, -0.70F, 0.13F, 0.93F);
  Points band = light;
  band.insert(band.end(), light_in.begin(), light_in.end());
  canvas.polygon(band, Paint::vertical(foot.y - shape.height(), foot.y,
                                       {{0, faded(sf::Color::White, 0.25)},
                                        {0.35F, faded(sf::Color::White, 0.62)},
                                        {0.85F, faded(sf::Color::White, 0.30)},
                                        {1, faded(sf::Color::White, 0)}}));
  canvas.stroke(along_wall(shape, foot, 0.86F, 0.70F, 0.10F), {2.2F, false, true},
                faded(sf::Color::White, 0.40));
  canvas.stroke(along_wall(shape, foot, -0.60F, 0.68F, 0.30F), {1.4F, false, true},
                faded(sf::Color::White, 0.35));
  const Point rim = foot + Point{0, -shape.height() + 2};
  Points front = ellipse_points(rim, shape.neck() + 6, 5);
  canvas.stroke(front, {2.0F, true}, faded(palette::glass_edge, 0.9));
  canvas.stroke(ellipse_points(rim + Point{0, -1}, shape.neck() + 4.5F, 3.8F), {0.8F, true},
                faded(sf::Color::White, 0.9));
}

}  // namespace halfdrop

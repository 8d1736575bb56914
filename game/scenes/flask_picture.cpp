#include <algorithm>
#include <cmath>

#include "game/scenes/bench_layout.h"
#include "game/scenes/bench_picture.h"
#include "game/scenes/drop_picture.h"
#include "game/scenes/flask_parts.h"
#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"

namespace halfdrop {

using layout::kNearUnits_cm;

namespace {

void foot_light(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
  const float base = -shape.left().back().x + 16;
  draw_foot_shadow(canvas, foot + Point{4, 1}, base, picture.view.flask_on_tile ? 0.30 : 0.45);
  if (!picture.view.flask_on_tile || picture.view.flask_cm3 < 0.5) return;
  // What came through the liquid lies coloured on the tile, brightest where the bottom gathers it.
  const sf::Color cast = screen_colour(picture.view.flask_colour);
  canvas.glow(
      foot + Point{8, 4}, base * 1.20F, 13,
      {{0, faded(cast, 1.0)}, {0.55F, faded(cast, 0.75)}, {0.8F, faded(cast, 0.35)}, {1, faded(cast, 0)}});
  canvas.glow(foot + Point{4, 6}, base * 0.8F, 5,
              {{0, faded(sf::Color::White, 0.45)}, {1, faded(sf::Color::White, 0)}});
}

}  // namespace

double flask_lean(const BenchPicture& picture) {
  const View& view = picture.view;
  return std::atan(view.swirl_reach_cm * std::cos(2 * kPi * view.swirl_turns) / picture.spec.flask.height_cm);
}

Point flask_foot(const BenchPicture& picture) {
  const Hands& hands = picture.view.hands;
  const auto lift = static_cast<float>(hands.flask_y_cm) * kNearUnits_cm;
  const FlaskSpec& flask = picture.spec.flask;
  const float stands = layout::flask_x(hands.flask_x_cm);
  if (!picture.view.flask_under_jet || picture.view.beaker_under) return {stands, layout::kFootY - lift};
  // The side of the neck that is nearest goes to the tip.
  const float reach = static_cast<float>(flask.neck_radius_cm) * kNearUnits_cm - kFlaskWall -
                      static_cast<float>(picture.spec.tap.tip_outer_mm) / 20 * kNearUnits_cm;
  const float touches = layout::kJetX + (hands.flask_x_cm > 0 ? reach : -reach);
  return {stands + touching(picture.view) * (touches - stands), layout::kFootY - lift};
}

void draw_flask(Canvas& canvas, const BenchPicture& picture) {
  const FlaskShape shape(picture.spec.flask);
  Point foot = flask_foot(picture);
  const double lean = flask_lean(picture);
  foot_light(canvas, picture, shape, foot + Point{shape.height() * static_cast<float>(std::tan(lean)), 0});
  // Lifted just so far that no corner meets the bench.
  foot.y -=
      shape.half_at(-20) * static_cast<float>(picture.view.swirl_reach_cm / picture.spec.flask.height_cm);
  canvas.lean(foot + Point{0, -shape.height()}, -lean);
  draw_flask_back(canvas, shape, foot);
  draw_flask_liquid(canvas, picture, shape, foot);
  draw_wall_drops(canvas, picture, shape, foot);
  draw_flask_front(canvas, shape, foot);
  canvas.upright();
}

}  // namespace halfdrop

#include <algorithm>
#include <array>
#include <cmath>

#include "game/scenes/bench_layout.h"
#include "game/scenes/bench_picture.h"
#include "game/scenes/drop_picture.h"
#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

using layout::kNearUnits_cm;

constexpr float kWall = 3.0F;          ///< glass, design units (about 1.2 mm)
constexpr double kSwirls_per_s = 2.2;  ///< a hand's round

/// The flask's outline about its axis (x = 0) and foot (y = 0), heights negative upwards.
class FlaskShape {
 public:
  explicit FlaskShape(const FlaskSpec& flask) {
    const float base = static_cast<float>(flask.base_radius_cm) * kNearUnits_cm;
    neck_ = static_cast<float>(flask.neck_radius_cm) * kNearUnits_cm;
    height_ = static_cast<float>(flask.height_cm) * kNearUnits_cm;
    const float shoulder = -height_ + static_cast<float>(flask.neck_length_cm) * kNearUnits_cm;
    const Point slope{-(base - neck_), -shoulder};
    const float length = std::hypot(slope.x, slope.y);
    const Point down = slope / length;
    left_ = Path({-neck_ - 6, -height_ + 2})
                .cubic({-neck_ - 5, -height_ + 8}, {-neck_, -height_ + 6}, {-neck_, -height_ + 16})
                .line({-neck_, shoulder - 26})
                .quad({-neck_, shoulder}, Point{-neck_, shoulder} + down * 30.0F)
                .line(Point{-base, 0} - down * 22.0F)
                .quad({-base - 1, 0}, {-base + 20, 0})
                .points();
  }

  [[nodiscard]] const Points& left() const { return left_; }
  [[nodiscard]] float neck() const { return neck_; }
  [[nodiscard]] float height() const { return height_; }
  /// Half the width at a height (outside of the glass).
  [[nodiscard]] float half_at(float y) const {
    for (std::size_t i = 1; i < left_.size(); ++i) {
      if (left_[i].y >= y && left_[i].y > left_[i - 1].y) {
        const float share = (y - left_[i - 1].y) / (left_[i].y - left_[i - 1].y);
        return -(left_[i - 1].x + (left_[i].x - left_[i - 1].x) * std::clamp(share, 0.0F, 1.0F));
      }
    }
    return -left_.back().x;
  }
  [[nodiscard]] Points outline(Point foot) const {
    Points all;
    for (const Point& p : left_) all.push_back(foot + p);
    for (auto p = left_.rbegin(); p != left_.rend(); ++p) all.push_back(foot + Point{-p->x, p->y});
    return all;
  }

 private:
  Points left_;
  float neck_ = 0, height_ = 0;
};

struct LiquidPlace {
  Point foot;
  float top = 0;   ///< surface above the foot (negative)
  float tilt = 0;  ///< surface's rise at the right wall
  float half = 0;  ///< of the surface
};

/// The liquid between its cells' middles: concentrations are interpolated, colours come after.
class Looked {
 public:
  explicit Looked(const LiquidLook& look) : look_(look) {}

  /// u: across, -1 to 1; s: up, 0 to 1.
  [[nodiscard]] FormAmounts at(float u, float s) const {
    const Place across = place(0.5F * (u + 1), look_.grid.columns), up = place(s, look_.grid.rows);
    FormAmounts forms{};
    for (std::size_t form = 0; form < forms.size(); ++form) {
      const auto along = [&](std::size_t row) {
        const FormAmounts* const cells = &look_.forms[row * look_.grid.columns];
        return cells[across.low][form] + across.part * (cells[across.high][form] - cells[across.low][form]);
      };
      forms[form] = along(up.low) + up.part * (along(up.high) - along(up.low));
    }
    return forms;
  }

 private:
  struct Place {
    std::size_t low, high;
    float part;
  };
  static Place place(float share, std::size_t count) {
    const float at =
        std::clamp(share * static_cast<float>(count) - 0.5F, 0.0F, static_cast<float>(count - 1));
    const auto low = static_cast<std::size_t>(at);
    return {low, std::min(low + 1, count - 1), at - static_cast<float>(low)};
  }

  const LiquidLook& look_;
};

sf::Color tinted(const TintTable& tints, const FormAmounts& forms, double path_cm) {
  double amount = 0.0;
  for (const float form : forms) amount += static_cast<double>(form);
  FormShares shares{};
  if (amount > 0.0) {
    for (std::size_t form = 0; form < forms.size(); ++form)
      shares[form] = static_cast<double>(forms[form]) / amount;
  }
  const Code code = tints.code(tints.tint_of(shares), amount * path_cm);
  return {code.r, code.g, code.b};
}

/// Clear liquid lets the wall through; colour stands for itself.
double opacity(const sf::Color& colour, const sf::Color& clear, double height_share) {
  const int off =
      std::max({std::abs(colour.r - clear.r), std::abs(colour.g - clear.g), std::abs(colour.b - clear.b)});
  return std::clamp(0.62 + 0.28 * (1 - height_share) + off / 60.0, 0.0, 1.0);
}

void liquid_body(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape,
                 const LiquidPlace& at) {
  const View& view = picture.view;
  const bool even = view.flask_look.even();
  const std::size_t columns = even ? 41 : 65, rows = even ? 13 : 33;
  const Looked looked(view.flask_look);
  const double path_cm = sight_path_cm(picture.spec.flask, view.flask_cm3);
  const sf::Color clear = screen_colour(view.backdrop_colour);
  std::vector<Point> points;
  std::vector<sf::Color> colours;
  for (std::size_t row = 0; row < rows; ++row) {
    const float t = static_cast<float>(row) / static_cast<float>(rows - 1);
    const float y = at.top * (1 - t) - kWall * t;
    const float half = std::max(2.0F, shape.half_at(y) - kWall);
    for (std::size_t column = 0; column < columns; ++column) {
      const float u = 2 * static_cast<float>(column) / static_cast<float>(columns - 1) - 1;
      const sf::Color lit =
          tinted(picture.tints, looked.at(u, 1 - t), path_cm * path_share(static_cast<double>(u)));
      const double edge = static_cast<double>(u * u * u * u);
      points.push_back(at.foot + Point{u * half, y + at.tilt * u * (1 - t)});
      colours.push_back(faded(mixed(lit, sf::Color::Black, 0.10 * edge),
                              std::max(opacity(lit, clear, static_cast<double>(1 - t)), 0.9 * edge)));
    }
  }
  canvas.mesh(points, colours, columns);
}

void liquid_surface(Canvas& canvas, const BenchPicture& picture, const LiquidPlace& at) {
  const View& view = picture.view;
  const float ry = at.half * 0.075F + 1.0F;
  const auto ring = [&](float from, float to, float lift) {
    Points points;
    for (int i = 0; i <= 40; ++i) {
      const float angle = 3.14159265F * (from + (to - from) * static_cast<float>(i) / 40);
      const float u = std::cos(angle);
      points.push_back(at.foot + Point{u * at.half, at.top + at.tilt * u + std::sin(angle) * ry + lift});
    }
    return points;
  };
  const sf::Color liquid = screen_colour(view.flask_colour);
  canvas.polygon(ring(0, 2, 0), Paint::vertical(at.foot.y + at.top - ry, at.foot.y + at.top + ry,
                                                {{0, faded(mixed(liquid, sf::Color::White, 0.55), 0.80)},
                                                 {1, faded(mixed(liquid, sf::Color::White, 0.18), 0.85)}}));
  canvas.stroke(ring(1, 2, 0), {1.0F}, faded(palette::glass_edge, 0.55));
  canvas.stroke(ring(0, 1, 0), {1.7F}, faded(palette::glass_dark, 0.75));
  canvas.stroke(ring(0.05F, 0.95F, -2.0F), {1.0F}, faded(sf::Color::White, 0.8));
}

void draw_liquid(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
  const View& view = picture.view;
  if (view.flask_cm3 < 0.05) return;
  LiquidPlace at;
  at.foot = foot;
  at.top = -std::max(kWall + 1.5F, static_cast<float>(view.flask_depth_cm) * kNearUnits_cm + kWall);
  at.half = shape.half_at(at.top) - kWall;
  const double phase = 2 * kPi * kSwirls_per_s * picture.clock_s;
  at.tilt = static_cast<float>(view.hands.swirl * 9.0 * std::sin(phase));
  liquid_body(canvas, picture, shape, at);
  liquid_surface(canvas, picture, at);
}

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
  const auto wall = [&](float y) { return foot.x + shape.half_at(y) - kWall; };
  Points trace;
  for (float y = touched; y <= hangs; y += 2) trace.push_back({wall(y) - 1.5F, foot.y + y});
  canvas.stroke(trace, {3.0F, false, true}, faded(palette::water_edge, 0.7));
  canvas.stroke(trace, {1.0F, false, true}, faded(sf::Color::White, 0.9));
  clinging_drop(canvas, {wall(hangs) - r * 0.7F, foot.y + hangs + r * 0.5F}, r * 0.85F, 1.45F);
}

/// Drops that cling above the liquid, the first at the neck, the others at places that stay.
void wall_drops(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
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

void glass_behind(Canvas& canvas, const FlaskShape& shape, Point foot) {
  const float base = shape.half_at(-20);
  canvas.polygon(shape.outline(foot), Paint::horizontal(foot.x - base, foot.x + base,
                                                        {{0, faded(palette::glass_tint, 0.55)},
                                                         {0.3F, faded(sf::Color::White, 0.16)},
                                                         {0.7F, faded(sf::Color::White, 0.10)},
                                                         {1, faded(palette::glass_tint, 0.5)}}));
  canvas.stroke(ellipse_points(foot + Point{0, -shape.height() + 2}, shape.neck() + 6, 5), {1.4F, true},
                faded(palette::glass_edge, 0.8));
}

/// A line that follows the glass at a share of its half width, between two heights.
Points along_wall(const FlaskShape& shape, Point foot, float share, float from, float to) {
  Points points;
  for (int i = 0; i <= 26; ++i) {
    const float y = -shape.height() * (from + (to - from) * static_cast<float>(i) / 26);
    points.push_back(foot + Point{share * shape.half_at(y), y});
  }
  return points;
}

void glass_front(Canvas& canvas, const FlaskShape& shape, Point foot) {
  // Thick where one looks along the wall: an inner pale line within a dark edge.
  Points left, inner;
  for (const Point& p : shape.left()) left.push_back(foot + p);
  for (const Point& p : shape.left()) {
    if (p.y < -6) inner.push_back(foot + p + Point{kWall, 0});
  }
  for (const bool mirror : {false, true}) {
    const auto side = [&](const Points& points) { return mirror ? mirrored_in_x(points, foot.x) : points; };
    canvas.stroke(side(inner), {3.2F}, faded(palette::glass_tint, 0.75));
    canvas.stroke(side(inner), {1.0F}, faded(palette::glass_edge, 0.55));
    canvas.stroke(side(left), {2.3F}, faded(mirror ? palette::glass_dark : palette::glass_edge, 0.95));
  }
  const float base = -shape.left().back().x;
  canvas.line(foot + Point{-base, -0.5F}, foot + Point{base, -0.5F}, 2.4F, faded(palette::glass_dark, 0.85));
  canvas.line(foot + Point{-base - 6, -4.5F}, foot + Point{base + 6, -4.5F}, 1.4F,
              faded(sf::Color::White, 0.55));
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

void foot_light(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
  const float base = -shape.left().back().x + 16;
  draw_foot_shadow(canvas, foot + Point{4, 1}, base, picture.view.flask_on_tile ? 0.30 : 0.45);
  if (!picture.view.flask_on_tile || picture.view.flask_cm3 < 0.5) return;
  // What came through the liquid lies coloured on the tile.
  const sf::Color cast = screen_colour(picture.view.flask_colour);
  canvas.glow(foot + Point{14, 5}, base * 1.12F, 12,
              {{0, faded(cast, 0.9)}, {0.6F, faded(cast, 0.55)}, {1, faded(cast, 0)}});
}

}  // namespace

Point flask_foot(const BenchPicture& picture) {
  const Hands& hands = picture.view.hands;
  const double phase = 2 * kPi * kSwirls_per_s * picture.clock_s;
  const auto lift = static_cast<float>(hands.flask_y_cm) * kNearUnits_cm;
  const FlaskSpec& flask = picture.spec.flask;
  const float to_tip = picture.view.flask_under_jet && !picture.view.beaker_under
                           ? static_cast<float>(flask.neck_radius_cm) * kNearUnits_cm - kWall -
                                 static_cast<float>(picture.spec.tap.tip_outer_mm) / 20 * kNearUnits_cm
                           : 0.0F;
  return Point{layout::flask_x(hands.flask_x_cm) - touching(picture.view) * to_tip, layout::kFootY - lift} +
         Point{static_cast<float>(hands.swirl * 6.0 * std::cos(phase)),
               static_cast<float>(hands.swirl * 2.0 * std::sin(phase))};
}

void draw_flask(Canvas& canvas, const BenchPicture& picture) {
  const FlaskShape shape(picture.spec.flask);
  const Point foot = flask_foot(picture);
  foot_light(canvas, picture, shape, foot);
  glass_behind(canvas, shape, foot);
  draw_liquid(canvas, picture, shape, foot);
  wall_drops(canvas, picture, shape, foot);
  glass_front(canvas, shape, foot);
}

}  // namespace halfdrop

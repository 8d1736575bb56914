#include <algorithm>
#include <cmath>

#include "game/scenes/bench_layout.h"
#include "game/scenes/flask_parts.h"
#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

using layout::kNearUnits_cm;

struct LiquidPlace {
  Point foot;
  float top = 0;     ///< surface above the foot (negative)
  float nearer = 0;  ///< how far its nearest edge is up by the wave
  float tilt = 0;    ///< how far its right edge is down, the left one up
  float half = 0;    ///< of the surface
};

/// The liquid between its cells' middles: concentrations are interpolated, colours come after.
class Looked {
 public:
  explicit Looked(const LiquidLook& look) : look_(look) {}

  /// u: across, -1 to 1; s: up, 0 to 1.
  [[nodiscard]] FormAmounts at(float u, float s) const { return at(look_.forms, u, s); }
  /// Of the second indicator. Precondition: there is one.
  [[nodiscard]] FormAmounts second_at(float u, float s) const { return at(look_.second_forms, u, s); }

 private:
  [[nodiscard]] FormAmounts at(const std::vector<FormAmounts>& places, float u, float s) const {
    const Place across = place(0.5F * (u + 1), look_.grid.columns), up = place(s, look_.grid.rows);
    FormAmounts forms{};
    for (std::size_t form = 0; form < forms.size(); ++form) {
      const auto along = [&](std::size_t row) {
        const FormAmounts* const cells = &places[row * look_.grid.columns];
        return cells[across.low][form] + across.part * (cells[across.high][form] - cells[across.low][form]);
      };
      forms[form] = along(up.low) + up.part * (along(up.high) - along(up.low));
    }
    return forms;
  }

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

/// Clear liquid lets a little of what is behind it through; colour stands for itself.
double opacity(const sf::Color& colour, const sf::Color& clear, double height_share) {
  const int off =
      std::max({std::abs(colour.r - clear.r), std::abs(colour.g - clear.g), std::abs(colour.b - clear.b)});
  return std::clamp(0.70 + 0.24 * (1 - height_share) + off / 60.0, 0.0, 1.0);
}

/// Colour of the liquid at a place: u across, s up, on its way through the flask and back from below. Where a
/// second indicator is in it no table holds the mixture: its light is worked out at some places, and its
/// colours lie between them.
class Seen {
 public:
  explicit Seen(const BenchPicture& picture)
      : tints_(picture.tints),
        looked_(picture.view.flask_look),
        path_cm_(sight_path_cm(picture.spec.flask, picture.view.flask_cm3)) {
    const FormAmounts& second = picture.view.flask_look.second_mean;
    if (std::any_of(second.begin(), second.end(), [](float form) { return form > 0.0F; })) work_out(picture);
  }

  [[nodiscard]] sf::Color at(float u, float s) const {
    if (!both_.empty()) return between(u, s);
    return tinted(tints_, looked_.at(u, s), path_cm_ * path_share(static_cast<double>(u)));
  }
  /// Of the surface: the field is one upright section, so what stands on its left and right is turned round
  /// the axis, each passing into the other (our own choice).
  [[nodiscard]] sf::Color on_top(float u, float depth) const {
    const float out = std::min(std::hypot(u, depth), 1.0F);
    const double right = out > 0 ? 0.5 * static_cast<double>(1 + u / out) : 0.5;
    return mixed(at(-out, 1), at(out, 1), right);
  }

 private:
  static constexpr std::size_t kColumns = 33, kRows = 17;

  void work_out(const BenchPicture& picture) {
    const Backdrop backdrop = picture.view.flask_on_tile ? Backdrop::white_tile : Backdrop::bare_bench;
    const std::size_t rows = picture.view.flask_look.even() ? 1 : kRows;
    for (std::size_t row = 0; row < rows; ++row) {
      const float s = rows == 1 ? 0.0F : static_cast<float>(row) / static_cast<float>(rows - 1);
      for (std::size_t column = 0; column < kColumns; ++column) {
        const float u = 2 * static_cast<float>(column) / static_cast<float>(kColumns - 1) - 1;
        const TintHere tint{looked_.at(u, s), looked_.second_at(u, s)};
        const double path_cm = path_cm_ * path_share(static_cast<double>(u));
        both_.push_back(screen_colour(to_rgb(colour_of(picture.spec, tint, path_cm, backdrop))));
      }
    }
  }
  struct Step {
    std::size_t low = 0;
    double part = 0.0;
  };
  static Step step_at(float share, std::size_t count) {
    const float at = std::clamp(share, 0.0F, 1.0F) * static_cast<float>(count - 1);
    const auto low = static_cast<std::size_t>(at);
    return {low, static_cast<double>(at - static_cast<float>(low))};
  }
  [[nodiscard]] sf::Color between(float u, float s) const {
    const std::size_t rows = both_.size() / kColumns;
    const Step across = step_at(0.5F * (u + 1), kColumns), up = step_at(s, rows);
    const auto along = [&](std::size_t row) {
      const sf::Color* const cells = &both_[row * kColumns];
      return mixed(cells[across.low], cells[std::min(across.low + 1, kColumns - 1)], across.part);
    };
    return mixed(along(up.low), along(std::min(up.low + 1, rows - 1)), up.part);
  }

  const TintTable& tints_;
  Looked looked_;
  double path_cm_;
  std::vector<sf::Color> both_;  ///< row by row from the bottom; empty without a second indicator
};

void liquid_body(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape,
                 const LiquidPlace& at) {
  const bool even = picture.view.flask_look.even();
  const std::size_t columns = even ? 41 : 97, rows = even ? 17 : 41;
  const Seen seen(picture);
  const sf::Color clear = screen_colour(picture.view.backdrop_colour);
  std::vector<Point> points;
  std::vector<sf::Color> colours;
  for (std::size_t row = 0; row < rows; ++row) {
    const float t = static_cast<float>(row) / static_cast<float>(rows - 1);
    const float y = at.top * (1 - t) - kFlaskFloor * t;
    for (std::size_t column = 0; column < columns; ++column) {
      const float u = 2 * static_cast<float>(column) / static_cast<float>(columns - 1) - 1;
      const sf::Color lit = seen.at(u, 1 - t);
      // The wall bends dark from beside into the last of the width.
      const double edge = std::pow(std::fabs(static_cast<double>(u)), 10.0);
      const float tilted = y + at.tilt * u * (1 - t);
      const float half = std::max(2.0F, shape.half_at(std::min(tilted, -kFlaskFloor)) - kFlaskWall);
      points.push_back(at.foot + Point{u * half, tilted + t * shape.sag(u * half)});
      colours.push_back(faded(mixed(lit, palette::glass_dark, 0.16 * edge),
                              std::max(opacity(lit, clear, static_cast<double>(1 - t)), 0.9 * edge)));
    }
  }
  canvas.mesh(points, colours, columns);
}

/// The tile shines up through the bottom: a bright floor, brightest in the middle.
void lit_floor(Canvas& canvas, const FlaskShape& shape, const LiquidPlace& at) {
  const float half = shape.half_at(-kFlaskFloor) - kFlaskWall - 8, deep = std::min(16.0F, -at.top * 0.35F);
  std::vector<Point> points;
  std::vector<sf::Color> colours;
  constexpr std::size_t kColumns = 25;
  for (const float up : {1.0F, 0.4F, 0.0F}) {
    for (std::size_t column = 0; column < kColumns; ++column) {
      const float u = 2 * static_cast<float>(column) / (kColumns - 1) - 1;
      const double light = 0.42 * static_cast<double>((1 - up) * (1 - up) * (1 - u * u));
      points.push_back(at.foot + Point{u * half, -kFlaskFloor + shape.sag(u * half) - up * deep});
      colours.push_back(faded(sf::Color::White, light));
    }
  }
  canvas.mesh(points, colours, kColumns);
}

/// Where the surface meets the glass it climbs (a capillary length, about 2.7 mm for water).
float climbs(float u, float half) {
  constexpr float kLength = 0.27F * kNearUnits_cm;
  return 0.30F * kLength * std::exp(-(1 - std::fabs(u)) * half / (0.5F * kLength));
}

void liquid_surface(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape,
                    const LiquidPlace& at) {
  const float level = at.half * 0.075F + 1.0F;
  const float ry = std::clamp(level - at.nearer, 0.25F * level, 2.5F * level);
  const auto place = [&](float u, float across, float lift) {
    const float half = shape.half_at(std::min(at.top + at.tilt * u, -kFlaskFloor)) - kFlaskWall;
    return at.foot + Point{u * half, at.top + at.tilt * u + across * ry + lift - climbs(u, at.half)};
  };
  const Seen seen(picture);
  constexpr std::size_t kColumns = 65, kRows = 9;
  std::vector<Point> points;
  std::vector<sf::Color> colours;
  for (std::size_t row = 0; row < kRows; ++row) {
    const float across = 2 * static_cast<float>(row) / (kRows - 1) - 1;  // back to front
    for (std::size_t column = 0; column < kColumns; ++column) {
      const float u = 2 * static_cast<float>(column) / (kColumns - 1) - 1;
      const float depth = across * std::sqrt(1 - u * u);
      points.push_back(place(u, depth, 0));
      colours.push_back(
          faded(mixed(seen.at(u, 1), sf::Color::White, 0.40 - 0.20 * static_cast<double>(across)),
                0.80 + 0.15 * static_cast<double>(across)));
    }
  }
  canvas.mesh(points, colours, kColumns);
  const auto rim = [&](float side, float inset, float lift) {
    Points line;
    for (int i = 0; i <= 48; ++i) {
      const float u = -(1 - inset) * std::cos(3.14159265F * static_cast<float>(i) / 48);
      line.push_back(place(u, side * std::sqrt(1 - u * u), lift));
    }
    return line;
  };
  canvas.stroke(rim(-1, 0, 0), {1.0F}, faded(palette::glass_edge, 0.55));
  canvas.stroke(rim(1, 0, 0.6F), {1.5F}, faded(palette::glass_dark, 0.70));
  canvas.stroke(rim(1, 0.02F, -1.2F), {1.2F}, faded(sf::Color::White, 0.85));
}

}  // namespace

void draw_flask_liquid(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot) {
  const View& view = picture.view;
  if (view.flask_cm3 < 0.05) return;
  LiquidPlace at;
  at.foot = foot;
  at.top =
      -std::max(kFlaskFloor + 1.5F, static_cast<float>(view.flask_depth_cm) * kNearUnits_cm + kFlaskFloor);
  at.half = shape.half_at(at.top) - kFlaskWall;
  // Level though the flask leans, but for the wave that runs round with the hand.
  const double phase = 2 * kPi * view.swirl_turns;
  const float crest = static_cast<float>(view.wave_cm) * kNearUnits_cm;
  at.tilt = at.half * static_cast<float>(std::tan(flask_lean(picture))) -
            crest * static_cast<float>(std::cos(phase));
  at.nearer = crest * static_cast<float>(std::sin(phase));
  liquid_body(canvas, picture, shape, at);
  if (view.flask_on_tile) lit_floor(canvas, shape, at);
  liquid_surface(canvas, picture, shape, at);
}

}  // namespace halfdrop

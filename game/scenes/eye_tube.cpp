#include "game/scenes/eye_tube.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "game/scenes/eye_image.h"
#include "game/scenes/eye_light.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

constexpr double kShortest_mm = 0.13, kLongest_mm = 0.16;  ///< thickness; ISO 385 allows 0.3
constexpr double kFigures_mm = 2.35;                       ///< size of the type
constexpr double kRow_mm = 0.25, kRow_units = 4.0;         ///< from one sight line to the next, at most
constexpr double kFigures_x = 0.655;                       ///< share of the tube's half width

const sf::Color kPrintOnDark = rgb(0xf2f6f5);

Rect upright(float left, float right, float top, float bottom) {
  return {left, top, right - left, bottom - top};
}

/// The tube's own part of the picture, seen half-way through it.
struct TubeEnds {
  double top_mm, bottom_mm;
};
TubeEnds tube_ends(const EyePane& pane) {
  const EyeScene& scene = pane.scene;
  return {std::min(pane.top_mm() + 0.5, scene.seen(0, scene.rim_mm(), scene.outer_mm()).y_mm),
          std::max(pane.bottom_mm() - 0.5, scene.seen(0, scene.foot_mm(), scene.outer_mm()).y_mm)};
}

/// Straight past the tube.
void draw_backdrop(const EyePane& pane) {
  constexpr std::size_t kColumns = 9;
  const auto rows = static_cast<std::size_t>(std::ceil((pane.top_mm() - pane.bottom_mm()) / kRow_mm));
  Points points;
  std::vector<sf::Color> colours;
  for (std::size_t row = 0; row <= rows; ++row) {
    const double down = static_cast<double>(row) / static_cast<double>(rows);
    const double y_mm = pane.top_mm() + down * (pane.bottom_mm() - pane.top_mm());
    for (std::size_t column = 0; column < kColumns; ++column) {
      const float share = static_cast<float>(column) / (kColumns - 1);
      const float x = pane.inner.x + pane.inner.w * share;
      points.push_back({x, pane.y(y_mm)});
      const double x_mm = static_cast<double>(x - pane.inner.centre().x) / pane.per_mm;
      colours.push_back(
          light_along(pane.scene, sight_ray(pane.scene.sight(), pane.scene.eye_mm(), x_mm, y_mm)));
    }
  }
  pane.canvas.mesh(points, colours, kColumns);
}

/// What the bowl of the meniscus shows is drawn out thin and torn into shreds narrower than a sight line;
/// these run into each other, but for the sharp lower edge.
void smooth_bowl(const EyeImage& image, std::size_t passes, std::vector<sf::Color>& colours) {
  constexpr std::size_t kSharpRows = 5;
  const std::size_t columns = image.columns();
  const auto in_bowl = [&](std::size_t row, std::size_t column) {
    return image.point(row, column).end.meets == SightMeets::surface;
  };
  std::size_t first = 1;
  while (first + 1 < image.rows() && !in_bowl(first, columns / 2)) ++first;
  for (std::size_t pass = 0; pass < passes; ++pass) {
    const std::vector<sf::Color> before = colours;
    for (std::size_t row = first + 1; row + 1 < image.rows(); ++row) {
      const double into = std::min(1.0, static_cast<double>(row - first) / kSharpRows);
      for (std::size_t column = 1; column + 1 < columns; ++column) {
        if (!in_bowl(row, column) || !in_bowl(row + 1, column)) continue;
        const std::size_t i = row * columns + column;
        const sf::Color sides = mixed(before[i - 1], before[i + 1], 0.5);
        const sf::Color ends = mixed(before[i - columns], before[i + columns], 0.5);
        colours[i] = mixed(before[i], mixed(sides, ends, 0.5), 0.6 * into * into);
      }
    }
  }
}

/// Where sight lines begin to meet something else the picture's grid shows as steps; over the dark curve,
/// where nothing is read, these run into each other.
void soften_steps(const EyeImage& image, std::vector<sf::Color>& colours) {
  constexpr int kPasses = 2;
  const std::size_t columns = image.columns();
  const auto differs = [&](std::size_t i, std::size_t j) {
    const SightEnd &a = image.points()[i].end, &b = image.points()[j].end;
    return a.meets != b.meets || a.turned != b.turned;
  };
  for (int pass = 0; pass < kPasses; ++pass) {
    const std::vector<sf::Color> before = colours;
    for (std::size_t row = image.first_row_over() + 1; row + 1 < image.rows(); ++row) {
      for (std::size_t column = 1; column + 1 < columns; ++column) {
        const std::size_t i = row * columns + column;
        if (!differs(i, i - columns) && !differs(i, i + columns) && !differs(i, i - 1) && !differs(i, i + 1))
          continue;
        colours[i] = mixed(mixed(before[i - 1], before[i + 1], 0.5),
                           mixed(before[i - columns], before[i + columns], 0.5), 0.5);
      }
    }
  }
}

std::vector<sf::Color> colours_of(const EyeScene& scene, const EyeImage& image) {
  std::vector<sf::Color> colours;
  colours.reserve(image.points().size());
  for (const EyePoint& point : image.points()) colours.push_back(light_of(scene, point.end));
  smooth_bowl(image, image.columns() / 17, colours);
  soften_steps(image, colours);
  return colours;
}

/// Sight lines and the light they bring.
struct LitImage {
  SightGeometry sight;
  EyeLook look;
  EyeWindow window;
  EyeImage image;
  double card_mm;
  std::vector<sf::Color> colours;
};

/// Followed anew only when eye, liquid or window have moved, lit anew when the card has too: both take
/// milliseconds.
const LitImage& lit_image(const EyeScene& scene, const EyeWindow& window) {
  static std::optional<LitImage> kept;
  if (!kept || kept->look != scene.look() || kept->window != window || kept->sight != scene.sight()) {
    EyeImage image(scene, window);
    std::vector<sf::Color> colours = colours_of(scene, image);
    kept.emplace(
        LitImage{scene.sight(), scene.look(), window, std::move(image), scene.card_mm(), std::move(colours)});
  } else if (kept->card_mm != scene.card_mm()) {
    kept->card_mm = scene.card_mm();
    kept->colours = colours_of(scene, kept->image);
  }
  return *kept;
}

void draw_image(const EyePane& pane, const LitImage& lit) {
  Points points;
  points.reserve(lit.image.points().size());
  for (const EyePoint& point : lit.image.points()) points.push_back(pane.at(point.at));
  pane.canvas.mesh(points, lit.colours, lit.image.columns());
}

struct Span {
  double from, to;
};
/// Angles a graduation runs through on the front: left of the figures; long ones go all round but for a gap
/// there.
Span front_of(EyeMark::Length length) {
  switch (length) {
    case EyeMark::Length::longest:
      return {-90, 20};
    case EyeMark::Length::middle:
      return {-90, 16};
    case EyeMark::Length::shortest:
      break;
  }
  return {-58, 10};
}

float thickness(const EyePane& pane, const EyeMark& mark) {
  return pane.units(mark.length == EyeMark::Length::shortest ? kShortest_mm : kLongest_mm);
}

sf::Color print_before(const EyePane& pane, const PointOnScale& at, double opacity) {
  const bool dark = is_dark(light_of(pane.scene, pane.scene.look_through(at.x_mm, at.y_mm)));
  return faded(dark ? kPrintOnDark : palette::scale_print, opacity);
}

/// A line of print, light where what shows behind it is dark.
void draw_print(const EyePane& pane, const std::vector<PointOnScale>& line, float width, double opacity) {
  if (line.size() < 2) return;
  std::size_t from = 0;
  sf::Color colour = print_before(pane, line.front(), opacity);
  for (std::size_t i = 1; i < line.size(); ++i) {
    const sf::Color next = print_before(pane, line[i], opacity);
    const bool last = i + 1 == line.size();
    if (next == colour && !last) continue;
    pane.canvas.stroke(pane.at({line.begin() + static_cast<std::ptrdiff_t>(from),
                                line.begin() + static_cast<std::ptrdiff_t>(i) + 1}),
                       {width}, colour);
    from = i;
    colour = next;
  }
}

void draw_mark_backs(const EyePane& pane, const EyeImage& image, const std::vector<EyeMark>& marks) {
  for (const EyeMark& mark : marks) {
    if (mark.length == EyeMark::Length::shortest) continue;
    const Span span = mark.length == EyeMark::Length::longest ? Span{90, 270} : Span{210, 270};
    const double height_mm = -0.1 * mark.tenths * pane.scene.sight().mm_per_cm3;
    for (const auto& piece : image.back_of_ring(height_mm, span.from, span.to))
      draw_print(pane, piece, thickness(pane, mark), 0.42);
  }
}

/// Where dark and light meet behind the figures, a rim sets them off.
void draw_figures(const EyePane& pane, const EyeMark& mark) {
  const PointOnScale middle{pane.scene.outer_mm() * kFigures_x, pane.scene.mark_ring(mark, -1, 1)[1].y_mm};
  const auto print_at = [&](double up) {
    return print_before(pane, {middle.x_mm, middle.y_mm + up * kFigures_mm}, 1.0);
  };
  const sf::Color print = print_at(0.0);
  const std::string figures = std::to_string(mark.tenths / 10);
  const auto set = [&](Point by, sf::Color colour) {
    pane.canvas.text_middle(figures, pane.at(middle) + by,
                            {pane.units(kFigures_mm), colour, Face::bold, Align::centre});
  };
  if (print_at(0.4) != print || print_at(-0.4) != print) {
    const sf::Color rim = print == kPrintOnDark ? palette::scale_print : kPrintOnDark;
    const float by = pane.units(0.14);
    for (const Point& off : ellipse_points({0, 0}, by, by, 12)) set(off, rim);
  }
  set({0, 0}, print);
}

void draw_mark_fronts(const EyePane& pane, const std::vector<EyeMark>& marks) {
  for (const EyeMark& mark : marks) {
    const Span span = front_of(mark.length);
    draw_print(pane, pane.scene.mark_ring(mark, span.from, span.to), thickness(pane, mark), 1.0);
    if (mark.length != EyeMark::Length::longest) continue;
    draw_print(pane, pane.scene.mark_ring(mark, 66, 90), thickness(pane, mark), 1.0);
    draw_figures(pane, mark);
  }
}

/// The tube's outlines, and the window's light on its front.
void draw_glass_front(const EyePane& pane, float top, float bottom) {
  Canvas& canvas = pane.canvas;
  const double outline = pane.scene.outline_mm();
  for (const double side : {-1.0, 1.0}) {
    const float a = pane.x(side * outline), b = pane.x(side * outline * 0.90);
    canvas.rect(upright(std::min(a, b), std::max(a, b), top, bottom),
                Paint::horizontal(a, b, {{0, rgb(0x557079, 0.55)}, {1, rgb(0x557079, 0.0)}}));
    canvas.line({a, top}, {a, bottom}, std::max(1.2F, pane.units(0.12)), palette::glass_edge);
  }
  const auto gleam = [&](double from_share, double to_share, double strength) {
    const float from = pane.x(outline * from_share), to = pane.x(outline * to_share);
    canvas.rect(
        upright(from, to, top, bottom),
        Paint::horizontal(
            from, to, {{0, rgb(0xffffff, 0.0)}, {0.5F, rgb(0xffffff, strength)}, {1, rgb(0xffffff, 0.0)}}));
  };
  gleam(-0.86, -0.72, 0.5);
  gleam(0.86, 0.95, 0.25);
}

void draw_rim(const EyePane& pane) {
  const EyeScene& scene = pane.scene;
  if (scene.rim_mm() > pane.top_mm() + 4) return;
  for (const double radius : {scene.outer_mm(), scene.bore_mm()}) {
    const Points rim = pane.at(scene.ring(radius, scene.rim_mm(), -180, 174));
    pane.canvas.stroke(rim, {pane.units(0.14), true}, palette::glass_edge);
  }
}

/// Where the tube narrows to the tap.
void draw_foot(const EyePane& pane, double foot_mm) {
  if (pane.scene.foot_mm() < pane.bottom_mm() - 4) return;
  const float y = pane.y(foot_mm);
  const double outer = pane.scene.outline_mm();
  const Points shoulder =
      Path({pane.x(-outer), y})
          .cubic({pane.x(-outer), y + pane.units(4)}, {pane.x(-3.2), y + pane.units(4)},
                 {pane.x(-3.0), y + pane.units(9)})
          .line({pane.x(3.0), y + pane.units(9)})
          .cubic({pane.x(3.2), y + pane.units(4)}, {pane.x(outer), y + pane.units(4)}, {pane.x(outer), y})
          .points();
  pane.canvas.polygon(shoulder, faded(palette::glass_tint, 0.6));
  pane.canvas.stroke(shoulder, {pane.units(0.14)}, palette::glass_edge);
}

}  // namespace

Points EyePane::at(const std::vector<PointOnScale>& points) const {
  Points on_screen;
  for (const PointOnScale& p : points) on_screen.push_back(at(p));
  return on_screen;
}

void draw_eye_tube(const EyePane& pane) {
  draw_backdrop(pane);
  const TubeEnds ends = tube_ends(pane);
  const auto marks = pane.scene.marks_between(pane.bottom_mm() - 8, pane.top_mm() + 8);
  if (ends.top_mm > ends.bottom_mm) {
    const double pixel_mm = static_cast<double>(pane.canvas.pixel()) / pane.per_mm;
    const auto half_columns = static_cast<std::size_t>(std::max(26.0, 1.65 * pane.per_mm));
    const LitImage& lit = lit_image(
        pane.scene,
        {ends.bottom_mm, ends.top_mm, std::min(kRow_mm, kRow_units / pane.per_mm), pixel_mm, half_columns});
    draw_image(pane, lit);
    draw_mark_backs(pane, lit.image, marks);
    draw_rim(pane);
    draw_foot(pane, ends.bottom_mm);
    draw_glass_front(pane, pane.y(ends.top_mm), pane.y(ends.bottom_mm));
  }
  draw_mark_fronts(pane, marks);
}

}  // namespace halfdrop

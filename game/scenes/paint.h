#pragma once
// Points, rectangles, colours and gradients of the screen, in design units (1280 x 720).

#include <SFML/Graphics/Color.hpp>
#include <SFML/System/Vector2.hpp>
#include <initializer_list>
#include <vector>

namespace halfdrop {

using Point = sf::Vector2f;
using Points = std::vector<Point>;

struct Rect {
  float x = 0, y = 0, w = 0, h = 0;

  [[nodiscard]] float right() const { return x + w; }
  [[nodiscard]] float bottom() const { return y + h; }
  [[nodiscard]] Point centre() const { return {x + w / 2, y + h / 2}; }
  [[nodiscard]] bool contains(Point p) const {
    return p.x >= x && p.x < right() && p.y >= y && p.y < bottom();
  }
  [[nodiscard]] Rect grown(float by) const { return {x - by, y - by, w + 2 * by, h + 2 * by}; }
};

/// 0xRRGGBB and an opacity of 0..1.
[[nodiscard]] sf::Color rgb(unsigned hex, double opacity = 1.0);
/// The same colour, its opacity multiplied.
[[nodiscard]] sf::Color faded(sf::Color colour, double by);
/// share 0: one, 1: other; encoded values are mixed.
[[nodiscard]] sf::Color mixed(sf::Color one, sf::Color other, double share);

struct Stop {
  float at;  ///< 0..1 along the gradient
  sf::Color colour;
};

/// One colour, or a straight gradient of any number of stops between two points.
class Paint {
 public:
  Paint(sf::Color colour);  // NOLINT: a colour is a paint
  static Paint along(Point from, Point to, std::vector<Stop> stops);
  static Paint vertical(float top, float bottom, std::vector<Stop> stops);
  static Paint horizontal(float left, float right, std::vector<Stop> stops);

  [[nodiscard]] sf::Color at(Point p) const;
  /// Position along the gradient; below 0 and above 1 outside it.
  [[nodiscard]] float along(Point p) const;
  [[nodiscard]] const std::vector<Stop>& stops() const { return stops_; }

 private:
  Paint() = default;
  Point from_, step_;
  std::vector<Stop> stops_;
};

/// Builds outlines of lines and curves.
class Path {
 public:
  explicit Path(Point start) : points_{start} {}
  Path& line(Point to);
  Path& quad(Point control, Point to);
  Path& cubic(Point first, Point second, Point to);
  [[nodiscard]] const Points& points() const { return points_; }

 private:
  Points points_;
};

[[nodiscard]] Points rounded_rect_points(const Rect& rect, float radius);
[[nodiscard]] Points ellipse_points(Point centre, float rx, float ry, int segments = 48);
/// Turned clockwise (as seen) by degrees about a point.
[[nodiscard]] Points turned(Points points, Point about, double degrees);
[[nodiscard]] Points mirrored_in_x(Points points, float axis_x);

/// Index triples of a simple polygon, by ear clipping.
[[nodiscard]] std::vector<std::size_t> triangulate(const Points& polygon);

}  // namespace halfdrop

#include "game/scenes/paint.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace halfdrop {

namespace {

sf::Uint8 byte(double value) { return static_cast<sf::Uint8>(std::clamp(std::lround(value), 0L, 255L)); }

float cross(Point a, Point b, Point c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

bool inside(Point p, Point a, Point b, Point c) {
  return cross(a, b, p) >= 0 && cross(b, c, p) >= 0 && cross(c, a, p) >= 0;
}

constexpr int kCurveSteps = 14;

}  // namespace

sf::Color rgb(unsigned hex, double opacity) {
  return {static_cast<sf::Uint8>(hex >> 16 & 255U), static_cast<sf::Uint8>(hex >> 8 & 255U),
          static_cast<sf::Uint8>(hex & 255U), byte(255.0 * opacity)};
}

sf::Color faded(sf::Color colour, double by) {
  colour.a = byte(colour.a * by);
  return colour;
}

sf::Color mixed(sf::Color one, sf::Color other, double share) {
  const auto mix = [share](sf::Uint8 a, sf::Uint8 b) { return byte(a + (b - a) * share); };
  return {mix(one.r, other.r), mix(one.g, other.g), mix(one.b, other.b), mix(one.a, other.a)};
}

Paint::Paint(sf::Color colour) : stops_{{0.0F, colour}} {}

Paint Paint::along(Point from, Point to, std::vector<Stop> stops) {
  Paint paint;
  const Point d = to - from;
  const float squared = d.x * d.x + d.y * d.y;
  paint.from_ = from;
  paint.step_ = squared > 0 ? d / squared : Point{};
  paint.stops_ = std::move(stops);
  return paint;
}

Paint Paint::vertical(float top, float bottom, std::vector<Stop> stops) {
  return along({0, top}, {0, bottom}, std::move(stops));
}

Paint Paint::horizontal(float left, float right, std::vector<Stop> stops) {
  return along({left, 0}, {right, 0}, std::move(stops));
}

float Paint::along(Point p) const { return (p.x - from_.x) * step_.x + (p.y - from_.y) * step_.y; }

sf::Color Paint::at(Point p) const {
  if (stops_.size() == 1) return stops_.front().colour;
  const float t = along(p);
  if (t <= stops_.front().at) return stops_.front().colour;
  for (std::size_t i = 1; i < stops_.size(); ++i) {
    if (t <= stops_[i].at) {
      const float span = stops_[i].at - stops_[i - 1].at;
      const float share = span > 0 ? (t - stops_[i - 1].at) / span : 1.0F;
      return mixed(stops_[i - 1].colour, stops_[i].colour, static_cast<double>(share));
    }
  }
  return stops_.back().colour;
}

Path& Path::line(Point to) {
  points_.push_back(to);
  return *this;
}

Path& Path::quad(Point control, Point to) {
  const Point from = points_.back();
  return cubic(from + (control - from) * (2.0F / 3), to + (control - to) * (2.0F / 3), to);
}

Path& Path::cubic(Point first, Point second, Point to) {
  const Point from = points_.back();
  for (int i = 1; i <= kCurveSteps; ++i) {
    const float t = static_cast<float>(i) / kCurveSteps, u = 1 - t;
    points_.push_back(from * (u * u * u) + first * (3 * u * u * t) + second * (3 * u * t * t) +
                      to * (t * t * t));
  }
  return *this;
}

Points rounded_rect_points(const Rect& rect, float radius) {
  const float r = std::min({radius, rect.w / 2, rect.h / 2});
  if (r <= 0)
    return {{rect.x, rect.y}, {rect.right(), rect.y}, {rect.right(), rect.bottom()}, {rect.x, rect.bottom()}};
  const Point corners[4] = {{rect.right() - r, rect.y + r},
                            {rect.right() - r, rect.bottom() - r},
                            {rect.x + r, rect.bottom() - r},
                            {rect.x + r, rect.y + r}};
  constexpr int steps = 8;
  Points points;
  for (int corner = 0; corner < 4; ++corner) {
    for (int i = 0; i <= steps; ++i) {
      const float angle = 1.5707963F * (static_cast<float>(corner - 1) + static_cast<float>(i) / steps);
      points.push_back(corners[corner] + Point{r * std::cos(angle), r * std::sin(angle)});
    }
  }
  return points;
}

Points ellipse_points(Point centre, float rx, float ry, int segments) {
  Points points;
  for (int i = 0; i < segments; ++i) {
    const float angle = 6.2831853F * static_cast<float>(i) / static_cast<float>(segments);
    points.push_back(centre + Point{rx * std::cos(angle), ry * std::sin(angle)});
  }
  return points;
}

Points turned(Points points, Point about, double degrees) {
  const auto s = static_cast<float>(std::sin(degrees * 0.017453292519943295));
  const auto c = static_cast<float>(std::cos(degrees * 0.017453292519943295));
  for (Point& p : points) {
    const Point d = p - about;
    p = about + Point{d.x * c - d.y * s, d.x * s + d.y * c};
  }
  return points;
}

Points mirrored_in_x(Points points, float axis_x) {
  for (Point& p : points) p.x = 2 * axis_x - p.x;
  std::reverse(points.begin(), points.end());
  return points;
}

std::vector<std::size_t> triangulate(const Points& polygon) {
  std::vector<std::size_t> left(polygon.size());
  std::iota(left.begin(), left.end(), std::size_t{0});
  float area = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    area += a.x * b.y - b.x * a.y;
  }
  if (area < 0) std::reverse(left.begin(), left.end());

  const auto is_ear = [&](std::size_t i) {
    const std::size_t n = left.size();
    const Point a = polygon[left[(i + n - 1) % n]], b = polygon[left[i]], c = polygon[left[(i + 1) % n]];
    if (cross(a, b, c) <= 0) return false;
    for (std::size_t j = 0; j < n; ++j) {
      const Point p = polygon[left[j]];
      if (p != a && p != b && p != c && inside(p, a, b, c)) return false;
    }
    return true;
  };
  std::vector<std::size_t> triangles;
  std::size_t at = 0, tried = 0;
  while (left.size() > 3) {
    at %= left.size();
    // After a whole round without an ear the outline is degenerate there: cut a corner all the same.
    if (is_ear(at) || tried > left.size()) {
      const std::size_t n = left.size();
      triangles.insert(triangles.end(), {left[(at + n - 1) % n], left[at], left[(at + 1) % n]});
      left.erase(left.begin() + static_cast<std::ptrdiff_t>(at));
      tried = 0;
    } else {
      ++at;
      ++tried;
    }
  }
  if (left.size() == 3) triangles.insert(triangles.end(), left.begin(), left.end());
  return triangles;
}

}  // namespace halfdrop

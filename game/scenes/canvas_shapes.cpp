#include <algorithm>
#include <cmath>

#include "game/scenes/canvas.h"

namespace halfdrop {

namespace {

constexpr float kMitreLimit = 2.0F;

sf::Color clear(sf::Color colour) {
  colour.a = 0;
  return colour;
}

Point unit(Point v) {
  const float length = std::sqrt(v.x * v.x + v.y * v.y);
  return length > 0 ? v / length : Point{};
}

/// Normals at each corner, lengthened so that an offset keeps its distance from both sides.
Points corner_normals(const Points& line, bool closed) {
  const std::size_t n = line.size();
  Points normals(n);
  for (std::size_t i = 0; i < n; ++i) {
    const Point here = line[i];
    Point in = here - line[i > 0 ? i - 1 : (closed ? n - 1 : 0)];
    Point out = line[i + 1 < n ? i + 1 : (closed ? 0 : i)] - here;
    if (in == Point{}) in = out;
    if (out == Point{}) out = in;
    const Point a = unit(in), b = unit(out);
    const Point na{a.y, -a.x}, nb{b.y, -b.x};
    const Point middle = unit(na + nb);
    const float share = middle.x * na.x + middle.y * na.y;
    normals[i] = share > 0 ? middle * std::min(1.0F / share, kMitreLimit) : na;
  }
  return normals;
}

Points offset(const Points& line, const Points& normals, float by) {
  Points moved(line.size());
  for (std::size_t i = 0; i < line.size(); ++i) moved[i] = line[i] + normals[i] * by;
  return moved;
}

Points without_repeats(const Points& points, bool closed) {
  Points kept;
  for (const Point& p : points) {
    if (kept.empty() || std::abs(p.x - kept.back().x) + std::abs(p.y - kept.back().y) > 1e-3F)
      kept.push_back(p);
  }
  while (closed && kept.size() > 1 &&
         std::abs(kept.front().x - kept.back().x) + std::abs(kept.front().y - kept.back().y) < 1e-3F) {
    kept.pop_back();
  }
  return kept;
}

float signed_area(const Points& outline) {
  float area = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point a = outline[i], b = outline[(i + 1) % outline.size()];
    area += a.x * b.y - b.x * a.y;
  }
  return area;
}

/// The part of a convex piece between two positions along a gradient.
Points between(const Points& piece, const Paint& paint, float low, float high) {
  const auto cut = [&paint](const Points& in, float limit, float sign) {
    Points out;
    for (std::size_t i = 0; i < in.size(); ++i) {
      const Point a = in[i], b = in[(i + 1) % in.size()];
      const float ta = sign * (paint.along(a) - limit), tb = sign * (paint.along(b) - limit);
      if (ta >= 0) out.push_back(a);
      if ((ta > 0 && tb < 0) || (ta < 0 && tb > 0)) out.push_back(a + (b - a) * (ta / (ta - tb)));
    }
    return out;
  };
  return cut(cut(piece, low, 1.0F), high, -1.0F);
}

}  // namespace

void Canvas::triangle(Point a, Point b, Point c, const Paint& paint) {
  const auto& stops = paint.stops();
  if (stops.size() == 1) {
    for (const Point p : {a, b, c}) vertex(p, stops.front().colour);
    return;
  }
  constexpr float far = 1e6F;
  const Points whole{a, b, c};
  const auto [least, most] = std::minmax({paint.along(a), paint.along(b), paint.along(c)});
  float low = -far;
  for (std::size_t i = 0; i <= stops.size(); ++i) {
    const float high = i < stops.size() ? stops[i].at : far;
    if (high > least && low < most) {
      const Points piece = least >= low && most <= high ? whole : between(whole, paint, low, high);
      for (std::size_t k = 2; k < piece.size(); ++k) {
        for (const Point p : {piece[0], piece[k - 1], piece[k]}) vertex(p, paint.at(p));
      }
    }
    low = high;
  }
  if (least == most &&
      std::any_of(stops.begin(), stops.end(), [&](const Stop& s) { return s.at == least; })) {
    for (const Point p : {a, b, c}) vertex(p, paint.at(p));
  }
}

void Canvas::band(const Points& inner, const Points& outer, bool closed, const Paint& paint) {
  const std::size_t n = inner.size();
  for (std::size_t i = 0; i + (closed ? 0 : 1) < n; ++i) {
    const std::size_t next = (i + 1) % n;
    const sf::Color here = paint.at(inner[i]), there = paint.at(inner[next]);
    vertex(inner[i], here);
    vertex(inner[next], there);
    vertex(outer[next], clear(there));
    vertex(inner[i], here);
    vertex(outer[next], clear(there));
    vertex(outer[i], clear(here));
  }
}

void Canvas::ring(const Points& inner, sf::Color inner_colour, const Points& outer, sf::Color outer_colour) {
  for (std::size_t i = 0; i < inner.size(); ++i) {
    const std::size_t next = (i + 1) % inner.size();
    vertex(inner[i], inner_colour);
    vertex(inner[next], inner_colour);
    vertex(outer[next], outer_colour);
    vertex(inner[i], inner_colour);
    vertex(outer[next], outer_colour);
    vertex(outer[i], outer_colour);
  }
}

void Canvas::polygon(const Points& outline, const Paint& paint) {
  Points points = without_repeats(outline, true);
  if (points.size() < 3) return;
  if (signed_area(points) < 0) std::reverse(points.begin(), points.end());
  const Points normals = corner_normals(points, true);
  const Points inner = offset(points, normals, -0.5F * pixel());
  const Points outer = offset(points, normals, 0.5F * pixel());
  const auto triangles = triangulate(inner);
  for (std::size_t i = 0; i + 2 < triangles.size(); i += 3) {
    triangle(inner[triangles[i]], inner[triangles[i + 1]], inner[triangles[i + 2]], paint);
  }
  band(inner, outer, true, paint);
}

void Canvas::rect(const Rect& rect, const Paint& paint) {
  const Point a{rect.x, rect.y}, b{rect.right(), rect.y}, c{rect.right(), rect.bottom()},
      d{rect.x, rect.bottom()};
  polygon({a, b, c, d}, paint);
}

void Canvas::rounded_rect(const Rect& rect, float radius, const Paint& paint) {
  polygon(rounded_rect_points(rect, radius), paint);
}

void Canvas::ellipse(Point centre, float rx, float ry, const Paint& paint) {
  const float pixels = std::max(rx, ry) * scale_;
  polygon(ellipse_points(centre, rx, ry, std::clamp(static_cast<int>(6 * std::sqrt(pixels)), 12, 120)),
          paint);
}

void Canvas::stroke(const Points& line, const StrokeStyle& style, const Paint& paint) {
  const Points points = without_repeats(line, style.closed);
  if (points.size() < 2) return;
  const float pixels = style.width * scale_;
  const float half = std::max(pixels, 1.0F) / 2 * pixel();
  Paint thin = paint;
  if (pixels < 1) {
    // Thinner than a pixel: a pixel wide and paler.
    thin = Paint(faded(paint.at(points.front()), static_cast<double>(pixels)));
  }
  const Points normals = corner_normals(points, style.closed);
  const float core = std::max(0.0F, half - 0.5F * pixel());
  const Points left = offset(points, normals, core), right = offset(points, normals, -core);
  const std::size_t n = points.size();
  for (std::size_t i = 0; core > 0 && i + (style.closed ? 0 : 1) < n; ++i) {
    const std::size_t next = (i + 1) % n;
    triangle(left[i], left[next], right[next], thin);
    triangle(left[i], right[next], right[i], thin);
  }
  band(left, offset(points, normals, half + 0.5F * pixel()), style.closed, thin);
  band(right, offset(points, normals, -half - 0.5F * pixel()), style.closed, thin);
  if (style.round_ends && !style.closed && pixels > 2) {
    circle(points.front(), half, thin);
    circle(points.back(), half, thin);
  }
}

void Canvas::line(Point from, Point to, float width, const Paint& paint) {
  stroke({from, to}, {width}, paint);
}

void Canvas::dashed(const Points& line, float width, float dash, float gap, sf::Color colour) {
  float left = dash;
  bool on = true;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    Point at = line[i];
    const Point step = unit(line[i + 1] - at);
    float length = std::hypot(line[i + 1].x - at.x, line[i + 1].y - at.y);
    while (length > 1e-4F) {
      const float part = std::min(left, length);
      const Point next = at + step * part;
      if (on) stroke({at, next}, {width}, colour);
      at = next;
      length -= part;
      left -= part;
      if (left <= 1e-4F) {
        on = !on;
        left = on ? dash : gap;
      }
    }
  }
}

void Canvas::glow(Point centre, float rx, float ry, const std::vector<Stop>& stops) {
  constexpr int segments = 40;
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    ring(ellipse_points(centre, rx * stops[i].at, ry * stops[i].at, segments), stops[i].colour,
         ellipse_points(centre, rx * stops[i + 1].at, ry * stops[i + 1].at, segments), stops[i + 1].colour);
  }
}

namespace {

/// Smooth fall from 1 to 0, like the edge of a blurred shape.
double soft_edge(double t) { return 1 - t * t * (3 - 2 * t); }
constexpr int kSoftRings = 7;

}  // namespace

void Canvas::soft_ellipse(Point centre, float rx, float ry, float blur, sf::Color colour) {
  // A flat shape's fade is flat as well, or the shadow would bulge.
  const float blur_y = std::min(blur, ry * 0.95F);
  const float inner_x = std::max(0.0F, rx - blur), inner_y = std::max(0.0F, ry - blur_y);
  const float outer_x = rx + blur, outer_y = ry + blur_y;
  Points last = ellipse_points(centre, inner_x, inner_y, 56);
  sf::Color last_colour = colour;
  ring(Points(last.size(), centre), colour, last, colour);
  for (int i = 1; i <= kSoftRings; ++i) {
    const float t = static_cast<float>(i) / kSoftRings;
    Points next =
        ellipse_points(centre, inner_x + (outer_x - inner_x) * t, inner_y + (outer_y - inner_y) * t, 56);
    const sf::Color next_colour = faded(colour, soft_edge(static_cast<double>(t)));
    ring(last, last_colour, next, next_colour);
    last = std::move(next);
    last_colour = next_colour;
  }
}

void Canvas::soft_rect(const Rect& rect, float radius, float blur, sf::Color colour) {
  const float inset = std::min({blur, rect.w / 2, rect.h / 2}) * 0.98F;
  const auto outline = [&](float by) {
    return rounded_rect_points(rect.grown(by), std::max(1.0F, radius + by));
  };
  Points last = outline(-inset);
  sf::Color last_colour = colour;
  ring(Points(last.size(), rect.centre()), colour, last, colour);
  for (int i = 1; i <= kSoftRings; ++i) {
    const float t = static_cast<float>(i) / kSoftRings;
    Points next = outline(-inset + (inset + blur) * t);
    const sf::Color next_colour = faded(colour, soft_edge(static_cast<double>(t)));
    ring(last, last_colour, next, next_colour);
    last = std::move(next);
    last_colour = next_colour;
  }
}

void Canvas::mesh(std::span<const Point> points, std::span<const sf::Color> colours, std::size_t columns) {
  const std::size_t rows = points.size() / columns;
  for (std::size_t row = 0; row + 1 < rows; ++row) {
    for (std::size_t column = 0; column + 1 < columns; ++column) {
      const std::size_t a = row * columns + column, c = a + columns;
      for (const std::size_t i : {a, a + 1, c + 1, a, c + 1, c}) vertex(points[i], colours[i]);
    }
  }
}

}  // namespace halfdrop

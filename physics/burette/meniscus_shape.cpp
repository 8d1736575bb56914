#include "physics/burette/meniscus_shape.h"

#include <cmath>

namespace halfdrop {
namespace {

/// Lengths in capillary lengths.
struct Point {
  double x = 0.0, z = 0.0;
  double cosine = 1.0, sine = 0.0;
};

constexpr double kStep = 0.005;

struct Change {
  double x, z, cosine, sine;
};

/// The surface's curvatures sum to 2 b at the axis, and to more by the height above it.
double bend_at(const Point& at, double axis_curvature) {
  const double round = at.x > 1e-9 ? at.sine / at.x : axis_curvature;
  return 2.0 * axis_curvature + at.z - round;
}

Change along(const Point& at, double axis_curvature) {
  const double bend = bend_at(at, axis_curvature);
  return {at.cosine, at.sine, -at.sine * bend, at.cosine * bend};
}

Point moved(const Point& from, const Change& by, double step) {
  return {from.x + step * by.x, from.z + step * by.z, from.cosine + step * by.cosine,
          from.sine + step * by.sine};
}

/// Midpoint rule.
Point next(const Point& from, double axis_curvature, double step) {
  return moved(from, along(moved(from, along(from, axis_curvature), 0.5 * step), axis_curvature), step);
}

/// From the axis to where the surface stands upright; the last step is cut there.
std::vector<Point> upright(double axis_curvature, double widest) {
  std::vector<Point> points{Point{}};
  while (points.back().cosine > 0.0 && points.back().x < widest) {
    const Point& at = points.back();
    Point then = next(at, axis_curvature, kStep);
    if (then.cosine < 0.0) then = next(at, axis_curvature, kStep * at.cosine / (at.cosine - then.cosine));
    points.push_back(then);
    if (then.cosine < 1e-6) break;
  }
  return points;
}

/// The curvature at the axis with which the surface stands upright at the wall: the sharper, the narrower.
double axis_curvature(double radius) {
  double low = 0.0, high = 2.0 / radius;
  for (int i = 0; i < 45; ++i) {
    const double middle = 0.5 * (low + high);
    (upright(middle, radius).back().x < radius ? high : low) = middle;
  }
  return high;
}

}  // namespace

std::vector<MeniscusPoint> meniscus_outline(const MeniscusBore& bore) {
  std::vector<MeniscusPoint> outline;
  const double radius = bore.radius_mm / bore.capillary_mm;
  for (const Point& at : upright(axis_curvature(radius), radius))
    outline.push_back({at.x * bore.capillary_mm, at.z * bore.capillary_mm});
  return outline;
}

double wall_curvature(const MeniscusBore& bore) {
  const double radius = bore.radius_mm / bore.capillary_mm;
  const double curvature = axis_curvature(radius);
  return bend_at(upright(curvature, radius).back(), curvature);
}

}  // namespace halfdrop

#include "physics/burette/drop_shape.h"

#include <algorithm>
#include <cmath>

#include "physics/units.h"

namespace halfdrop {
namespace {

/// All lengths in capillary lengths. A point of the outline and how steep it is there.
struct Point {
  double x = 0.0, z = 0.0;          ///< radius, height above the lowest point
  double cosine = 1.0, sine = 0.0;  ///< of the outline's slope
  double volume = 0.0;
};

struct Change {
  double x, z, cosine, sine, volume;
};

/// Along the outline; a fiftieth of the tip's radius where that is less.
constexpr double kLongestStep = 0.01;
constexpr double kLongest = 10.0;  ///< more than any drop's outline

double step_for(double radius) { return std::min(kLongestStep, 0.02 * radius); }

/// Curvatures sum to the pressure inside: 2 b at the lowest point, less by the height above it.
Change along(const Point& at, double apex_curvature) {
  const double round = at.x > 1e-9 ? at.sine / at.x : apex_curvature;
  const double bend = 2.0 * apex_curvature - at.z - round;
  return {at.cosine, at.sine, -at.sine * bend, at.cosine * bend, kPi * at.x * at.x * at.sine};
}

Point moved(const Point& from, const Change& by, double step) {
  return {from.x + step * by.x, from.z + step * by.z, from.cosine + step * by.cosine,
          from.sine + step * by.sine, from.volume + step * by.volume};
}

/// Runge and Kutta, fourth order.
Point next(const Point& from, double apex_curvature, double step) {
  const Change a = along(from, apex_curvature);
  const Change b = along(moved(from, a, 0.5 * step), apex_curvature);
  const Change c = along(moved(from, b, 0.5 * step), apex_curvature);
  const Change d = along(moved(from, c, step), apex_curvature);
  const auto mean = [](double p, double q, double r, double s) { return (p + 2.0 * q + 2.0 * r + s) / 6.0; };
  return moved(
      from,
      {mean(a.x, b.x, c.x, d.x), mean(a.z, b.z, c.z, d.z), mean(a.cosine, b.cosine, c.cosine, d.cosine),
       mean(a.sine, b.sine, c.sine, d.sine), mean(a.volume, b.volume, c.volume, d.volume)},
      step);
}

/// Where the outline meets the tip's rim: on its way out, past its widest, or past a neck narrower than the
/// rim.
enum class Ends { rising, bulging, necked };

struct Outline {
  std::vector<Point> points;  ///< the last one on the rim, if it met it
  bool met = false;

  [[nodiscard]] double volume() const { return points.back().volume; }
};

/// Within a step: the point at which a condition begins to hold.
template <class Holds>
Point at_which(const Point& before, double apex_curvature, double step, Holds holds) {
  double low = 0.0, high = step;
  for (int i = 0; i < 32; ++i) {
    const double middle = 0.5 * (low + high);
    (holds(next(before, apex_curvature, middle)) ? high : low) = middle;
  }
  return next(before, apex_curvature, high);
}

/// One step on, or less: the widest and the narrowest place of an outline are points of it.
Point next_point(const Point& at, double apex_curvature, double step) {
  Point then = next(at, apex_curvature, step);
  const bool widest = at.cosine > 0.0 && then.cosine < 0.0;
  const bool narrowest = at.cosine < 0.0 && then.cosine > 0.0;
  if (!widest && !narrowest) return then;
  then = at_which(at, apex_curvature, step,
                  [&](const Point& p) { return widest ? p.cosine < 0.0 : p.cosine > 0.0; });
  then.cosine = 0.0;
  return then;
}

Outline outline_of(double apex_curvature, double radius, Ends ends) {
  Outline outline;
  Point at;
  outline.points.push_back(at);
  int crossings = 0, turns = 0;
  const double step = step_for(radius);
  while (static_cast<double>(outline.points.size()) * step < kLongest) {
    const Point then = next_point(at, apex_curvature, step);
    const bool out = at.x < radius && then.x >= radius;
    const bool in = at.x >= radius && then.x < radius;
    if ((out || in) && crossings++ == static_cast<int>(ends)) {
      outline.points.push_back(at_which(at, apex_curvature, step,
                                        [&](const Point& p) { return out ? p.x >= radius : p.x < radius; }));
      outline.met = true;
      return outline;
    }
    at = then;
    outline.points.push_back(at);
    if (at.cosine == 0.0 && crossings < ++turns)
      return outline;  // too narrow for the rim, or its neck too wide
  }
  return outline;
}

/// Where a condition on the apex curvature that holds at `holding` and not at `failing` changes; on its side.
template <class Holds>
double last_holding(double holding, double failing, Holds holds) {
  for (int i = 0; i < 34; ++i) {
    const double middle = 0.5 * (holding + failing);
    (holds(middle) ? holding : failing) = middle;
  }
  return holding;
}

/// How drops on a tip follow one another as they grow: the apex sharpens until the drop is as wide as the rim
/// and no wider; it flattens while the drop bulges, until its neck is as wide as the rim; then it sharpens
/// again while the neck draws in, up to the largest volume.
struct Family {
  double sharpest = 0.0, flattest = 0.0, largest = 0.0;  ///< apex curvatures
};

/// The apex curvature of the largest necked drop; golden section, the volume has one maximum there.
double largest_necked(double radius, double low, double high) {
  constexpr double kGolden = 0.6180339887498949;
  const auto volume = [&](double curvature) {
    const Outline outline = outline_of(curvature, radius, Ends::necked);
    return outline.met ? outline.volume() : 0.0;
  };
  for (int i = 0; i < 30; ++i) {
    const double left = high - kGolden * (high - low), right = low + kGolden * (high - low);
    if (volume(left) < volume(right))
      low = left;
    else
      high = right;
  }
  return 0.5 * (low + high);
}

Family family_of(double radius) {
  const auto meets = [&](Ends ends) {
    return [=](double curvature) { return outline_of(curvature, radius, ends).met; };
  };
  Family family;
  family.sharpest = last_holding(0.0, 2.0 / radius, meets(Ends::rising));
  family.flattest = last_holding(family.sharpest, 0.0, meets(Ends::bulging));
  family.largest = largest_necked(radius, family.flattest, family.sharpest);
  return family;
}

Outline hanging(double radius, double volume) {
  const Family family = family_of(radius);
  const auto between = [&](double small, double large, Ends ends) {
    const auto less = [&](double curvature) { return outline_of(curvature, radius, ends).volume() < volume; };
    return outline_of(last_holding(small, large, less), radius, ends);
  };
  if (volume <= outline_of(family.sharpest, radius, Ends::rising).volume())
    return between(0.0, family.sharpest, Ends::rising);
  if (volume <= outline_of(family.flattest, radius, Ends::bulging).volume())
    return between(family.sharpest, family.flattest, Ends::bulging);
  return between(family.flattest, family.largest, Ends::necked);
}

double cm3(double volume, double capillary_mm) {
  return volume * capillary_mm * capillary_mm * capillary_mm * 1e-3;
}

}  // namespace

double largest_drop_cm3(const DropTip& tip) {
  const double radius = tip.radius_mm / tip.capillary_mm;
  return cm3(outline_of(family_of(radius).largest, radius, Ends::necked).volume(), tip.capillary_mm);
}

std::vector<DropPoint> drop_outline(const DropTip& tip, double volume_cm3) {
  const double largest_cm3 = largest_drop_cm3(tip);
  const double volume = std::clamp(volume_cm3, 1e-6 * largest_cm3, largest_cm3) / cm3(1.0, tip.capillary_mm);
  std::vector<DropPoint> points;
  for (const Point& at : hanging(tip.radius_mm / tip.capillary_mm, volume).points)
    points.push_back({at.x * tip.capillary_mm, at.z * tip.capillary_mm});
  return points;
}

}  // namespace halfdrop

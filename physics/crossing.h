#pragma once
// Where a quantity changes its sign.

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace halfdrop {

/// A place between `low`, where `excess` is negative, and `high`, where it is not, within `tolerance` of
/// where its sign changes. Halving, and through the last three places an inverse parabola where they lie well
/// for one: Chandrupatla, Adv. Eng. Softw. 28 (1997) 145. From its sixtieth step on it halves only, so that
/// it comes to an end whatever the quantity does.
template <class Excess>
double crossing(double low, double high, double tolerance, Excess excess) {
  constexpr int kPatience = 60;
  struct Place {
    double x, y;
  };
  assert(low <= high && tolerance > 0.0);
  Place newest{high, excess(high)}, opposite{low, excess(low)}, third = newest;
  assert(newest.y >= 0.0 && opposite.y < 0.0);
  double share = 0.5;  // of the way from the newest place to the opposite one
  for (int steps = 0; std::abs(opposite.x - newest.x) > tolerance; ++steps) {
    double x = newest.x + share * (opposite.x - newest.x);
    if (x == newest.x || x == opposite.x) x = 0.5 * (newest.x + opposite.x);
    if (x == newest.x || x == opposite.x) break;  // nothing lies between two neighbouring numbers
    const Place found{x, excess(x)};
    third = newest;
    if ((found.y < 0.0) != (newest.y < 0.0)) std::swap(third, opposite);
    newest = found;
    const Place &a = newest, &b = opposite, &c = third;
    const double xi = (a.x - b.x) / (c.x - b.x), phi = (a.y - b.y) / (c.y - b.y);
    share = 0.5;
    if (steps < kPatience && phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi)
      share = a.y / (b.y - a.y) * c.y / (b.y - c.y) +
              (c.x - a.x) / (b.x - a.x) * a.y / (c.y - a.y) * b.y / (c.y - b.y);
    const double least = std::min(0.5 * tolerance / std::abs(b.x - a.x), 0.5);
    share = std::clamp(share, least, 1.0 - least);
  }
  return 0.5 * (newest.x + opposite.x);
}

}  // namespace halfdrop

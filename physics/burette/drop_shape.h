#pragma once
// The true outline of a drop that hangs at rest from a wetted, round tip: axisymmetric Young-Laplace,
// integrated from its lowest point. Nothing is left out but that the liquid inside moves as it grows.

#include <vector>

namespace halfdrop {

/// Wetted radius and capillary length, sqrt(tension / (density g)); both > 0, radius at most 0.8 capillary
/// lengths (a tip of 4.3 mm for water): from there on the family of necked drops that is searched changes.
struct DropTip {
  double radius_mm = 1.5;
  double capillary_mm = 2.726;
};

struct DropPoint {
  double radius_mm = 0.0;
  double height_mm = 0.0;  ///< above the drop's lowest point
};

/// The most that hangs in equilibrium, cm3: more begins to fall.
[[nodiscard]] double largest_drop_cm3(const DropTip& tip);
/// Half an outline, from the lowest point to the tip's rim, for 0 < volume < largest_drop_cm3 (clamped).
[[nodiscard]] std::vector<DropPoint> drop_outline(const DropTip& tip, double volume_cm3);

}  // namespace halfdrop

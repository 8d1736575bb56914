#pragma once
// The liquid surface at rest in a clean, wetted tube: axisymmetric Young-Laplace, contact angle 0.

#include <vector>

namespace halfdrop {

/// Inner radius of the tube and capillary length; both > 0.
struct MeniscusBore {
  double radius_mm = 5.38;
  double capillary_mm = 2.726;
};

struct MeniscusPoint {
  double radius_mm = 0.0;
  double height_mm = 0.0;  ///< above the lowest point, which lies on the axis
};

/// From the axis to the wall.
[[nodiscard]] std::vector<MeniscusPoint> meniscus_outline(const MeniscusBore& bore);
/// Curvature of the outline where it meets the wall, times the capillary length: what a falling meniscus'
/// film hangs on to.
[[nodiscard]] double wall_curvature(const MeniscusBore& bore);

}  // namespace halfdrop

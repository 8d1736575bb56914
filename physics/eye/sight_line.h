#pragma once
// What an eye at a height reads off the scale. What is read is the lower edge of the meniscus' dark curve:
// the lowest sight line that still touches the liquid's surface, seen from the front through glass and
// liquid. The figure is where that sight line crosses the scale's front, half-way across the tube.

#include <optional>

#include "physics/eye/sight_geometry.h"

namespace halfdrop {

/// Where the lower edge of the meniscus is seen, `x_mm` beside the middle of the tube, on the plane that
/// touches the scale's front: mm above the zero mark. None where no sight line there enters the liquid.
[[nodiscard]] std::optional<double> lower_edge_mm(const SightGeometry& sight, const EyeLook& look,
                                                  double x_mm);
/// ... and its upper edge: the liquid's contact line on the front wall.
[[nodiscard]] std::optional<double> upper_edge_mm(const SightGeometry& sight, const EyeLook& look,
                                                  double x_mm);

/// Reading at the lower edge for an eye `eye_mm` above the zero mark when the meniscus truly stands at
/// `true_cm3`. Eye above level reads low (zero at the top).
[[nodiscard]] double apparent_reading_cm3(const SightGeometry& sight, double eye_mm, double true_cm3);
/// ... and at the upper edge.
[[nodiscard]] double apparent_edge_cm3(const SightGeometry& sight, double eye_mm, double true_cm3);

/// A point in plain air as the eye sees it, on the same plane (z is not used).
[[nodiscard]] Vector seen_in_air(const SightGeometry& sight, double eye_mm, const Vector& point);

/// How far the eye is above the level of a mark, mm.
[[nodiscard]] double eye_above_mark_mm(const SightGeometry& sight, double eye_mm, double mark_cm3);

}  // namespace halfdrop

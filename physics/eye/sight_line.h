#pragma once
// What an eye at a height reads: the sight line to the meniscus on the tube's axis crosses the printed scale
// in front of it elsewhere than level. Straight sight lines; refraction is left out.

namespace halfdrop {

struct SightGeometry {
  double eye_distance_mm = 300.0;  ///< eye to the printed scale
  double depth_mm = 6.4;           ///< printed scale to the tube's axis
  double mm_per_cm3 = 11.0;        ///< pitch of the scale
};

/// Reading seen by an eye `eye_mm` above the zero mark when the meniscus truly stands at `true_cm3`.
/// Eye above level reads low (zero at the top).
[[nodiscard]] double apparent_reading_cm3(const SightGeometry& sight, double eye_mm, double true_cm3);

/// How far the eye is above the level of a mark, mm.
[[nodiscard]] double eye_above_mark_mm(const SightGeometry& sight, double eye_mm, double mark_cm3);

}  // namespace halfdrop

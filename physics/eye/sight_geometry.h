#pragma once
// Eye, tube and liquid as sight lines meet them. The one geometry by which readings are computed and the
// eye's picture is drawn.

#include "physics/eye/meniscus.h"

namespace halfdrop {

/// Refractive index of borosilicate glass 3.3 (ISO 3585) for sodium light; makers' data sheets give 1.473 to
/// 1.474.
inline constexpr double kGlassIndex = 1.473;

struct SightGeometry {
  double eye_distance_mm = 300.0;  ///< eye to the front of the scale, which is printed on the tube's outside
  double outer_mm = 6.4;           ///< radius of the tube's outside
  double bore_mm = 5.38;           ///< ... and of its inside
  double rim_mm = 44.0;            ///< top of the tube above the zero mark
  double mm_per_cm3 = 11.0;        ///< pitch of the scale
  double glass_index = kGlassIndex;
  double liquid_index = 1.3334;
  Meniscus meniscus;  ///< at rest, in a wetted tube

  friend bool operator==(const SightGeometry&, const SightGeometry&) = default;
};

/// What the eye looks at, and from where. Heights are above the zero mark.
struct EyeLook {
  double eye_mm = 0.0;
  double bottom_mm = 0.0;  ///< lowest point of the meniscus
  double climb = 1.0;      ///< share of its rise that finds wall to climb: 0 brim-full .. 1

  friend bool operator==(const EyeLook&, const EyeLook&) = default;
};

/// The liquid stands at a reading of the scale; above the rim it lies flat at the rim.
[[nodiscard]] EyeLook look_at(const SightGeometry& sight, double eye_mm, double reading_cm3);
/// No liquid in the tube.
[[nodiscard]] EyeLook look_at_empty(double eye_mm);

/// x to the right of the tube's axis, y above the zero mark, z behind the axis; the eye is at x = 0, in
/// front. mm, or a direction.
struct Vector {
  double x = 0.0, y = 0.0, z = 0.0;
};

}  // namespace halfdrop

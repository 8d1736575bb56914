#pragma once
// The way of a sight line through glass, liquid and air: exact rays (Snell), no paraxial shortcut. The tube
// is an endless round one; the liquid's surface mirrors all light where Snell lets none through. Left out:
// light mirrored in part (Fresnel), dispersion, the liquid's own solutes (0.1 mol/dm3 adds about 0.001 to the
// index) and the tube's ends.

#include <optional>

#include "physics/eye/sight_geometry.h"

namespace halfdrop {

/// A straight piece of a sight line; `towards` of length 1.
struct SightRay {
  Vector from, towards;
};

/// From the eye through a point of the picture: the plane that touches the scale's front.
[[nodiscard]] SightRay sight_ray(const SightGeometry& sight, double eye_mm, double x_mm, double y_mm);

/// First piece of it inside the bore, were that filled with a medium; none where it misses the bore.
[[nodiscard]] std::optional<SightRay> ray_in_bore(const SightGeometry& sight, const SightRay& from_eye,
                                                  double medium_index);

/// How far a piece that begins at the wall of the bore stays under the liquid's surface, at the least, mm;
/// negative where it breaks through.
[[nodiscard]] double least_depth_mm(const SightGeometry& sight, const EyeLook& look, const SightRay& in_bore);

/// What a sight line meets first behind the front wall.
enum class SightMeets { beside, wall_only, air, liquid, surface };

/// How a sight line leaves the tube.
struct SightEnd {
  SightMeets meets = SightMeets::beside;
  SightRay out;         ///< from the tube's outside (from the eye when beside)
  bool turned = false;  ///< met the surface, or was mirrored by a wall, on its way
  bool lost = false;    ///< caught between the walls, or still there after many turns
};
[[nodiscard]] SightEnd follow(const SightGeometry& sight, const EyeLook& look, double x_mm, double y_mm);

}  // namespace halfdrop

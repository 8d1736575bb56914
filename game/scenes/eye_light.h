#pragma once
// The light that a sight line brings: from the card behind the tube, or from the room.

#include "game/scenes/eye_scene.h"
#include "game/scenes/paint.h"

namespace halfdrop {

/// Behind the tube, white above its edge and dark below.
inline constexpr double kCardBehind_mm = 4.0;  ///< the tube's back
inline constexpr double kCardWhite_mm = 40.0, kCardDark_mm = 40.0, kCardHalfWidth_mm = 32.0;

/// Of a straight ray outside the tube.
[[nodiscard]] sf::Color light_along(const EyeScene& scene, const SightRay& ray);
/// Of a sight line through the tube, glass and liquid included.
[[nodiscard]] sf::Color light_of(const EyeScene& scene, const SightEnd& end);
/// Print on the scale has to be light before this light: white enamel on a dark card, dark print otherwise.
[[nodiscard]] bool is_dark(sf::Color light);

}  // namespace halfdrop

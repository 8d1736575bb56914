#include "game/scenes/eye_light.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {

namespace {

constexpr double kSoft_mm = 0.35;  ///< the eye is set for the scale: the card behind is a little out of focus
const sf::Color kWhiteCard = rgb(0xfdfcf8), kDarkCard = rgb(0x27343a);

sf::Color along_stops(double at, std::initializer_list<std::pair<double, sf::Color>> stops) {
  const auto* before = stops.begin();
  for (const auto& stop : stops) {
    if (at < stop.first) {
      const double span = stop.first - before->first;
      return span > 0.0 ? mixed(before->second, stop.second, (at - before->first) / span) : stop.second;
    }
    before = &stop;
  }
  return before->second;
}

/// The room by where one looks: a wall in the window's light above, the bench below, dimmer behind one's
/// back.
sf::Color room(const Vector& towards) {
  const sf::Color ahead = along_stops(towards.y, {{-1.00, rgb(0x4a4238)},
                                                  {-0.80, rgb(0x63594c)},
                                                  {-0.55, rgb(0x8f8370)},
                                                  {-0.30, rgb(0xc4b79f)},
                                                  {-0.10, rgb(0xe0d6c3)},
                                                  {0.00, rgb(0xece4d5)},
                                                  {0.12, rgb(0xf5efe4)},
                                                  {0.35, rgb(0xfcf8f0)},
                                                  {1.00, rgb(0xe6e0d2)}});
  const double behind = std::clamp(0.5 - 1.2 * towards.z, 0.0, 1.0);
  return mixed(ahead, rgb(0x8c877b), 0.75 * behind);
}

/// How much of 1 is there, within a soft edge round nought.
double past(double by_mm) {
  const double share = std::clamp(0.5 + by_mm / kSoft_mm, 0.0, 1.0);
  return share * share * (3.0 - 2.0 * share);
}

}  // namespace

sf::Color light_along(const EyeScene& scene, const SightRay& ray) {
  const double card_z_mm = scene.outer_mm() + kCardBehind_mm;
  if (ray.towards.z < 0.01 || ray.from.z > card_z_mm) return room(ray.towards);
  const double by = (card_z_mm - ray.from.z) / ray.towards.z;
  const double x_mm = ray.from.x + by * ray.towards.x;
  const double over_mm = ray.from.y + by * ray.towards.y - scene.card_mm();
  const double on =
      past(kCardHalfWidth_mm - std::abs(x_mm)) * past(kCardWhite_mm - over_mm) * past(kCardDark_mm + over_mm);
  if (on <= 0.0) return room(ray.towards);
  const sf::Color card = mixed(kDarkCard, kWhiteCard, past(over_mm));
  return on >= 1.0 ? card : mixed(room(ray.towards), card, on);
}

sf::Color light_of(const EyeScene& scene, const SightEnd& end) {
  if (end.meets == SightMeets::beside) return light_along(scene, end.out);
  // Caught between the walls, it runs on down the tube, where it is dim.
  const sf::Color behind = end.lost ? rgb(0x2b373b) : light_along(scene, end.out);
  const bool wet = end.meets == SightMeets::liquid || end.meets == SightMeets::surface;
  if (end.meets == SightMeets::air && end.turned) return mixed(behind, rgb(0x7fa7b4), 0.24);  // into the bowl
  return mixed(behind, wet ? rgb(0x8fb9c6) : rgb(0xb7c9cc), wet ? 0.10 : 0.07);
}

bool is_dark(sf::Color light) { return 2 * light.r + 5 * light.g + light.b < 8 * 118; }

}  // namespace halfdrop

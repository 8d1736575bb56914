#include "physics/eye/sight_path.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/eye/sight_line.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

constexpr double kFar_mm = 1e6;  // an eye so far that its sight lines are parallel

SightGeometry burette() {
  SightGeometry sight;
  sight.meniscus = Meniscus(meniscus_outline({sight.bore_mm, 2.726}));
  return sight;
}

/// Meniscus at the zero mark.
EyeLook from_height(double eye_mm) { return {eye_mm, 0.0, 1.0}; }

/// Half the width over which sight lines 50 mm under the meniscus meet the liquid.
double half_width_of_liquid_mm(const SightGeometry& sight) {
  double inside = 0.0, outside = 1.1 * sight.outer_mm;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (inside + outside);
    const SightEnd end = follow(sight, from_height(-50.0), middle, -50.0);
    (end.meets == SightMeets::liquid ? inside : outside) = middle;
  }
  return inside;
}

/// Height at which a level sight line left of the tube's middle leaves it at the back, and how far to the
/// side.
Vector back_of(const SightGeometry& sight, const EyeLook& look, double x_mm, double y_mm) {
  return follow(sight, look, x_mm, y_mm).out.from;
}

}  // namespace

// Source: seen from the side a liquid column appears of radius min(n r_in, r_out) (impact parameter times
// index is kept through concentric rounds: any textbook of optics).
TEST_CASE("the liquid fills the burette's width, and in a thick-walled tube 1.333 times its bore") {
  SightGeometry sight = burette();
  sight.eye_distance_mm = kFar_mm;
  CHECK_NEAR(half_width_of_liquid_mm(sight), 6.4, 0.001);
  sight.outer_mm = 12.0;
  CHECK_NEAR(half_width_of_liquid_mm(sight), sight.liquid_index * 5.38, 0.001);
  sight.liquid_index = 1.0;
  CHECK_NEAR(half_width_of_liquid_mm(sight), 5.38, 0.001);
}

// Source: the back of a round of index n, seen through its front, looks n / (2 - n) times as wide (spherical
// refracting surface, paraxial: any textbook of optics).
TEST_CASE("the back of the filled tube looks twice as wide, that of the empty one its own size") {
  SightGeometry sight = burette();
  sight.eye_distance_mm = kFar_mm;
  sight.glass_index = sight.liquid_index;
  CHECK_NEAR(back_of(sight, from_height(-50.0), 0.1, -50.0).x, 0.1 * (2.0 / 1.3334 - 1.0), 1e-4);
  sight.glass_index = sight.liquid_index = 1.0;
  CHECK_NEAR(back_of(sight, look_at_empty(-50.0), 0.1, -50.0).x, 0.1, 1e-4);
}

// Source: Snell keeps the sine of the angle to a round wall, and the way out is the way in reversed
// (symmetry).
TEST_CASE("a level sight line leaves the filled tube as steeply as it came in, and level") {
  const SightGeometry sight = burette();
  for (const double x : {-4.0, -1.0, 0.0, 2.5, 5.5}) {
    const SightEnd end = follow(sight, from_height(-50.0), x, -50.0);
    REQUIRE(end.meets == SightMeets::liquid);
    CHECK(!end.turned);
    CHECK_NEAR(end.out.towards.y, 0.0, 1e-12);
    const SightRay in = sight_ray(sight, -50.0, x, -50.0);
    const auto off_axis = [](const SightRay& ray) {
      return ray.from.x * ray.towards.z - ray.from.z * ray.towards.x;
    };
    CHECK_NEAR(off_axis(end.out), off_axis(in), 1e-9);
  }
}

// Source: plane slabs, as deep as their thickness over the index (small angles): the back of the scale is
// 2 x 1.02 mm of glass and 10.76 mm of liquid or air behind its front.
TEST_CASE("front and back of a ring coincide at eye level only; off it liquid brings them nearer than air") {
  const SightGeometry sight = burette();
  const auto back_mm = [&](const EyeLook& look, double above_mm) {
    const EyeLook off{look.eye_mm + above_mm, look.bottom_mm, 1.0};
    const double eye_mm = off.eye_mm;
    return back_of(sight, off, 0.0, eye_mm - above_mm).y - (eye_mm - above_mm);
  };
  const EyeLook wet = from_height(-50.0), dry = look_at_empty(-50.0);
  CHECK_NEAR(back_mm(wet, 0.0), 0.0, 1e-12);
  CHECK_NEAR(back_mm(dry, 0.0), 0.0, 1e-12);
  CHECK_NEAR(back_mm(wet, 15.0), -15.0 / 300.0 * (2.04 / 1.473 + 10.76 / 1.3334), 0.002);
  CHECK_NEAR(back_mm(dry, 15.0), -15.0 / 300.0 * (2.04 / 1.473 + 10.76), 0.002);
  CHECK_NEAR(back_mm(wet, -15.0), -back_mm(wet, 15.0), 1e-9);
}

TEST_CASE("sight lines under the lower edge pass through the liquid, those over it meet its surface") {
  const SightGeometry sight = burette();
  for (const double eye : {-150.0, -40.0, 0.0, 40.0, 150.0}) {
    for (const double x : {0.0, 2.0, -4.0, 5.8}) {
      CAPTURE(eye);
      CAPTURE(x);
      const EyeLook look = from_height(eye);
      const auto lower = lower_edge_mm(sight, look, x);
      const auto upper = upper_edge_mm(sight, look, x);
      REQUIRE(lower.has_value());
      REQUIRE(upper.has_value());
      CHECK(*upper > *lower);
      CHECK(follow(sight, look, x, *lower - 1e-3).meets == SightMeets::liquid);
      CHECK(follow(sight, look, x, *lower + 1e-3).meets == SightMeets::surface);
      CHECK(follow(sight, look, x, *upper - 1e-3).meets == SightMeets::surface);
      CHECK(follow(sight, look, x, *upper + 1e-3).meets != SightMeets::surface);
    }
  }
}

// Source: a surface of slope a turns a level sight line down by 2 a where it mirrors all (law of reflection).
TEST_CASE("just above its lower edge the surface mirrors what lies below: there the card's dark half shows") {
  const SightGeometry sight = burette();
  const double above_mm = 0.02;
  const SightEnd end = follow(sight, from_height(0.0), 0.0, above_mm);
  CHECK(end.turned);
  // On the parabola z = k r^2 / 2 the slope at height z is the root of 2 k z.
  const double k = 2.0 * sight.meniscus.height_mm(0.3) / 0.09;
  const double down = 2.0 * std::sqrt(2.0 * k * above_mm);
  CHECK_NEAR(end.out.towards.y, -sight.liquid_index * std::sin(down), 0.005);
  CHECK_NEAR(follow(sight, from_height(0.0), 0.0, -above_mm).out.towards.y, 0.0, 1e-4);
}

// Source: the lower edge away from the middle is the bowl at the radius that the sight line passes the axis
// at, its distance from the axis in air over the liquid's index (as above), for a level and distant eye.
TEST_CASE("beside the middle the dark curve's lower edge climbs as the bowl does, stretched 1.333 times") {
  SightGeometry sight = burette();
  sight.eye_distance_mm = kFar_mm;
  for (const double x : {1.0, 3.0, 5.0, 6.2}) {
    const auto lower = lower_edge_mm(sight, from_height(0.0), x);
    REQUIRE(lower.has_value());
    CHECK_NEAR(*lower, sight.meniscus.height_mm(x / sight.liquid_index), 0.002);
  }
}

TEST_CASE("a sight line beside the tube goes straight on") {
  const SightEnd end = follow(burette(), from_height(10.0), 7.0, 2.0);
  CHECK(end.meets == SightMeets::beside);
  CHECK(end.out.from.y == 10.0);
}

TEST_CASE("the dark curve is the same to the left and to the right") {
  const SightGeometry sight = burette();
  for (const double x : {0.7, 3.3, 6.0}) {
    const EyeLook look = from_height(33.0);
    CHECK_NEAR(*lower_edge_mm(sight, look, x), *lower_edge_mm(sight, look, -x), 1e-9);
    CHECK_NEAR(follow(sight, look, x, 1.0).out.towards.x, -follow(sight, look, -x, 1.0).out.towards.x, 1e-9);
  }
}

}  // namespace halfdrop

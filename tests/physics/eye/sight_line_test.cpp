#include "physics/eye/sight_line.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "tests/support/near.h"

namespace halfdrop {
namespace {

/// The 50 cm3 burette of the bench, water at 20 C.
SightGeometry burette() {
  SightGeometry sight;
  sight.meniscus = Meniscus(meniscus_outline({sight.bore_mm, 2.726}));
  return sight;
}

/// No refraction, and a meniscus that comes to a point on the axis: the textbook's triangle.
SightGeometry textbook() {
  SightGeometry sight;
  sight.glass_index = sight.liquid_index = 1.0;
  sight.meniscus = Meniscus({{0.0, 0.0}, {sight.bore_mm, 500.0}});
  return sight;
}

double error_cm3(const SightGeometry& sight, double eye_above_meniscus_mm, double mark_cm3 = 20.0) {
  const double eye_mm = eye_above_meniscus_mm - sight.mm_per_cm3 * mark_cm3;
  return apparent_reading_cm3(sight, eye_mm, mark_cm3) - mark_cm3;
}

/// Tangent of the angle that a sight line of this tangent in air has in a medium: Snell at an upright plane.
double slope_in(double index, double slope) {
  const double sine = slope / std::sqrt(1.0 + slope * slope) / index;
  return sine / std::sqrt(1.0 - sine * sine);
}

}  // namespace

// Source: error = b h / (D + b) with b = 6.4 mm and D = 300 mm: 0.019, 0.038, 0.095 cm3 for 10, 20 and 50 mm
// (derived, straight sight lines).
TEST_CASE("without refraction an eye 10, 20 or 50 mm off level misreads by 0.019, 0.038 or 0.095 cm3") {
  CHECK_NEAR(error_cm3(textbook(), -10.0), 0.019, 0.0005);
  CHECK_NEAR(error_cm3(textbook(), -20.0), 0.038, 0.0005);
  CHECK_NEAR(error_cm3(textbook(), -50.0), 0.095, 0.0005);
  CHECK_NEAR(error_cm3(textbook(), 50.0), -0.095, 0.0005);
}

// Source: for small angles a depth looks as deep as it is over its index (any textbook of optics): 1.02 mm of
// glass and 5.38 of liquid in place of 6.4 mm; about the table's figures over 1.333.
TEST_CASE("liquid and glass in front of the meniscus make the parallax smaller by their indices") {
  SightGeometry sight = burette();
  sight.meniscus = textbook().meniscus;
  const double deep_mm = 1.02 / sight.glass_index + 5.38 / sight.liquid_index;
  for (const double off_mm : {-20.0, -10.0, 10.0, 20.0})
    CHECK_NEAR(error_cm3(sight, off_mm), -off_mm * deep_mm / (300.0 + deep_mm) / 11.0, 1e-4);
  CHECK_NEAR(error_cm3(sight, -10.0), 0.019 / 1.333, 0.0005);
  CHECK_NEAR(error_cm3(sight, -20.0), 0.038 / 1.333, 0.0005);
}

// Source: Snell at two upright planes, followed by hand from the axis to the eye.
TEST_CASE("a steep sight line bends as Snell says at every wall") {
  SightGeometry sight = burette();
  sight.meniscus = textbook().meniscus;
  for (const double slope : {0.1, 0.5, 1.0}) {
    const double in_tube_mm =
        1.02 * slope_in(sight.glass_index, slope) + 5.38 * slope_in(sight.liquid_index, slope);
    const double eye_mm = in_tube_mm + 300.0 * slope;
    CHECK_NEAR(error_cm3(sight, eye_mm), -in_tube_mm / 11.0, 1e-6);
    CHECK_NEAR(error_cm3(sight, -eye_mm), in_tube_mm / 11.0, 1e-6);
  }
}

// Source: near its lowest point the surface is a parabola of the axis' curvature k, and the tangent of slope
// s to it passes the axis s^2 / (2 k) below that point (geometry).
TEST_CASE("off level one reads the tangent to the bowl, which passes below its lowest point") {
  const SightGeometry sight = burette();
  SightGeometry point = sight;
  point.meniscus = textbook().meniscus;
  const double curvature = 2.0 * sight.meniscus.height_mm(0.3) / (0.3 * 0.3);
  for (const double off_mm : {-20.0, 20.0}) {
    const double slope = slope_in(sight.liquid_index, off_mm / 300.0);
    const double lower_mm = slope * slope / (2.0 * curvature);
    CHECK_NEAR(error_cm3(sight, off_mm) - error_cm3(point, off_mm), lower_mm / 11.0, 2e-4);
    CHECK(lower_mm / 11.0 > 5e-4);
  }
}

// Source: an online glossary of chemistry and notes on UNE-EN ISO 385, by geometry.
TEST_CASE("an eye above the meniscus reads low, one below reads high, and the more so the further off") {
  const SightGeometry sight = burette();
  double before = 0.0;
  for (double off_mm = 5.0; off_mm <= 150.0; off_mm += 5.0) {
    CAPTURE(off_mm);
    CHECK(error_cm3(sight, off_mm) < before);
    CHECK(error_cm3(sight, -off_mm) > -error_cm3(sight, off_mm));
    before = error_cm3(sight, off_mm);
  }
}

// Source: parallax with refraction, 10, 20 and 30 degrees down on a bore of 11 mm: 0.08, 0.16 and 0.25 cm3
// (derived for the lowest point; the tangent lies lower, more so the steeper).
TEST_CASE("looking 10, 20 or 30 degrees up or down misreads about 0.08, 0.16 and 0.25 cm3") {
  const SightGeometry sight = burette();
  const double known[][2] = {{0.1763, 0.08}, {0.3640, 0.16}, {0.5774, 0.25}};
  for (const auto& [slope, error] : known) {
    const double off_mm = slope * 305.0;
    CHECK_NEAR(0.5 * (error_cm3(sight, -off_mm) - error_cm3(sight, off_mm)), error, 0.02);
  }
}

TEST_CASE("a level eye reads what is there, at every mark and distance") {
  SightGeometry sight = burette();
  for (double mark = 0.0; mark <= 50.0; mark += 2.5) {
    for (const double distance_mm : {150.0, 300.0, 600.0}) {
      sight.eye_distance_mm = distance_mm;
      CHECK_NEAR(error_cm3(sight, 0.0, mark), 0.0, 1e-9);
    }
  }
}

TEST_CASE("the further the eye, the smaller its parallax") {
  SightGeometry near = burette(), far = burette();
  near.eye_distance_mm = 150.0;
  far.eye_distance_mm = 600.0;
  CHECK(error_cm3(far, -20.0) < error_cm3(burette(), -20.0));
  CHECK(error_cm3(burette(), -20.0) < error_cm3(near, -20.0));
}

// Source: an eye kept at the 12.5 mark, 30 to 40 cm away, that reads 0 and then 25 lowers the titre by 0.3 to
// 0.4 cm3 with refraction (derived).
TEST_CASE("an eye that stays halfway lowers the titre at both readings") {
  SightGeometry sight = burette();
  const double eye_mm = -12.5 * sight.mm_per_cm3;
  for (const double distance_mm : {300.0, 400.0}) {
    sight.eye_distance_mm = distance_mm;
    const double first = apparent_reading_cm3(sight, eye_mm, 0.0);
    const double last = apparent_reading_cm3(sight, eye_mm, 25.0);
    CHECK(first > 0.0);
    CHECK(last < 25.0);
    CHECK_NEAR(25.0 - (last - first), 0.35, 0.07);
  }
}

// Source: the contact line stands 3.41 mm above the lowest point (Young-Laplace), 0.31 cm3, and shows through
// 1.02 mm of glass only.
TEST_CASE("the upper edge reads 0.31 cm3 less than a level eye's lower edge") {
  const SightGeometry sight = burette();
  CHECK_NEAR(apparent_edge_cm3(sight, -220.0, 20.0), 19.69, 0.003);
  CHECK_NEAR(apparent_edge_cm3(sight, -220.0 + 3.41 + 30.0, 20.0),
             19.69 - 30.0 * 1.02 / sight.glass_index / 300.0 / 11.0, 0.001);
}

// Source: ISO 385 prints the scale on the outside; brim-full there is no wall to climb (geometry).
TEST_CASE("a brim-full burette has a flat surface at its rim") {
  const SightGeometry sight = burette();
  const EyeLook brim = look_at(sight, 60.0, -4.3);
  CHECK_NEAR(brim.bottom_mm, sight.rim_mm, 1e-9);
  CHECK_NEAR(brim.climb, 0.0, 1e-12);
  CHECK_NEAR(look_at(sight, 60.0, 20.0).climb, 1.0, 1e-12);
}

// Source: similar triangles: what stands behind the picture's plane is drawn nearer to the eye's height.
TEST_CASE("a point in plain air is seen where the straight line to the eye crosses the scale's front") {
  const SightGeometry sight = burette();
  const Vector seen = seen_in_air(sight, 10.0, {6.0, -50.0, 100.0});
  const double nearer = 300.0 / (300.0 + sight.outer_mm + 100.0);
  CHECK_NEAR(seen.x, 6.0 * nearer, 1e-9);
  CHECK_NEAR(seen.y, 10.0 - 60.0 * nearer, 1e-9);
}

}  // namespace halfdrop

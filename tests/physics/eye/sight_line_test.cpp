#include "physics/eye/sight_line.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

namespace halfdrop {
namespace {

double error_cm3(double eye_above_meniscus_mm, double mark_cm3 = 20.0, double distance_mm = 300.0) {
  SightGeometry sight;
  sight.eye_distance_mm = distance_mm;
  const double eye_mm = eye_above_meniscus_mm - sight.mm_per_cm3 * mark_cm3;
  return apparent_reading_cm3(sight, eye_mm, mark_cm3) - mark_cm3;
}

}  // namespace

// Source: error = b h / (D + b) with b = 6.4 mm and D = 300 mm: 0.019, 0.038, 0.095 cm3 for 10, 20 and 50 mm
// (derived).
TEST_CASE("an eye 10, 20 or 50 mm off level misreads by 0.019, 0.038 or 0.095 cm3") {
  CHECK_NEAR(error_cm3(-10.0), 0.019, 0.0005);
  CHECK_NEAR(error_cm3(-20.0), 0.038, 0.0005);
  CHECK_NEAR(error_cm3(-50.0), 0.095, 0.0005);
}

// Source: an online glossary of chemistry and notes on UNE-EN ISO 385, by geometry.
TEST_CASE("an eye above the meniscus reads low, one below reads high") {
  CHECK(error_cm3(30.0) < 0.0);
  CHECK(error_cm3(-30.0) > 0.0);
  CHECK_NEAR(error_cm3(30.0), -error_cm3(-30.0), 1e-12);
}

TEST_CASE("a level eye reads what is there, at every mark and distance") {
  for (double mark = 0.0; mark <= 50.0; mark += 2.5) {
    for (const double distance_mm : {150.0, 300.0, 600.0})
      CHECK_NEAR(error_cm3(0.0, mark, distance_mm), 0.0, 1e-12);
  }
}

TEST_CASE("the further the eye, the smaller its parallax") {
  CHECK(error_cm3(-20.0, 20.0, 600.0) < error_cm3(-20.0, 20.0, 300.0));
  CHECK(error_cm3(-20.0, 20.0, 300.0) < error_cm3(-20.0, 20.0, 150.0));
}

// Source: an eye kept at the 12.5 mark, 30 to 40 cm away, that reads 0 and then 25 lowers the titre by 0.3 to
// 0.4 cm3 with refraction (derived); straight sight lines give more.
TEST_CASE("an eye that stays halfway lowers the titre at both readings") {
  SightGeometry sight;
  const double eye_mm = -12.5 * sight.mm_per_cm3;
  const double first = apparent_reading_cm3(sight, eye_mm, 0.0);
  const double last = apparent_reading_cm3(sight, eye_mm, 25.0);
  CHECK(first > 0.0);
  CHECK(last < 25.0);
  CHECK_NEAR(last - first, 25.0 - 0.52, 0.01);
}

}  // namespace halfdrop

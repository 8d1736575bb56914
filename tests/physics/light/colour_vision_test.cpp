#include "physics/light/colour_vision.h"

#include <doctest/doctest.h>

#include "physics/random.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

Xyz colour_of(double r, double g, double b) { return xyz_of({r, g, b}); }

double difference(Vision vision, const Xyz& one, const Xyz& other) {
  return ciede2000(to_lab(seen_by(vision, one)), to_lab(seen_by(vision, other)));
}

}  // namespace

TEST_CASE("linear screen colours lead to CIE XYZ and back") {
  Random random{4};
  for (int i = 0; i < 1000; ++i) {
    const Rgb rgb{random.uniform(0.0, 1.0), random.uniform(0.0, 1.0), random.uniform(0.0, 1.0)};
    const Rgb back = unclipped_rgb(xyz_of(rgb));
    REQUIRE_NEAR(back.r, rgb.r, 1e-12);
    REQUIRE_NEAR(back.g, rgb.g, 1e-12);
    REQUIRE_NEAR(back.b, rgb.b, 1e-12);
  }
}

// Source: Machado, Oliveira and Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291: first column of
// each matrix of severity 1.0, which is what pure linear red turns into (copies in public programs agree).
TEST_CASE("red seen by each deficient eye is the published mixture") {
  const struct {
    Vision vision;
    Rgb red;
  } published[] = {{Vision::protan, {0.152286, 0.114503, -0.003882}},
                   {Vision::deutan, {0.367322, 0.280085, -0.011820}},
                   {Vision::tritan, {1.255528, -0.078411, 0.004733}}};
  for (const auto& one : published) {
    CAPTURE(name_of(one.vision));
    const Rgb seen = unclipped_rgb(seen_by(one.vision, colour_of(1.0, 0.0, 0.0)));
    CHECK_NEAR(seen.r, one.red.r, 1e-9);
    CHECK_NEAR(seen.g, one.red.g, 1e-9);
    CHECK_NEAR(seen.b, one.red.b, 1e-9);
  }
}

TEST_CASE("greys look the same to every eye") {
  for (const Vision vision : kVisions) {
    const Rgb seen = unclipped_rgb(seen_by(vision, colour_of(0.4, 0.4, 0.4)));
    CHECK_NEAR(seen.r, 0.4, 2e-6);
    CHECK_NEAR(seen.g, 0.4, 2e-6);
    CHECK_NEAR(seen.b, 0.4, 2e-6);
  }
}

// Common knowledge of the deficiencies: red and green are confused without long- or middle-wave cones, blue
// and green without short-wave ones.
TEST_CASE("each eye confuses the colours that its missing cones tell apart") {
  const Xyz red = colour_of(0.5, 0.2, 0.05), green = colour_of(0.25, 0.32, 0.05);
  const double normal = difference(Vision::normal, red, green);
  CHECK(difference(Vision::protan, red, green) < 0.5 * normal);
  CHECK(difference(Vision::deutan, red, green) < 0.5 * normal);
  CHECK(difference(Vision::tritan, red, green) > 0.7 * normal);
}

}  // namespace halfdrop

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

// Source: Machado, Oliveira and Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291: the matrices of
// severity 1.0, column by column: what pure linear red, green and blue turn into (copies in nine public
// programs agree to the last digit).
TEST_CASE("red, green and blue seen by each deficient eye are the published mixtures") {
  const struct {
    Vision vision;
    Rgb red, green, blue;
  } published[] = {
      {Vision::protan,
       {0.152286, 0.114503, -0.003882},
       {1.052583, 0.786281, -0.048116},
       {-0.204868, 0.099216, 1.051998}},
      {Vision::deutan,
       {0.367322, 0.280085, -0.011820},
       {0.860646, 0.672501, 0.042940},
       {-0.227968, 0.047413, 0.968881}},
      {Vision::tritan,
       {1.255528, -0.078411, 0.004733},
       {-0.076749, 0.930809, 0.691367},
       {-0.178779, 0.147602, 0.303900}},
  };
  for (const auto& one : published) {
    CAPTURE(name_of(one.vision));
    const auto check = [&](const Xyz& shown, const Rgb& expected) {
      const Rgb seen = unclipped_rgb(seen_by(one.vision, shown));
      CHECK_NEAR(seen.r, expected.r, 1e-9);
      CHECK_NEAR(seen.g, expected.g, 1e-9);
      CHECK_NEAR(seen.b, expected.b, 1e-9);
    };
    check(colour_of(1.0, 0.0, 0.0), one.red);
    check(colour_of(0.0, 1.0, 0.0), one.green);
    check(colour_of(0.0, 0.0, 1.0), one.blue);
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

#include "physics/burette/meniscus_shape.h"

#include <doctest/doctest.h>

#include <cmath>

#include "tests/support/near.h"

namespace halfdrop {

// Source: Young-Laplace worked out independently for tubes of radius 0.5, 1.0, 1.973 and 3 capillary lengths:
// the film's factor 1.3376 over the wall's curvature is 0.578, 0.860, 0.994 and 1.004.
TEST_CASE("the meniscus meets the wall as sharply as worked out for narrow and wide tubes") {
  const double known[][2] = {{0.5, 0.578}, {1.0, 0.860}, {1.973, 0.994}, {3.0, 1.004}};
  for (const auto& [radius, factor] : known) {
    CAPTURE(radius);
    CHECK_NEAR(1.3376 / wall_curvature({radius, 1.0}), factor, 0.0006);
  }
}

// Source: as above, for the bore of a 50 cm3 burette with 550 mm of scale: 3.41 mm.
TEST_CASE("in a burette the meniscus' edge stands 3.41 mm above its lowest point") {
  CHECK_NEAR(meniscus_outline({5.38, 2.726}).back().height_mm, 3.41, 0.005);
}

// Source: a plane wall's meniscus rises sqrt(2) capillary lengths and curves with sqrt(2) (Landau and
// Lifshitz, from memory); a narrow tube's is a hemisphere.
TEST_CASE("wide tubes have the meniscus of a plane wall, narrow ones a hemisphere") {
  CHECK_NEAR(meniscus_outline({12.0, 1.0}).back().height_mm, std::sqrt(2.0), 0.06);
  CHECK_NEAR(wall_curvature({12.0, 1.0}), std::sqrt(2.0), 0.06);
  const auto narrow = meniscus_outline({0.1, 1.0});
  CHECK_NEAR(narrow.back().height_mm, 0.1, 0.001);
  for (const MeniscusPoint& at : narrow) {
    const double below_centre = 0.1 - at.height_mm;
    CHECK_NEAR(std::sqrt(at.radius_mm * at.radius_mm + below_centre * below_centre), 0.1, 0.001);
  }
}

TEST_CASE("the outline ends upright on the wall") {
  for (const double radius_mm : {2.0, 5.38, 8.0}) {
    const auto outline = meniscus_outline({radius_mm, 2.726});
    CHECK_NEAR(outline.back().radius_mm, radius_mm, 1e-4);
    CHECK(outline.front().height_mm == 0.0);
  }
}

}  // namespace halfdrop

#include "physics/eye/meniscus.h"

#include <doctest/doctest.h>

#include <cmath>

#include "tests/support/near.h"

namespace halfdrop {

TEST_CASE("between its points the surface runs as its outline does") {
  const auto outline = meniscus_outline({5.38, 2.726});
  const Meniscus meniscus(outline);
  for (const MeniscusPoint& at : outline) CHECK_NEAR(meniscus.height_mm(at.radius_mm), at.height_mm, 2e-3);
  CHECK(meniscus.height_mm(0.0) == 0.0);
  CHECK_NEAR(meniscus.rise_mm(), outline.back().height_mm, 1e-9);
}

// Source: a narrow tube's meniscus is a hemisphere (Landau and Lifshitz, from memory), whose slope has the
// sine r / R.
TEST_CASE("the surface's slope is a hemisphere's in a narrow tube") {
  const Meniscus meniscus(meniscus_outline({0.1, 1.0}));
  for (const double share : {0.0, 0.2, 0.5, 0.8, 0.99}) CHECK_NEAR(meniscus.sine(0.1 * share), share, 0.01);
}

}  // namespace halfdrop

#include "physics/burette/column.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/random.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

TEST_CASE("the meniscus stands where its volume says, and the volume is what its mark says, to 1e-9 cm3") {
  Random random{11};
  double worst_cm3 = 0.0;
  for (int glass = 0; glass < 200; ++glass) {
    BuretteSpec burette;
    burette.scale_linear_cm3 = random.uniform(-0.1, 0.1);
    burette.scale_bow_cm3 = random.uniform(-0.1, 0.1);
    for (double mark = -4.0; mark <= 51.0; mark += 0.37) {
      const double back = scale_reading_cm3(burette, column_volume_cm3(burette, mark));
      worst_cm3 = std::fmax(worst_cm3, std::fabs(back - mark));
    }
  }
  CHECK_NEAR(worst_cm3, 0.0, 1e-9);
}

TEST_CASE("a scale without error is its own truth") {
  const BuretteSpec burette;
  for (double mark = -3.0; mark <= 50.0; mark += 0.5) CHECK(true_volume_cm3(burette, mark) == mark);
}

// By hand from the formula of BuretteSpec: linear R/50 + 4 bow (R/50)(1 - R/50). That levels draw both within
// a class is tested where they are drawn (bench of a level).
TEST_CASE(
    "the linear error is whole at the last mark and half in the middle, the bow whole in the middle alone") {
  BuretteSpec burette;
  burette.scale_linear_cm3 = 0.04;
  burette.scale_bow_cm3 = -0.01;
  CHECK_NEAR(true_volume_cm3(burette, 0.0), 0.0, 0.0);
  CHECK_NEAR(true_volume_cm3(burette, 10.0), 10.0 + 0.008 - 0.0064, 1e-12);
  CHECK_NEAR(true_volume_cm3(burette, 25.0), 25.0 + 0.02 - 0.01, 1e-12);
  CHECK_NEAR(true_volume_cm3(burette, 50.0), 50.04, 1e-12);
}

TEST_CASE("the head falls steadily as the column falls, without a jump at the last mark") {
  const BuretteSpec burette;
  double before = head_mm(burette, column_capacity_cm3(burette));
  for (double column = column_capacity_cm3(burette) - 0.01; column > 0.0; column -= 0.01) {
    const double now = head_mm(burette, column);
    CHECK(now < before);
    CHECK(before - now < 0.3);
    before = now;
  }
  CHECK_NEAR(before, burette.jet_length_mm, 0.3);
  CHECK_NEAR(head_mm(burette, column_volume_cm3(burette, 0.0)), 90.0 + 60.0 + 550.0, 1e-6);
}

// Source: 550 mm of scale for 50 cm3 is 11.0 mm a cm3 (derived).
TEST_CASE("one cm3 on the scale is 11 mm of tube") {
  const BuretteSpec burette;
  const double higher = head_mm(burette, column_volume_cm3(burette, 20.0));
  const double lower = head_mm(burette, column_volume_cm3(burette, 21.0));
  CHECK_NEAR(higher - lower, 11.0, 1e-6);
}

TEST_CASE("beyond the scale its error stays as it is at the nearer end") {
  BuretteSpec burette;
  burette.scale_linear_cm3 = 0.04;
  burette.scale_bow_cm3 = -0.01;
  CHECK_NEAR(true_volume_cm3(burette, -3.0), -3.0, 1e-12);
  CHECK_NEAR(true_volume_cm3(burette, 51.5), 51.54, 1e-12);
}

}  // namespace halfdrop

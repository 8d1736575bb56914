#include "physics/flask/engulfment.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

using namespace halfdrop;

// Baldyga and Bourne: E = 0.058 sqrt(epsilon / nu). 0.06 W/kg in water is 245 per second of strain: E = 14
// per second.
TEST_CASE("engulfment follows the root of the power dissipated") {
  CHECK_NEAR(engulfment_per_s(0.06 / 1e-6), 14.2, 0.05);
}

TEST_CASE("titrant goes from stage to stage and none is lost") {
  std::vector<float> strain2(4, 25.0F);
  CellField fresh(4, 1000001.0), meeting(4, 0.0), mixed(4, 3.0);
  const Quanta all = total(fresh) + total(meeting) + total(mixed);
  double most_meeting = 0.0;
  for (int i = 0; i < 3000; ++i) {
    engulf(strain2, 1.0 / 30.0, fresh, meeting, mixed);
    most_meeting = meeting[0] > most_meeting ? meeting[0] : most_meeting;
    REQUIRE(fresh[0] >= 0.0);
    REQUIRE(meeting[0] >= 0.0);
  }
  CHECK(total(fresh) + total(meeting) + total(mixed) == all);
  CHECK(most_meeting > 0.3e6);  // 1/e of what came, for two stages as quick as each other
  CHECK(most_meeting < 0.38e6);
  CHECK(mixed[0] > 0.99e6);
}

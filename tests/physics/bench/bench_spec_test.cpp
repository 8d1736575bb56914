#include "physics/bench/bench_spec.h"

#include <doctest/doctest.h>

#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

// By hand: 1 cm3 on 11 mm of tube is a bore of 5.38 mm radius; 4 cm3 above the zero mark are 44 mm. Source:
// refractive index of water at 20 C, 589 nm: 1.33335 (IAPWS R9-97).
TEST_CASE("the eye looks at the bench's own tube, through the bench's own water") {
  BenchSpec spec = test::titration_bench();
  CHECK_NEAR(spec.settled.sight.bore_mm, 5.379, 0.001);
  CHECK_NEAR(spec.settled.sight.outer_mm, 6.4, 1e-12);
  CHECK_NEAR(spec.settled.sight.rim_mm, 44.0, 1e-9);
  CHECK_NEAR(spec.settled.sight.mm_per_cm3, 11.0, 1e-12);
  CHECK_NEAR(spec.settled.sight.eye_distance_mm, 300.0, 1e-12);
  CHECK_NEAR(spec.settled.sight.liquid_index, 1.33335, 1e-4);
  spec.burette.outer_half_width_mm = 7.0;
  spec.eye_distance_mm = 250.0;
  settle(spec);
  CHECK_NEAR(spec.settled.sight.outer_mm, 7.0, 1e-12);
  CHECK_NEAR(spec.settled.sight.eye_distance_mm, 250.0, 1e-12);
}

}  // namespace halfdrop

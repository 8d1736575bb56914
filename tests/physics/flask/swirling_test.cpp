#include "physics/flask/swirling.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/units.h"
#include "tests/support/near.h"

using namespace halfdrop;

TEST_CASE("the liquid follows the hand, and turns on for a while when it stops") {
  double spin = 0.0;
  for (int i = 0; i < 90; ++i) spin = spin_after(spin, 1.0, 1.5, 3.3, 1.0 / 30.0);
  CHECK_NEAR(spin, kHardest_rad_s, 0.1);
  const double turning = spin;
  for (int i = 0; i < 30; ++i) spin = spin_after(spin, 0.0, 1.5, 3.3, 1.0 / 30.0);
  CHECK(spin > 0.3 * turning);
  for (int i = 0; i < 3000; ++i) spin = spin_after(spin, 0.0, 1.5, 3.3, 1.0 / 30.0);
  CHECK(spin == 0.0);
}

TEST_CASE("the stirred cup's flow rises in the middle and sinks at the sides") {
  FlowBox box = even_box(32, 16, 6.6, 1.5);
  const std::vector<float> psi = secondary_flow(box, 7.0);
  const auto rises = [&](std::size_t i) { return psi[8 * box.stride() + i] - psi[8 * box.stride() + i + 1]; };
  CHECK(rises(15) > 0.0F);
  CHECK(rises(16) > 0.0F);
  CHECK(rises(1) < 0.0F);
  CHECK(rises(30) < 0.0F);
  CHECK(secondary_flow(box, 0.0).empty());
}

// Ekman: half the layer sqrt(nu / Omega) times the speed drifts inwards; by hand for 7 rad/s at 2.2 cm: 4.0
// cm3/s.
TEST_CASE("as much rises as the layer at the bottom brings in") {
  const double layer_cm = std::sqrt(0.01 / 7.0), speed_cm_s = 7.0 * 2.2;
  const double brought_cm3_s = 2.0 * kPi * 2.2 * 0.5 * layer_cm * speed_cm_s;
  CHECK_NEAR(brought_cm3_s, 4.02, 0.02);
  // Of w0 (1 - 2 r^2/R^2), which rises w0 pi R^2 / 4, the plane sees (2/3) R^2 w0 0.3248 on either side.
  const FlowBox box = even_box(64, 16, 6.6, 1.5);
  const std::vector<float> psi = secondary_flow(box, 7.0);
  const double fastest_cm_s = 4.0 * brought_cm3_s / (kPi * 3.3 * 3.3);
  CHECK_NEAR(psi[8 * box.stride() + 16], 2.0 / 3.0 * 3.3 * 3.3 * fastest_cm_s * 0.32476, 0.01);
}

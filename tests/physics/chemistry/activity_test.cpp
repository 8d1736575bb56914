#include "physics/chemistry/activity.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

using halfdrop::davies_log10_gamma;

// By hand, 25 C, I = 0.1: sqrt = 0.3162278, 0.3162278/1.3162278 - 0.03 = 0.2102533, times 0.5092 = 0.1070610.
TEST_CASE("Davies gives the hand-worked coefficient at an ionic strength of 0.1") {
  CHECK_NEAR(davies_log10_gamma(1, 0.1, 25.0), -0.1070610, 1e-6);
  CHECK_NEAR(davies_log10_gamma(-2, 0.1, 25.0), 4.0 * -0.1070610, 1e-6);
  CHECK(davies_log10_gamma(0, 0.1, 25.0) == 0.0);
}

// Source: Robinson and Stokes, mean ionic activity coefficient of 0.1 mol/kg HCl 0.796, KCl 0.770 (from
// memory): Davies knows no difference between salts and lies between.
TEST_CASE("Davies lies between the measured coefficients of hydrochloric acid and potassium chloride") {
  const double log_gamma = davies_log10_gamma(1, 0.1, 25.0);
  CHECK(log_gamma < -0.0991);  // log10 0.796
  CHECK(log_gamma > -0.1136);  // log10 0.770
}

// Source: Yao and Byrne, Environ. Sci. Technol. 35 (2001): A = 0.5092 + (T - 298.15) 8.5e-4.
TEST_CASE("the Debye-Hueckel slope rises with temperature") {
  CHECK_NEAR(davies_log10_gamma(1, 0.1, 35.0) / davies_log10_gamma(1, 0.1, 25.0), 0.5177 / 0.5092, 1e-9);
}

TEST_CASE("activity coefficients stay put beyond the reach of the equation") {
  CHECK(davies_log10_gamma(1, 2.0, 25.0) == davies_log10_gamma(1, 0.5, 25.0));
  CHECK(davies_log10_gamma(3, 0.0, 25.0) == 0.0);
}

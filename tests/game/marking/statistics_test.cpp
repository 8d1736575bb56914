#include "game/marking/statistics.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "tests/support/near.h"

namespace halfdrop {

namespace {

/// Speed of light in air, 10^6 m/s, a hundred determinations of 1879 (A. A. Michelson).
/// Source: NIST Statistical Reference Datasets, univariate, "Michelso" (values and certified results from
/// memory).
constexpr std::array kMichelson = {
    299.85, 299.74, 299.90, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.00, 299.98, 299.93,
    299.65, 299.76, 299.81, 300.00, 300.00, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.80,
    299.85, 299.88, 299.90, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.80, 299.79, 299.76,
    299.80, 299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91,
    299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84, 299.84, 299.89, 299.81, 299.81, 299.82, 299.80,
    299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86, 299.88, 299.72, 299.84, 299.85,
    299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87,
    299.87, 299.81, 299.74, 299.81, 299.94, 299.95, 299.80, 299.81, 299.87};

}  // namespace

TEST_CASE("mean and standard deviation are those certified for Michelson's hundred determinations") {
  const SampleStatistics sample = statistics_of(kMichelson);
  CHECK(sample.count == 100);
  CHECK_NEAR(sample.mean, 299.852400000000, 1e-12);
  CHECK_NEAR(sample.sd, 0.0790105478190518, 1e-14);
  CHECK_NEAR(sample.mean_error, 0.00790105478190518, 1e-14);
  CHECK_NEAR(sample.sd_error, 0.0790105478190518 / std::sqrt(198.0), 1e-14);
}

TEST_CASE("a standard deviation survives large like figures") {
  // Source: NIST Statistical Reference Datasets, "NumAcc1": 10000001, 10000003, 10000002; certified mean
  // 10000002, standard deviation 1, exactly (from memory).
  const std::array numbers = {10000001.0, 10000003.0, 10000002.0};
  CHECK(statistics_of(numbers).mean == 10000002.0);
  CHECK(statistics_of(numbers).sd == 1.0);
}

TEST_CASE("one value has no spread, and none has no mean") {
  const std::array one = {0.03};
  CHECK(statistics_of(one).mean == 0.03);
  CHECK(statistics_of(one).sd == 0.0);
  CHECK(statistics_of({}).count == 0);
}

TEST_CASE("the sign test is exact") {
  // Source: NAG Library manual, example of the sign test on two paired samples (g08aac): 3 of 14 pairs one
  // way, lower tail probability 0.029; two-sided twice that.
  CHECK_NEAR(sign_test(3, 11), 2.0 * 0.029, 0.001);
  CHECK_NEAR(sign_test(11, 3), sign_test(3, 11), 1e-15);
  // By hand: no head in six tosses, 2 / 2^6; one in eight, 2 (1 + 8) / 2^8.
  CHECK_NEAR(sign_test(0, 6), 2.0 / 64.0, 1e-15);
  CHECK_NEAR(sign_test(1, 7), 18.0 / 256.0, 1e-15);
  CHECK(sign_test(0, 0) == 1.0);
  CHECK(sign_test(5, 5) == 1.0);
}

}  // namespace halfdrop

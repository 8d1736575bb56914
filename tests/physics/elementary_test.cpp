#include "physics/elementary.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>

#include "physics/random.h"
#include "tests/support/near.h"

// The reference is the C library in long double (64-bit mantissa on x86: 11 bits more than a double's).
static_assert(std::numeric_limits<long double>::digits > 53,
              "the reference must be more exact than the subject");

using halfdrop::Random;
namespace elementary = halfdrop::elementary;

namespace {

constexpr int kSamples = 400000;

double relative_error(double value, long double exact) {
  return static_cast<double>(std::abs((static_cast<long double>(value) - exact) / exact));
}

/// Error relative to the result, or absolute where the result is below 1.
double mixed_error(double value, long double exact) {
  const long double scale = std::max(1.0L, std::abs(exact));
  return static_cast<double>(std::abs(static_cast<long double>(value) - exact) / scale);
}

/// A positive normal number of any size, its exponent drawn evenly.
double any_positive(Random& random) {
  return std::ldexp(random.uniform(1.0, 2.0), static_cast<int>(random.uniform(-1022.0, 1024.0)));
}

}  // namespace

TEST_CASE("exp keeps its stated error of 4e-16 from -700 to 700") {
  Random random{1};
  double worst = 0.0;
  for (int i = 0; i < kSamples; ++i) {
    const double x = i % 2 == 0 ? random.uniform(-700.0, 700.0) : random.uniform(-1.0, 1.0);
    worst = std::max(worst, relative_error(elementary::exp(x), std::exp(static_cast<long double>(x))));
  }
  MESSAGE("worst relative error of exp " << worst);
  CHECK(worst < 4e-16);
}

TEST_CASE("exp meets its ends quietly") {
  CHECK(elementary::exp(0.0) == 1.0);
  CHECK(elementary::exp(-746.0) == 0.0);
  CHECK(elementary::exp(-1e300) == 0.0);
  CHECK(std::isinf(elementary::exp(709.79)));
  CHECK(std::isfinite(elementary::exp(709.78)));
  CHECK(std::isnan(elementary::exp(std::numeric_limits<double>::quiet_NaN())));
  // Below the normal range the spacing of doubles itself is 4.9e-324.
  CHECK_NEAR(elementary::exp(-744.0) / 4.9406564584124654e-324, 2.0, 0.0);
}

TEST_CASE("log keeps its stated error of 4e-16 over all sizes and close to 1") {
  Random random{2};
  double worst = 0.0;
  double worst_near_one = 0.0;
  for (int i = 0; i < kSamples; ++i) {
    const double x = any_positive(random);
    worst = std::max(worst, mixed_error(elementary::log(x), std::log(static_cast<long double>(x))));
    const double y = random.uniform(0.5, 2.0);
    worst_near_one =
        std::max(worst_near_one, relative_error(elementary::log(y), std::log(static_cast<long double>(y))));
  }
  MESSAGE("worst error of log " << worst << ", relative between 0.5 and 2 " << worst_near_one);
  CHECK(worst < 4e-16);
  CHECK(worst_near_one < 4e-16);
}

TEST_CASE("log meets its ends quietly") {
  CHECK(elementary::log(1.0) == 0.0);
  CHECK(std::isinf(elementary::log(0.0)));
  CHECK(elementary::log(0.0) < 0.0);
  CHECK(std::isnan(elementary::log(-1.0)));
  CHECK(std::isinf(elementary::log(std::numeric_limits<double>::infinity())));
  CHECK_NEAR(elementary::log(std::numeric_limits<double>::denorm_min()), -744.4400719213812, 1e-12);
}

TEST_CASE("powers and logarithms of ten keep their stated errors") {
  Random random{3};
  double worst_power = 0.0;
  double worst_log = 0.0;
  for (int i = 0; i < kSamples; ++i) {
    const double x = random.uniform(-300.0, 300.0);
    worst_power = std::max(
        worst_power, relative_error(elementary::exp10(x), std::pow(10.0L, static_cast<long double>(x))));
    const double y = any_positive(random);
    worst_log =
        std::max(worst_log, relative_error(elementary::log10(y), std::log10(static_cast<long double>(y))));
  }
  MESSAGE("worst relative error of exp10 " << worst_power << ", of log10 " << worst_log);
  CHECK(worst_power < 4e-16);
  CHECK(worst_log < 8e-16);
  CHECK(elementary::exp10(0.0) == 1.0);
  CHECK(elementary::exp10(-400.0) == 0.0);
  CHECK(std::isinf(elementary::exp10(309.0)));
}

TEST_CASE("cube root keeps its stated error of 1e-15") {
  Random random{4};
  double worst = 0.0;
  for (int i = 0; i < kSamples; ++i) {
    const double x = any_positive(random);
    worst = std::max(worst, relative_error(elementary::cube_root(x), std::cbrt(static_cast<long double>(x))));
  }
  MESSAGE("worst relative error of the cube root " << worst);
  CHECK(worst < 1e-15);
  CHECK(elementary::cube_root(0.0) == 0.0);
  CHECK_NEAR(elementary::cube_root(27.0), 3.0, 1e-15);
  CHECK(relative_error(elementary::cube_root(1e-320), std::cbrt(static_cast<long double>(1e-320))) < 1e-15);
}

TEST_CASE("arccos keeps its stated error of 3e-8 on 0 to 1") {
  double worst = 0.0;
  for (int i = 0; i <= 100000; ++i) {
    const double x = i / 100000.0;
    worst = std::max(worst, std::abs(elementary::acos(x) - std::acos(x)));
  }
  MESSAGE("worst absolute error of acos " << worst);
  CHECK(worst < 3e-8);
  CHECK(elementary::acos(1.0) == 0.0);
}

// Any change of these bits breaks the replay of recorded attempts. Values of this implementation, kept as a
// lock.
TEST_CASE("a thousand values of exp and log fold to the same bits on every build") {
  std::uint64_t fold = 0;
  for (int i = 1; i <= 1000; ++i) {
    const double x = i * 0.37;
    fold = std::rotl(fold, 7) ^ std::bit_cast<std::uint64_t>(elementary::exp(-x));
    fold = std::rotl(fold, 7) ^ std::bit_cast<std::uint64_t>(elementary::log(x));
  }
  CHECK(fold == 12162582118274145190u);
}

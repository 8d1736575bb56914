#include "physics/elementary.h"

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>

namespace halfdrop::elementary {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

// ln 2 in two parts: the first has 21 trailing zero bits, so that a whole multiple of it is exact.
constexpr double kLn2High = 6.93147180369123816490e-01;
constexpr double kLn2Low = 1.90821492927058770002e-10;
// log10 2 in two parts, split alike.
constexpr double kLog10Of2High = 3.01029995663611771306e-01;
constexpr double kLog10Of2Low = 3.69423907715893078616e-13;
constexpr double kLn10 = 2.30258509299404568402;

double power_of_two(int exponent) {
  return std::bit_cast<double>(static_cast<std::uint64_t>(exponent + 1023) << 52);
}

// y 2^k for y about 1; two factors where one would leave the range of normal numbers.
double scaled(double y, int k) {
  if (k > 1023) return y * power_of_two(1023) * power_of_two(k - 1023);
  if (k < -1021) return y * power_of_two(k + 1000) * power_of_two(-1000);
  return y * power_of_two(k);
}

/// The nearest whole number for |x| < 2^51: adding 1.5 x 2^52 leaves no room for a fraction.
double nearest_whole(double x) { return (x + 0x1.8p52) - 0x1.8p52; }

// e^(high - low) for |high - low| <= 0.35. Remez coefficients of FDLIBM (e_exp.c, Sun Microsystems 1993).
double exp_reduced(double high, double low) {
  const double x = high - low;
  const double z = x * x;
  const double first = 1.66666666666666019037e-01 + z * -2.77777777770155933842e-03;
  const double second = 6.61375632143793436117e-05 + z * -1.65339022054652515390e-06;
  const double z2 = z * z;
  const double c = x - z * (first + z2 * (second + z2 * 4.13813679705723846039e-08));
  return 1.0 + (x * c / (2.0 - c) - low + high);
}

}  // namespace

double exp(double x) {
  if (x != x) return x;
  if (x > 709.782712893384) return kInfinity;
  if (x < -745.2) return 0.0;
  const double k = nearest_whole(x * 1.44269504088896338700);
  return scaled(exp_reduced(x - k * kLn2High, k * kLn2Low), static_cast<int>(k));
}

// Reduction to 2^k m with m in [sqrt(1/2), sqrt 2), then FDLIBM's series in f / (2 + f) (e_log.c).
double log(double x) {
  if (x != x || x < 0.0) return kNaN;
  if (x == 0.0) return -kInfinity;
  if (x == kInfinity) return kInfinity;
  int k = 0;
  if (x < std::numeric_limits<double>::min()) {
    x *= 0x1p54;
    k = -54;
  }
  constexpr std::uint64_t kRootHalf = 0x3fe6a09e'00000000;
  const std::uint64_t bits = std::bit_cast<std::uint64_t>(x) + (0x3ff00000'00000000 - kRootHalf);
  k += static_cast<int>(bits >> 52) - 1023;
  const double m = std::bit_cast<double>((bits & 0x000fffff'ffffffff) + kRootHalf);
  const double f = m - 1.0;
  const double half_square = 0.5 * f * f;
  const double s = f / (2.0 + f);
  const double z = s * s;
  const double w = z * z;
  const double even =
      w * (3.999999999940941908e-01 + w * (2.222219843214978396e-01 + w * 1.531383769920937332e-01));
  const double odd =
      z * (6.666666666666735130e-01 +
           w * (2.857142874366239149e-01 + w * (1.818357216161805012e-01 + w * 1.479819860511658591e-01)));
  return s * (half_square + (odd + even)) + k * kLn2Low - half_square + f + k * kLn2High;
}

double exp10(double x) {
  if (x != x) return x;
  if (x > 308.254715559916744) return kInfinity;
  if (x < -324.0) return 0.0;
  const double k = nearest_whole(x * 3.32192809488736234787);
  const double reduced = (x - k * kLog10Of2High) - k * kLog10Of2Low;
  return scaled(exp_reduced(reduced * kLn10, 0.0), static_cast<int>(k));
}

double log10(double x) { return log(x) / kLn10; }

double cube_root(double x) {
  if (x != x || x < 0.0) return kNaN;
  if (x == 0.0 || x == kInfinity) return x;
  if (x < 0x1p-900) return cube_root(x * 0x1p174) * 0x1p-58;
  if (x > 0x1p900) return cube_root(x * 0x1p-174) * 0x1p58;
  // A third of the exponent and mantissa bits is right to 4 %; Halley's step triples the digits.
  double root = std::bit_cast<double>(std::bit_cast<std::uint64_t>(x) / 3 + 0x2a9f7893'00000000);
  for (int i = 0; i < 3; ++i) {
    const double cube = root * root * root;
    root -= root * ((cube - x) / (cube + cube + x));
  }
  return root;
}

double acos(double x) {
  if (!(x >= 0.0 && x <= 1.0)) return kNaN;
  constexpr double kA[8] = {1.5707963050, -0.2145988016, 0.0889789874, -0.0501743046,
                            0.0308918810, -0.0170881256, 0.0066700901, -0.0012624911};
  double sum = 0.0;
  for (int i = 7; i >= 0; --i) sum = sum * x + kA[i];
  return std::sqrt(1.0 - x) * sum;
}

}  // namespace halfdrop::elementary

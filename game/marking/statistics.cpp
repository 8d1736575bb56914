#include "game/marking/statistics.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {

SampleStatistics statistics_of(std::span<const double> values) {
  SampleStatistics sample;
  sample.count = static_cast<int>(values.size());
  if (values.empty()) return sample;
  const auto n = static_cast<double>(values.size());
  // Deviations from the first value first: a sum of large like figures would lose their last digits.
  for (const double value : values) sample.mean += (value - values.front()) / n;
  double squares = 0.0;
  for (const double value : values) {
    const double deviation = value - values.front() - sample.mean;
    squares += deviation * deviation;
  }
  sample.mean += values.front();
  if (values.size() < 2) return sample;
  sample.sd = std::sqrt(squares / (n - 1.0));
  sample.mean_error = sample.sd / std::sqrt(n);
  sample.sd_error = sample.sd / std::sqrt(2.0 * (n - 1.0));
  return sample;
}

double sign_test(int one, int other) {
  const int tosses = one + other, fewer = std::min(one, other);
  if (tosses == 0) return 1.0;
  double ways = 1.0, sum = 0.0;
  for (int k = 0; k <= fewer; ++k) {
    sum += ways;
    ways *= static_cast<double>(tosses - k) / (k + 1);
  }
  return std::min(1.0, 2.0 * sum * std::pow(0.5, tosses));
}

}  // namespace halfdrop

#pragma once
// Small samples and what can be said from them.

#include <span>

namespace halfdrop {

/// Of n values: mean, standard deviation (n - 1 in the denominator), and how well either is known. Needs two
/// values for a deviation; with fewer it is 0.
struct SampleStatistics {
  int count = 0;
  double mean = 0.0;
  double sd = 0.0;
  double mean_error = 0.0;  ///< standard error of the mean, sd / sqrt(n)
  double sd_error = 0.0;    ///< standard error of sd, sd / sqrt(2 (n - 1)): normal values, n not very small
};
[[nodiscard]] SampleStatistics statistics_of(std::span<const double> values);

/// Chance that of `one + other` tosses of a coin so few or fewer fall on the rarer side, either side being it
/// (exact two-sided sign test; 1 without a toss).
[[nodiscard]] double sign_test(int one, int other);

/// Below this chance we speak of something seen, in one test (custom).
inline constexpr double kUnlikely = 0.05;
/// A mean further than this many standard errors from nought is seen (95 % from about 30 values on).
inline constexpr double kSeenErrors = 2.0;
/// Fewer values than these say too little for a verdict (our own choice).
inline constexpr int kFewestValues = 10;

}  // namespace halfdrop

#pragma once
// A bet on somebody's mean titre, and what was true. The points are our own choice, beside any marks.

#include <optional>
#include <vector>

#include "game/marking/diagnosis.h"
#include "game/marking/marks.h"

namespace halfdrop {

enum class MeanIs : std::uint8_t { too_low, right, too_high };

/// What was true of an attempt's mean titre.
struct MeanTruth {
  std::vector<double> titres_cm3;  ///< those that count, in the attempt's own figures
  double mean_cm3 = 0.0;           ///< as written
  double ideal_cm3 = 0.0;          ///< what perfect hands, eyes and glass would have found
  double spread_cm3 = 0.0;         ///< largest less smallest of the titres
  MeanIs mean = MeanIs::right;
  std::vector<LargestCause> causes;  ///< what moved the titres by a drop or more, the largest first

  [[nodiscard]] double off_cm3() const { return mean_cm3 - ideal_cm3; }
};
/// Right is a mean within `within_cm3` of the ideal titre. Nothing where no mean was written or no titre
/// counts.
[[nodiscard]] std::optional<MeanTruth> mean_truth(const MarkedAttempt& marked, double within_cm3);

inline constexpr int kLeastStake = 1, kMostStake = 3;
struct Bet {
  MeanIs mean = MeanIs::right;
  int stake = kLeastStake;  ///< kLeastStake a guess .. kMostStake certain
};
/// The stake is won or lost.
[[nodiscard]] int bet_points(const Bet& bet, const MeanTruth& truth);

}  // namespace halfdrop

#include "game/marking/bet.h"

#include <algorithm>
#include <cmath>

#include "game/marking/counted_runs.h"

namespace halfdrop {

namespace {

/// Two decimals are written: a difference that prints as the limit is within it.
constexpr double kHalfAFigure_cm3 = 0.0005;

std::vector<LargestCause> causes_worth_a_drop(const MarkedAttempt& marked) {
  const auto means_cm3 = mean_causes_cm3(counted_runs(marked.titres));
  std::vector<LargestCause> causes;
  for (std::size_t i = 0; i < means_cm3.size(); ++i) {
    if (std::fabs(means_cm3[i]) >= kOneDrop_cm3) causes.push_back({static_cast<Cause>(i), means_cm3[i]});
  }
  std::stable_sort(causes.begin(), causes.end(), [](const LargestCause& one, const LargestCause& other) {
    return std::fabs(one.mean_cm3) > std::fabs(other.mean_cm3);
  });
  return causes;
}

}  // namespace

std::optional<MeanTruth> mean_truth(const MarkedAttempt& marked, double within_cm3) {
  if (!marked.mean_titre_cm3) return std::nullopt;
  MeanTruth truth;
  for (const TitreRow& row : marked.titres) {
    if (row.used && row.recorded_cm3) truth.titres_cm3.push_back(*row.recorded_cm3);
  }
  if (truth.titres_cm3.empty()) return std::nullopt;
  const auto [least, most] = std::minmax_element(truth.titres_cm3.begin(), truth.titres_cm3.end());
  truth.spread_cm3 = *most - *least;
  truth.mean_cm3 = *marked.mean_titre_cm3;
  truth.ideal_cm3 = marked.ideal_titre_cm3;
  if (truth.off_cm3() > within_cm3 + kHalfAFigure_cm3) truth.mean = MeanIs::too_high;
  if (truth.off_cm3() < -within_cm3 - kHalfAFigure_cm3) truth.mean = MeanIs::too_low;
  truth.causes = causes_worth_a_drop(marked);
  return truth;
}

int bet_points(const Bet& bet, const MeanTruth& truth) {
  return bet.mean == truth.mean ? bet.stake : -bet.stake;
}

}  // namespace halfdrop

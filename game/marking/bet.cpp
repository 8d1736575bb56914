#include "game/marking/bet.h"

#include <algorithm>

namespace halfdrop {

namespace {

/// Two decimals are written: a difference that prints as the limit is within it.
constexpr double kHalfAFigure_cm3 = 0.0005;

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
  truth.cause = largest_cause(marked);
  return truth;
}

int bet_points(const Bet& bet, const MeanTruth& truth) {
  return bet.mean == truth.mean ? bet.stake : -bet.stake;
}

}  // namespace halfdrop

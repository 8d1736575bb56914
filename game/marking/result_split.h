#pragma once
// Where a reported result's distance from the truth came from, as parts of 100 ln(reported/true): per cent
// that add up exactly, whichever vessel holds the unknown.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "game/level/level.h"
#include "game/marking/calculation.h"
#include "game/marking/results_sheet.h"
#include "game/marking/titre_breakdown.h"

namespace halfdrop {

struct TitreRow;

/// What a part comes from: a cause in the titres, which runs were counted, the subtractions, the mean, a slip
/// in a line of the working, rounding in the working and of the result.
enum class ResultPartOf : std::uint8_t { titres, choice, subtraction, mean, slip, rounding };

struct ResultPart {
  std::string name;
  ResultPartOf of = ResultPartOf::titres;
  std::optional<Cause> cause;  ///< of the titres' parts
  std::string cell;            ///< where it was written, of a slip
  double percent = 0.0;        ///< 100 ln; + made the result too large
};

struct ResultSplit {
  std::vector<ResultPart> parts;  ///< from the flask to the paper; those of size 0 are left out
  double percent = 0.0;           ///< 100 ln(reported/true), their sum
  bool larger_with_titre = true;  ///< a larger (whole) titre makes the result larger
};

/// From the ideal titre to the mean of the runs that count, each cause by the mean slope of ln(result)
/// between the two, so that no order matters; then from mean to mean and line to line as the player wrote
/// them. The label's error is no part of its own: liquids off their label stand in the titres' causes
/// (`titrant_strength`, `aliquot`). Of two endpoints both titres' causes have parts: each titre's share of
/// the way is the mean over both orders of moving one after the other. Nothing without a breakdown, or where
/// a result on the way is not positive.
[[nodiscard]] std::optional<ResultSplit> result_split(const Level& level, const ResultsSheet& sheet,
                                                      const std::vector<TitreRow>& titres,
                                                      const MeanTitres& ideal);
/// The same of one titre.
[[nodiscard]] std::optional<ResultSplit> result_split(const Level& level, const ResultsSheet& sheet,
                                                      const std::vector<TitreRow>& titres,
                                                      double ideal_titre_cm3);

}  // namespace halfdrop

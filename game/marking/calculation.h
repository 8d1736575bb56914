#pragma once
// The level's calculation worked from the player's own figures: a slip in one line is that line's alone.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/level/level.h"
#include "game/level/mean_titre.h"
#include "game/marking/results_sheet.h"

namespace halfdrop {

/// Values of cells by name.
using CellValues = std::map<std::string, double>;

/// Means of the titres that count: the whole ones, and where a flask has two endpoints the first ones.
struct MeanTitres {
  double whole_cm3 = 0.0;
  std::optional<double> first_cm3{};
  [[nodiscard]] CellValues cells() const;
};

/// One line: product of `multiply` over product of `divide`, plus the sum of `plus`, minus that of `minus`.
/// Nothing when a factor is missing or the result not finite.
[[nodiscard]] std::optional<double> evaluate(const Level& level, const CalculationStep& step,
                                             const CellValues& cells);

/// The level's result with some cells as they were written, the others worked out from them.
[[nodiscard]] std::optional<double> result_with(const Level& level, const CellValues& written);
/// The level's result when mean titres (cm3) are put through its calculation unrounded.
[[nodiscard]] std::optional<double> result_from_means(const Level& level, const MeanTitres& means);
[[nodiscard]] std::optional<double> result_from_mean(const Level& level, double mean_cm3);

/// One line of the working as it was written and as it should be.
struct WorkedStep {
  CalculationStep step;
  std::string text;  ///< as written
  std::optional<double> written;
  std::optional<double> expected;  ///< from the figures the player wrote above
  bool right = false;
  Tick tick = 0;
};

/// Every step but the means. `mean_cm3`: of the ticked titres, for lines that follow an unwritten mean;
/// `first_mean_cm3`: of their first titres.
[[nodiscard]] std::vector<WorkedStep> check_working(const Level& level, const ResultsSheet& sheet,
                                                    std::optional<double> mean_cm3,
                                                    std::optional<double> first_mean_cm3 = {});

/// A result agrees with what it should be to 0.1 %, or to half a unit of its last place when it has two
/// figures or more.
[[nodiscard]] bool agrees(const std::string& text, double written, double expected);
/// A mean titre agrees to half a unit of its last place, 0.01 to 0.05 cm3; a whole number has no last place
/// to speak of.
[[nodiscard]] bool mean_agrees(const std::string& text, double written, double mean_cm3);

}  // namespace halfdrop

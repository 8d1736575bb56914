#pragma once
// A drill marked: its figures, findings and scores. Points are our own choice; bands come from the level.

#include <optional>
#include <string>
#include <vector>

#include "game/marking/criteria.h"
#include "game/marking/marks.h"

namespace halfdrop {

/// Precondition: the attempt's level has a drill.
[[nodiscard]] MarkedAttempt mark_drill(const Attempt& attempt);

/// Appends a drill's findings, safety apart.
void find_in_reading(const ReadingDrill& drill, const Level& level, std::vector<Finding>& findings);
void find_in_delivery(const DeliveryDrill& drill, const Level& level, std::vector<Finding>& findings);
void find_in_filling(const FillingDrill& drill, const Level& level, std::vector<Finding>& findings);
void find_in_knowing(const KnowingDrill& drill, std::vector<Finding>& findings);

[[nodiscard]] DrillKind kind_of(const DrillFigures& drill);

/// One of a drill's key figures, for tables and for comparing one go with another.
struct DrillFigure {
  std::string id;               ///< "bias_cm3"
  std::string title;            ///< "bias"
  std::optional<double> value;  ///< nothing where nothing was done
  std::optional<double> error;  ///< standard error, where it has one
  int decimals = 3;
  bool is_cm3 = true, is_signed = false;
};
[[nodiscard]] std::vector<DrillFigure> key_figures(const DrillFigures& drill);
/// Every id that key_figures can give, drill by drill.
[[nodiscard]] std::vector<std::string> key_figure_ids();
/// "+0.012 cm³ ± 0.004", "3", "-" for nothing.
[[nodiscard]] std::string figure_words(const DrillFigure& figure);

/// Whether a second attempt is another go at the same drill by the same person: same level, same alias. A
/// level of the same name may be another drill: a teacher's own, or one that was changed since.
[[nodiscard]] bool same_drill(const Attempt& one, const Attempt& other);

/// One key figure of two goes.
struct FigureChange {
  DrillFigure first, second;
  /// What became of it, as far as it can be told: "nearer to nought", "further from nought", "no change that
  /// can be told from chance", "the same"; empty where one of them is missing.
  std::string verdict;
};
/// Precondition: of one drill.
[[nodiscard]] std::vector<FigureChange> compare_goes(const DrillFigures& first, const DrillFigures& second);

}  // namespace halfdrop

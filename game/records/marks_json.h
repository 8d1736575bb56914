#pragma once

#include <optional>
#include <string>
#include <vector>

#include "game/marking/drill_marks.h"
#include "game/marking/marks.h"

namespace halfdrop {

/// The first go at a drill, for what is said of a later one.
struct FirstGo {
  std::string attempt_name;
  std::vector<FigureChange> changes;  ///< from it to the later one
};

/// One JSON object on one line, keys as in the contract (DEVELOPERS.md): attempt, level, alias, way,
/// reproduced, titres, mean_titre_cm3, ideal_titre_cm3, concentration, uncertainty, marks, findings,
/// result_split, next, and drill where the level is one. What was not written is null.
[[nodiscard]] std::string marks_json(const MarkedAttempt& marked, const std::string& attempt_name,
                                     const std::optional<FirstGo>& first_go = std::nullopt);
/// The same for a person at a terminal.
[[nodiscard]] std::string marks_text(const MarkedAttempt& marked, const std::string& attempt_name,
                                     const std::optional<FirstGo>& first_go = std::nullopt);
/// Header line and one row an attempt; names starting with = + - @ are defused. A drill's key figures stand
/// at the end.
[[nodiscard]] std::string marks_csv_header();
[[nodiscard]] std::string marks_csv_row(const MarkedAttempt& marked, const std::string& attempt_name);

}  // namespace halfdrop

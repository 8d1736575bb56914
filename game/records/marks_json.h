#pragma once

#include <string>

#include "game/marking/marks.h"

namespace halfdrop {

/// One JSON object on one line, keys as in the contract (DEVELOPERS.md): attempt, level, alias, reproduced,
/// titres, mean_titre_cm3, ideal_titre_cm3, concentration, marks, findings. What was not written is null.
[[nodiscard]] std::string marks_json(const MarkedAttempt& marked, const std::string& attempt_name);
/// The same for a person at a terminal.
[[nodiscard]] std::string marks_text(const MarkedAttempt& marked, const std::string& attempt_name);
/// Header line and one row an attempt; names starting with = + - @ are defused.
[[nodiscard]] std::string marks_csv_header();
[[nodiscard]] std::string marks_csv_row(const MarkedAttempt& marked, const std::string& attempt_name);

}  // namespace halfdrop

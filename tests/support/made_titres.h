#pragma once
// Rows of titres with causes put in by hand.

#include <string>
#include <utility>
#include <vector>

#include "game/marking/marks.h"

namespace halfdrop::test {

using Parts = std::vector<std::pair<Cause, double>>;

/// A run whose recorded titre is the ideal one and these causes.
inline TitreRow made_run(const std::string& name, double ideal_cm3, const Parts& causes, bool used = false) {
  TitreRow row;
  row.run = name;
  row.used = used;
  TitreBreakdown parts;
  parts.ideal_cm3 = parts.recorded_cm3 = ideal_cm3;
  for (const auto& [cause, cm3] : causes) {
    parts.causes_cm3[static_cast<std::size_t>(cause)] += cm3;
    parts.recorded_cm3 += cm3;
  }
  row.recorded_cm3 = row.written_titre_cm3 = parts.recorded_cm3;
  row.breakdown = parts;
  return row;
}

inline MarkedAttempt made_attempt(std::vector<TitreRow> rows) {
  MarkedAttempt attempt;
  attempt.ideal_titre_cm3 =
      rows.empty() || !rows.front().breakdown ? 21.23 : rows.front().breakdown->ideal_cm3;
  attempt.titres = std::move(rows);
  return attempt;
}

}  // namespace halfdrop::test

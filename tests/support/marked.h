#pragma once
// Looking things up in a marked attempt.

#include <stdexcept>
#include <string>
#include <vector>

#include "game/marking/marks.h"

namespace halfdrop::test {

inline const Finding* find(const MarkedAttempt& marked, const std::string& criterion) {
  for (const Finding& finding : marked.findings) {
    if (finding.criterion == criterion) return &finding;
  }
  return nullptr;
}

inline const Finding& finding(const MarkedAttempt& marked, const std::string& criterion) {
  const Finding* found = find(marked, criterion);
  if (found == nullptr) throw std::runtime_error("no finding " + criterion);
  return *found;
}

/// Criteria not met, in order, with a comma between.
inline std::string unmet(const MarkedAttempt& marked) {
  std::string names;
  for (const Finding& finding : marked.findings) {
    if (!finding.met) names += (names.empty() ? "" : ", ") + finding.criterion;
  }
  return names;
}

inline double points(const MarkedAttempt& marked, Score score) {
  return marked.marks.parts.at(static_cast<std::size_t>(score) - 1).points;
}

inline double points_lost(const MarkedAttempt& marked) {
  double lost = 0.0;
  for (const Marks::Part& part : marked.marks.parts) lost += part.of - part.points;
  return lost;
}

inline const TitreRow& titre(const MarkedAttempt& marked, const std::string& run) {
  for (const TitreRow& row : marked.titres) {
    if (row.run == run) return row;
  }
  throw std::runtime_error("no titre " + run);
}

}  // namespace halfdrop::test

#include "game/marking/counted_runs.h"

#include <algorithm>

namespace halfdrop {

std::vector<const TitreRow*> counted_runs(const std::vector<TitreRow>& titres) {
  std::vector<const TitreRow*> runs;
  for (const TitreRow& row : titres) {
    if (row.run != "trial" && row.breakdown) runs.push_back(&row);
  }
  const bool any_ticked =
      std::any_of(runs.begin(), runs.end(), [](const TitreRow* row) { return row->used; });
  if (any_ticked) std::erase_if(runs, [](const TitreRow* row) { return !row->used; });
  return runs;
}

std::array<double, kCauses> mean_causes_cm3(const std::vector<const TitreRow*>& runs) {
  std::array<double, kCauses> means{};
  for (const TitreRow* row : runs) {
    for (std::size_t i = 0; i < kCauses; ++i) {
      means[i] += row->breakdown->causes_cm3[i] / static_cast<double>(runs.size());
    }
  }
  return means;
}

}  // namespace halfdrop

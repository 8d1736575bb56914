#pragma once
// The runs that a result hangs on, and what their causes come to on average.

#include <array>
#include <vector>

#include "game/marking/marks.h"

namespace halfdrop {

/// What hands and eyes are asked to see (common practice).
inline constexpr double kOneDrop_cm3 = 0.05;

/// Accurate runs with a breakdown: the ticked ones, or all of them while none is ticked.
[[nodiscard]] std::vector<const TitreRow*> counted_runs(const std::vector<TitreRow>& titres);

/// Mean of each cause over some runs, cm3. Precondition: each has a breakdown, and there is one.
[[nodiscard]] std::array<double, kCauses> mean_causes_cm3(const std::vector<const TitreRow*>& runs);

}  // namespace halfdrop

#pragma once
// What titrations and drills have in common when findings become marks.

#include <vector>

#include "game/marking/marks.h"

namespace halfdrop {

/// Points by score; the total is 0 while safety is not met.
[[nodiscard]] Marks add_up(const std::vector<Finding>& findings);

/// Whether there was anything to compare the replay with. Worth no points: a machine that stopped is no
/// fault.
[[nodiscard]] Finding closing_line(const ReplayOutcome& outcome, Tick end);

}  // namespace halfdrop

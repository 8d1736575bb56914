#pragma once
// The demonstrator at a drill: each done from what is seen, as at a titration.

#include "game/demonstrator/at_bench.h"
#include "game/demonstrator/habits.h"

namespace halfdrop {

/// Precondition: the bench's level has a drill.
void perform_drill(AtBench& bench, const Habits& habits);

}  // namespace halfdrop

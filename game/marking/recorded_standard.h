#pragma once
// A standard that the player weighs: T* goes by the recorded mass in the nominal flask. What the hands then
// did otherwise comes out as a cause of the titre.

#include "game/level/level.h"
#include "game/marking/results_sheet.h"
#include "game/session/session.h"

namespace halfdrop {

/// The level with the label that the two weighings make as they were written; where they are missing, or make
/// no mass that could be, as the solid truly left its bottle. A level without such a standard as it is.
[[nodiscard]] Level level_as_recorded(const Session& session, const ResultsSheet& sheet);
/// The bench with that label.
[[nodiscard]] BenchSpec bench_as_recorded(const BenchSpec& spec, const Level& recorded);

}  // namespace halfdrop

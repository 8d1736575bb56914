#pragma once

#include "game/scenes/options.h"

namespace halfdrop {

/// Draws one frame of a level or an attempt into a PNG file; returns the exit status.
[[nodiscard]] int draw_still(const Options& options);
/// Prints the places of a level's bench and paper, or of the list of levels; returns the exit status.
[[nodiscard]] int print_places(const Options& options);
/// One line a fault on standard error; returns the exit status they call for.
int report(const std::vector<Fault>& faults);

}  // namespace halfdrop

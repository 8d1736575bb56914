#pragma once
// The pipette: by practised hands, or worked by hand from what is seen of it.

#include "game/demonstrator/at_bench.h"
#include "game/demonstrator/habits.h"

namespace halfdrop {

/// An aliquot into the flask, as the level has it worked. Precondition: the flask stands aside.
void pipette_aliquot(AtBench& bench, const Habits& habits);

// The parts of it that eye and filler do by hand.
/// Brings the eye so far above the pipette's line (negative: below).
void look_at_line(AtBench& bench, double above_mm = 0.0);
/// Draws up to well above the line.
void draw_past_line(AtBench& bench);
/// Lets it down until the meniscus is seen on the line.
void let_down_to_line(AtBench& bench);

}  // namespace halfdrop

#pragma once
// A standard weighed out by difference and made up to the line of its flask, from what is seen of it.

#include "game/demonstrator/at_bench.h"
#include "game/demonstrator/habits.h"
#include "game/demonstrator/pencil.h"

namespace halfdrop {

/// Nothing where the standard stands ready.
void make_up_standard(AtBench& bench, Pencil& pencil, const Habits& habits);

// The parts of it that hands and eye do.
/// Tips solid out until a mass that serves has left the bottle since it weighed so much.
void tip_out_enough(AtBench& bench, double before_g);
/// Brings the eye to the height of the flask's line.
void look_at_mark(AtBench& bench);
/// Lets water in until the meniscus is seen at the line (its bottom, or its upper edge), or so far past it.
void fill_to_mark(AtBench& bench, bool to_bottom = true, double past_line_mm = 0.0);
/// As the balance shows it: "21.345".
[[nodiscard]] std::string weight_text(double shown_g);

}  // namespace halfdrop

#pragma once
// How well the player's own result is known, drawn: the result with its ± beside the truth and beside what
// perfect hands could have got, and the share of each quantity.

#include "game/marking/marks.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

/// Whether the truth lies within the own result's ±, in words.
[[nodiscard]] std::string within_words(const OwnUncertainty& own, double true_value);

/// Draws where the marks have an uncertainty; returns the height used. `large`: words at 4 % of the height.
float draw_uncertainty(Canvas& canvas, Point top_left, float width, const MarkedAttempt& marked, bool large);

}  // namespace halfdrop

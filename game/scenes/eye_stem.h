#pragma once
// What the eye sees of the stem of a pipette that is worked by hand: its line, a ring all round, and the
// liquid.

#include "game/scenes/canvas.h"
#include "game/session/view.h"

namespace halfdrop {

/// The eye turns to the pipette while it is filled and let down.
[[nodiscard]] bool looks_at_stem(const PipetteView& pipette);
/// In the frame of the eye's picture, in place of the burette; marks the line's height on its rail.
void draw_eye_stem(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec);

}  // namespace halfdrop

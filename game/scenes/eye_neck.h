#pragma once
// What the eye sees of a volumetric flask's neck: its line, a ring all round, and the liquid.

#include "game/scenes/canvas.h"
#include "game/session/view.h"

namespace halfdrop {

void draw_eye_neck(Canvas& canvas, const Rect& place, const PreparationView& work, const BenchSpec& spec);

}  // namespace halfdrop

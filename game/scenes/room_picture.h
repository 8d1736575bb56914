#pragma once

#include "game/scenes/canvas.h"

namespace halfdrop {

/// Wall in morning light, shelves, bench top; fills the whole window whatever its shape.
void draw_room(Canvas& canvas);

}  // namespace halfdrop

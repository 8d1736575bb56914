#pragma once
// Titres, their mean and the truth on one axis: close together is one thing, close to the truth another.

#include "game/marking/bet.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

/// The band that counts as right lies around the truth.
void draw_mean_chart(Canvas& canvas, const Rect& at, const MeanTruth& truth, double within_cm3);

}  // namespace halfdrop

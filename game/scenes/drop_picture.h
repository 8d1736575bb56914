#pragma once
// Liquid by the drop: hanging, falling, leaking from the plug, spilt on the bench.

#include "game/scenes/bench_picture.h"

namespace halfdrop {

/// A drop in its true outline (Young-Laplace, drop_shape.h), below the middle of the wetted width of a tip.
void draw_hanging_drop(Canvas& canvas, const BenchSpec& spec, Point hangs_from, double volume_cm3);
void draw_falling_drop(Canvas& canvas, Point centre, double volume_cm3);
/// What a leaking plug shows: wet under its rim, the drop that gathers there (as wide a foot as the tip's),
/// and one on its way to the bench, in front of the flask.
void draw_leak(Canvas& canvas, const BenchPicture& picture);
/// How far a glass is moved over to the tip to take a drop off: 0..1.
[[nodiscard]] float touching(const View& view);
/// What lies on the bench, or on the tile laid there.
void draw_spilt(Canvas& canvas, const View& view);

}  // namespace halfdrop

#pragma once
// A strip of pictures: one drop near the endpoint from the moment it meets the liquid, swirled in one row and
// not in the other.

#include "game/scenes/canvas.h"
#include "game/scenes/one_drop.h"
#include "game/scenes/options.h"

namespace halfdrop {

/// Performs the level and draws its strip into a PNG file; returns the exit status.
[[nodiscard]] int draw_strip(const Options& options);
/// The strip, over all of a cleared target.
void draw_strip(sf::RenderTarget& target, const Fonts& fonts, const OneDrop& drop);

}  // namespace halfdrop

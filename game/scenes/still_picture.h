#pragma once

#include <SFML/Graphics/RenderTexture.hpp>
#include <string>

#include "game/scenes/options.h"

namespace halfdrop {

/// Draws one frame of a level or an attempt into a PNG file; returns the exit status.
[[nodiscard]] int draw_still(const Options& options);
/// Writes what was drawn into a picture file; returns the exit status.
[[nodiscard]] int save_picture(const sf::RenderTexture& picture, const std::string& file);
/// Prints the places of a level's bench and paper, or of the list of levels; returns the exit status.
[[nodiscard]] int print_places(const Options& options);
/// One line a fault on standard error; returns the exit status they call for.
int report(const std::vector<Fault>& faults);

}  // namespace halfdrop

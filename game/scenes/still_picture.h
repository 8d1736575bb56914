#pragma once

#include <SFML/Graphics/Color.hpp>
#include <SFML/Graphics/RenderTarget.hpp>
#include <functional>
#include <string>

#include "game/scenes/fonts.h"
#include "game/scenes/options.h"

namespace halfdrop {

/// Draws one frame, or a page, of a level or an attempt into a PNG file; returns the exit status.
[[nodiscard]] int draw_still(const Options& options);
/// Has a picture of the options' size drawn over a ground and writes it into a PNG file; returns the exit
/// status.
[[nodiscard]] int draw_into(const std::string& file, const Options& options, sf::Color ground,
                            const std::function<void(sf::RenderTarget&, const Fonts&)>& draw);
/// Prints the places of a level's bench and paper, or of the list of levels; returns the exit status.
[[nodiscard]] int print_places(const Options& options);
/// One line a fault on standard error; returns the exit status they call for.
int report(const std::vector<Fault>& faults);

}  // namespace halfdrop

#pragma once
// Named colours of the bench in morning light.

#include "game/scenes/paint.h"

namespace halfdrop::palette {

// Room.
inline const sf::Color wall_light = rgb(0xf7f3ea);  ///< where the window's light falls
inline const sf::Color wall = rgb(0xece5d8);
inline const sf::Color wall_shade = rgb(0xd8cebd);
inline const sf::Color daylight = rgb(0xfffaec);
inline const sf::Color bench_edge = rgb(0x8b8070);
inline const sf::Color bench = rgb(0x665c4f);
inline const sf::Color bench_deep = rgb(0x443c33);
inline const sf::Color shadow = rgb(0x241d15);  ///< fade it

// Things.
inline const sf::Color steel_light = rgb(0xccd2d3);
inline const sf::Color steel = rgb(0x8d969a);
inline const sf::Color steel_dark = rgb(0x4a5256);
inline const sf::Color cast_iron = rgb(0x3d4447);
inline const sf::Color rubber = rgb(0x2f5563);  ///< clamp pads, caps, fillers
inline const sf::Color rubber_light = rgb(0x4f7f8f);
inline const sf::Color tap_handle = rgb(0xd9642c);
inline const sf::Color tap_handle_light = rgb(0xf3935f);
inline const sf::Color tap_handle_dark = rgb(0x9c4116);
inline const sf::Color ptfe = rgb(0xf4f1ea);
inline const sf::Color glass_edge = rgb(0x627b84);  ///< outline of glass
inline const sf::Color glass_dark = rgb(0x41585f);
inline const sf::Color glass_tint = rgb(0xd5e4e6);
inline const sf::Color water = rgb(0xc9dce0);  ///< colourless liquid against the wall
inline const sf::Color water_edge = rgb(0x93afb7);
inline const sf::Color tile = rgb(0xfdfdfa);
inline const sf::Color brown_glass = rgb(0x7a4a22);
inline const sf::Color scale_print = rgb(0x1d333c);  ///< graduations
inline const sf::Color wood = rgb(0xb58d5e);
inline const sf::Color wood_dark = rgb(0x84623b);
inline const sf::Color cloth = rgb(0xfbfaf6);  ///< coat
inline const sf::Color cloth_shade = rgb(0xcfd3d3);

// Paper and words.
inline const sf::Color paper = rgb(0xfffdf4);
inline const sf::Color paper_shade = rgb(0xf1ecdd);
inline const sf::Color paper_line = rgb(0xc9d3d6);
inline const sf::Color print = rgb(0x3f4d53);  ///< printed words on paper and wall
inline const sf::Color print_soft = rgb(0x667379);
inline const sf::Color ink = rgb(0x1b3a73);     ///< what the player wrote
inline const sf::Color accent = rgb(0x235066);  ///< frames, the eye, what is chosen
inline const sf::Color good = rgb(0x2c6e49);
inline const sf::Color bad = rgb(0xa63a24);
inline const sf::Color pill = rgb(0x1f1a14, 0.86);
inline const sf::Color guide = rgb(0x1d3d4c, 0.94);  ///< the guide's card
inline const sf::Color pill_text = rgb(0xfdf9ef);
inline const sf::Color pill_key = rgb(0xf2b489);  ///< keys named in a pill

}  // namespace halfdrop::palette

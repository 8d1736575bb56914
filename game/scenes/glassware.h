#pragma once
// Shapes shared by the pictures of the bench: bottles, beakers, the flask, the coat.

#include <string>

#include "game/scenes/canvas.h"
#include "physics/light/colour.h"

namespace halfdrop {

/// Linear light as a colour of the screen (sRGB encoded).
[[nodiscard]] sf::Color screen_colour(const Rgb& light);
/// Mixed as light, not as encoded values.
[[nodiscard]] Rgb mixed_light(const Rgb& one, const Rgb& other, double share);
[[nodiscard]] Rgb dimmed(const Rgb& light, double by);

/// A round shadow where a thing stands.
void draw_foot_shadow(Canvas& canvas, Point foot, float half_width, double strength = 0.42);
/// A shaded upright cylinder of glass between two heights: pale middle, darker edges.
[[nodiscard]] Paint glass_shading(float left, float right, double strength = 1.0);
[[nodiscard]] Paint water_shading(float left, float right, double strength = 1.0);

struct BottleLook {
  Rect rect;
  std::string label;  ///< wrapped on its paper
  sf::Color paper, ink;
  float fill = 0.8F;  ///< share of the body's height
  bool brown = false;
  double turned_degrees = 0;  ///< about its mouth
};
void draw_bottle(Canvas& canvas, const BottleLook& look);
/// Height of the mouth's middle within a bottle's rectangle.
[[nodiscard]] Point bottle_mouth(const Rect& rect);

/// Upright, or in the hand with its spout's tip at a point and squeezed.
void draw_wash_bottle(Canvas& canvas, const Rect& rect);
[[nodiscard]] Point wash_spout(const Rect& rect);
void draw_dropper_bottle(Canvas& canvas, const Rect& rect, const std::string& label);
void draw_beaker(Canvas& canvas, const Rect& rect, float fill, const std::string& word);
void draw_funnel(Canvas& canvas, Point rim_centre, float rim_half, float cone, float stem, bool upside_down);
/// Empty on its pegs under the shelf.
void draw_pipette_rack(Canvas& canvas, const Rect& rect);
/// Upright, tip below; `left` is the share of its volume still in it.
void draw_held_pipette(Canvas& canvas, const Rect& rect, float left);
/// `left` of one whose level stands so far above its line, or that is filled to a share below its stem.
[[nodiscard]] float pipette_filled(double level_mm, double share);
/// What is to be seen at the tip of one that is worked by hand.
struct PipetteTip {
  bool outside_wet = false, runs = false, froths = false;
};
void draw_pipette_tip(Canvas& canvas, Point tip, const PipetteTip& look);
void draw_cloth(Canvas& canvas, const Rect& rect);
void draw_leaning_tile(Canvas& canvas, const Rect& rect);
void draw_laid_tile(Canvas& canvas, const Rect& rect);
void draw_sink(Canvas& canvas, const Rect& rect);
void draw_coat_peg(Canvas& canvas, const Rect& rect, bool coat_hangs);
void draw_goggles_hook(Canvas& canvas, const Rect& rect, bool goggles_hang);

}  // namespace halfdrop

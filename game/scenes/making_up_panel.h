#pragma once
// A standard being made up: in the frame of the eye's picture, in place of the burette, stand balance,
// weighing bottle, beaker and flask, or the flask's neck once there is something to be seen in it; below them
// what can be done, by key or mouse.

#include "game/scenes/canvas.h"
#include "game/scenes/things.h"

namespace halfdrop {

/// A line of the panel: its key is its number.
struct MakingUpLine {
  std::string name;  ///< for driving by mouse: "tip-out", "dissolve", ...
  std::optional<Deed> deed;
  Grip grip = Grip::none;  ///< while it is held: tip, let_in
};
[[nodiscard]] const std::vector<MakingUpLine>& making_up_lines();
/// How far bottle or water is tilted by a hand, gently or not.
[[nodiscard]] double making_up_strength(Grip grip, bool gently);

/// What of it can be clicked or held. `area` as the eye's picture.
[[nodiscard]] std::vector<Thing> making_up_things(const Rect& area, bool large);
/// `large`: words at 4 % of the height.
void draw_making_up(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec, bool large);

/// The volumetric flask upright in a place, with so much in it.
void draw_volumetric(Canvas& canvas, const Rect& rect, const PreparationView& work, const BenchSpec& spec,
                     const std::string& label);

}  // namespace halfdrop

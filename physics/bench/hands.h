#pragma once

namespace halfdrop {

/// What the player holds this instant. Held until changed.
struct Hands {
  double tap = 1.0;      ///< 0 across the burette (shut) .. 1 in line (open); a bench left overnight is open
  double eye_mm = 60.0;  ///< eye above where the zero mark is while the clamps stand at 0 (negative: below)
  double flask_x_cm = 26.0;   ///< flask's axis from under the jet
  double flask_y_cm = 0.0;    ///< flask's foot above where it stands
  double swirl = 0.0;         ///< 0 still .. 1 vigorous
  double wash = 0.0;          ///< wash bottle squeezed, 0..1, aimed at the flask's neck
  double pour = 0.0;          ///< bottle in hand tilted over the burette, 0..1
  double tilt_degrees = 0.0;  ///< burette in the hand, from upright, and turned about (rinsing.h)
  double card_mm =
      60.0;  ///< upper edge of the card's dark half above the zero mark, clipped to the tube; only seen
  double clamp_mm = 0.0;  ///< burette raised in its clamps from where it stands at first (negative: lowered)

  double valve =
      0.0;           ///< pipette's filler: -1 draws up .. 0 holds .. 1 lets air in, so that it runs (by hand)
  double tip = 0.0;  ///< weighing bottle tilted over the beaker, 0..1 (preparation.h)
  double fill = 0.0;  ///< water let into the volumetric flask, 0..1

  friend bool operator==(const Hands&, const Hands&) = default;
};

/// The eye is the player's own, in the room: lowering the burette by 200 mm raises the eye over its scale by
/// as much.
[[nodiscard]] constexpr double eye_above_zero_mm(const Hands& hands) { return hands.eye_mm - hands.clamp_mm; }

/// Low enough for the last mark of a burette that hangs lowered over the bench's edge, on one's knees.
inline constexpr double kEyeLowest_mm = -900.0;
inline constexpr double kEyeHighest_mm = 300.0;
/// As far as a stand's rod lets both clamps slide (our own bench).
inline constexpr double kClampLowest_mm = -300.0, kClampHighest_mm = 30.0;
inline constexpr double kFlaskReach_cm = 40.0;
inline constexpr double kFlaskLift_cm = 10.0;

}  // namespace halfdrop

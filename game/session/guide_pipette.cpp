// The guide's steps with a pipette that is worked by hand: from the sample's bottle to the flask's wall.

#include "game/session/guide_stages.h"

namespace halfdrop::guide {

namespace {

constexpr double kWellAbove_mm = 10.0;  ///< the line, drawn up
constexpr double kAtLine_mm = 0.3;      ///< above it: 0.005 cm3
constexpr double kEyeAtLine_mm = 3.0;   ///< off: moves the level by some hundredths of a mm

const PipetteView& pipette(F f) { return f.seen.pipette; }
bool by_hand(F f) { return under_way(f) && f.aliquots == 0 && f.level->pipette.by_hand; }
bool is_at(F f, PipettePlace place) { return pipette(f).place == place; }
bool over_flask(F f) { return is_at(f, PipettePlace::at_wall) || is_at(f, PipettePlace::over_flask); }
bool well_above(F f) { return pipette(f).seen_mm >= kWellAbove_mm; }
/// Lifted out and not yet let down.
bool lifted(F f) { return by_hand(f) && is_at(f, PipettePlace::aside) && pipette(f).holds; }
bool too_low(F f) { return !pipette(f).holds || pipette(f).seen_mm < kPipetteTooLow_mm; }
bool at_line(F f) {
  return pipette(f).seen_mm <= kAtLine_mm && pipette(f).seen_mm >= kPipetteTooLow_mm && f.hands.valve <= 0.0;
}
bool eye_at_line(F f) {
  return pipette(f).eye_above_mm <= kEyeAtLine_mm && pipette(f).eye_above_mm >= -kEyeAtLine_mm;
}
bool delivering(F f) { return by_hand(f) && over_flask(f); }

std::string why_dip(F f) {
  if (pipette(f).holds) return "Its level fell below the line: draw up again, for air does not fill it.";
  return "With its tip deep it draws no air. Never by mouth.";
}

const std::vector<GuideStep> kPipette = {
    {"pipette-aside",
     by_hand,
     [](F f) { return !f.seen.flask_under_jet; },
     say<"Set the flask aside.">,
     say<"The pipette needs the room above it.">,
     {},
     {},
     ""},
    {"pipette-dip",
     [](F f) { return by_hand(f) && is_at(f, PipettePlace::aside); },
     [](F f) { return !is_at(f, PipettePlace::aside) || !too_low(f); },
     say<"Dip the pipette into the sample, its tip deep.">,
     why_dip,
     Deed::dip_pipette,
     {},
     ""},
    {"pipette-draw",
     [](F f) { return by_hand(f) && is_at(f, PipettePlace::dipped); },
     well_above,
     say<"Draw the sample up with the filler, to well above the line.">,
     say<"The line is met from above: what is too much runs out, what is too little would be air.">,
     {},
     {},
     ""},
    {"pipette-lift",
     [](F f) { return by_hand(f) && is_at(f, PipettePlace::dipped); },
     [](F f) { return !is_at(f, PipettePlace::dipped); },
     say<"Lift the pipette out, over the waste.">,
     say<"What is let down to the line is thrown away, not put back into the bottle.">,
     Deed::lift_pipette,
     {},
     ""},
    {"pipette-wipe",
     lifted,
     [](F f) { return !pipette(f).outside_wet; },
     say<"Wipe the outside of its tip.">,
     say<"What clings there would ride over into the flask, 0.03 cm³ too much: the titre comes out too "
         "large.">,
     Deed::wipe_pipette,
     {},
     ""},
    {"pipette-eye",
     lifted,
     eye_at_line,
     say<"Bring your eye level with the pipette's line.">,
     say<"From above the level is set too low, from below too high.">,
     {},
     {},
     ""},
    {"pipette-line",
     lifted,
     at_line,
     say<"Let the bottom of the meniscus down to the line.">,
     say<"A millimetre of this stem is 0.016 cm³: let air in gently.">,
     {},
     {},
     ""},
    {"pipette-lean",
     lifted,
     over_flask,
     say<"Hold it over the flask, its tip on the wall of the neck.">,
     say<"So it drains as it was made to; a tip that touches nothing keeps a drop more.">,
     Deed::lean_pipette,
     {},
     ""},
    {"pipette-run",
     delivering,
     [](F f) { return !pipette(f).holds || pipette(f).drains || pipette(f).flow_cm3_s > 0.0; },
     say<"Let it run into the flask.">,
     say<"By its own weight: blown out it would give more than it should.">,
     {},
     {},
     ""},
    {"pipette-drain",
     [](F f) { return delivering(f) && is_at(f, PipettePlace::at_wall); },
     [](F f) { return !pipette(f).holds; },
     say<"Let it run out, and wait five seconds more.">,
     say<"Film still runs down inside. Taken away sooner it delivers too little: the titre comes out too "
         "small.">,
     {},
     {},
     ""},
    {"pipette-touch",
     delivering,
     [](F f) { return is_at(f, PipettePlace::at_wall) || !pipette(f).holds; },
     say<"Touch its tip to the wall of the neck.">,
     say<"The drop that hangs there belongs to its volume.">,
     Deed::lean_pipette,
     {},
     ""},
    {"pipette-away",
     delivering,
     [](F f) { return !over_flask(f); },
     say<"Take the pipette away.">,
     say<"What stays in its tip belongs there: it was made to deliver its volume without.">,
     Deed::lift_pipette,
     {},
     ""},
};

}  // namespace

std::span<const GuideStep> steps_with_pipette() { return kPipette; }

}  // namespace halfdrop::guide

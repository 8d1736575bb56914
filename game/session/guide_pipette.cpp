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
  if (pipette(f).holds) return say("guide.pipette_dip.why_again");
  return say("guide.pipette_dip.why");
}

const std::vector<GuideStep> kPipette = {
    {"pipette-aside",
     by_hand,
     [](F f) { return !f.seen.flask_under_jet; },
     says<"guide.pipette_aside.do">,
     says<"guide.pipette_aside.why">,
     {},
     {},
     ""},
    {"pipette-dip",
     [](F f) { return by_hand(f) && is_at(f, PipettePlace::aside); },
     [](F f) { return !is_at(f, PipettePlace::aside) || !too_low(f); },
     says<"guide.pipette_dip.do">,
     why_dip,
     Deed::dip_pipette,
     {},
     ""},
    {"pipette-draw",
     [](F f) { return by_hand(f) && is_at(f, PipettePlace::dipped); },
     well_above,
     says<"guide.pipette_draw.do">,
     says<"guide.pipette_draw.why">,
     {},
     {},
     ""},
    {"pipette-lift",
     [](F f) { return by_hand(f) && is_at(f, PipettePlace::dipped); },
     [](F f) { return !is_at(f, PipettePlace::dipped); },
     says<"guide.pipette_lift.do">,
     says<"guide.pipette_lift.why">,
     Deed::lift_pipette,
     {},
     ""},
    {"pipette-wipe",
     lifted,
     [](F f) { return !pipette(f).outside_wet; },
     says<"guide.pipette_wipe.do">,
     says<"guide.pipette_wipe.why">,
     Deed::wipe_pipette,
     {},
     ""},
    {"pipette-eye",
     lifted,
     eye_at_line,
     says<"guide.pipette_eye.do">,
     says<"guide.pipette_eye.why">,
     {},
     {},
     ""},
    {"pipette-line",
     lifted,
     at_line,
     says<"guide.pipette_line.do">,
     says<"guide.pipette_line.why">,
     {},
     {},
     ""},
    {"pipette-lean",
     lifted,
     over_flask,
     says<"guide.pipette_lean.do">,
     says<"guide.pipette_lean.why">,
     Deed::lean_pipette,
     {},
     ""},
    {"pipette-run",
     delivering,
     [](F f) { return !pipette(f).holds || pipette(f).drains || pipette(f).flow_cm3_s > 0.0; },
     says<"guide.pipette_run.do">,
     says<"guide.pipette_run.why">,
     {},
     {},
     ""},
    {"pipette-drain",
     [](F f) { return delivering(f) && is_at(f, PipettePlace::at_wall); },
     [](F f) { return !pipette(f).holds; },
     says<"guide.pipette_drain.do">,
     says<"guide.pipette_drain.why">,
     {},
     {},
     ""},
    {"pipette-touch",
     delivering,
     [](F f) { return is_at(f, PipettePlace::at_wall) || !pipette(f).holds; },
     says<"guide.pipette_touch.do">,
     says<"guide.pipette_touch.why">,
     Deed::lean_pipette,
     {},
     ""},
    {"pipette-away",
     delivering,
     [](F f) { return !over_flask(f); },
     says<"guide.pipette_away.do">,
     says<"guide.pipette_away.why">,
     Deed::lift_pipette,
     {},
     ""},
};

}  // namespace

std::span<const GuideStep> steps_with_pipette() { return kPipette; }

}  // namespace halfdrop::guide

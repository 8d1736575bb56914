// The guide's steps for glass that stands wet: burette and pipette are rinsed with what they are to hold.

#include "game/session/guide_stages.h"
#include "physics/burette/rinsing.h"

namespace halfdrop::guide {

namespace {

constexpr int kRinses = 2;
constexpr double kALittle_cm3 = 2.0;  ///< meniscus so far above the last mark

bool aslant(F f) { return f.hands.tilt_degrees >= kRolls_degrees; }
/// More than what runs down an emptied tube's wall.
bool liquid_in_tube(F f) {
  const BuretteSpec& burette = f.level->burette;
  return aslant(f) || (f.seen.meniscus_in_sight &&
                       f.seen.reading_cm3 < burette.nominal_cm3 + 0.5 * burette.below_scale_cm3);
}
/// What was turned about is still in the tube.
bool to_be_thrown_away(F f) { return f.turned_about && liquid_in_tube(f); }

bool not_turned(F f) { return rinsing(f) && !to_be_thrown_away(f); }
bool poured_in(F f) {
  return aslant(f) ||
         (f.seen.meniscus_in_sight && f.seen.reading_cm3 < f.level->burette.nominal_cm3 - kALittle_cm3);
}
bool pipette_to_be_rinsed(F f) {
  return preparing(f) && f.aliquots == 0 && !f.pipette_full && f.level->pipette.wet_cm3 > 0.0;
}

const std::vector<GuideStep> kRinsing = {
    {"take-up-titrant",
     [](F f) { return preparing(f) && f.funnel_in; },
     [](F f) { return f.in_hand == Bottle::titrant; },
     says<"guide.take_up_titrant.do">,
     says<"guide.take_up_titrant.why">,
     Deed::take_up_titrant,
     {},
     ""},
    {"rinse-beaker",
     [](F f) { return rinsing(f) && !f.over_edge; },
     [](F f) { return f.seen.beaker_under; },
     says<"guide.rinse_beaker.do">,
     says<"guide.rinse_beaker.why">,
     Deed::put_beaker_under,
     {},
     ""},
    {"rinse-funnel-in",
     [](F f) { return not_turned(f) && !liquid_in_tube(f); },
     [](F f) { return f.funnel_in; },
     says<"guide.rinse_funnel_in.do">,
     says<"guide.rinse_funnel_in.why">,
     Deed::put_in_funnel,
     {},
     ""},
    {"rinse-pour",
     [](F f) { return not_turned(f) && f.funnel_in; },
     poured_in,
     says<"guide.rinse_pour.do">,
     says<"guide.rinse_pour.why">,
     {},
     {},
     ""},
    {"rinse-funnel-out",
     [](F f) { return not_turned(f) && liquid_in_tube(f); },
     [](F f) { return !f.funnel_in; },
     says<"guide.rinse_funnel_out.do">,
     says<"guide.rinse_funnel_out.why">,
     Deed::lift_out_funnel,
     {},
     ""},
    {"rinse-turn",
     [](F f) { return not_turned(f) && poured_in(f) && !f.funnel_in; },
     [](F f) { return f.turned_about; },
     says<"guide.rinse_turn.do">,
     says<"guide.rinse_turn.why">,
     {},
     {},
     ""},
    {"rinse-out",
     [](F f) { return rinsing(f) && to_be_thrown_away(f) && f.seen.beaker_under; },
     [](F f) { return !liquid_in_tube(f); },
     says<"guide.rinse_out.do">,
     says<"guide.rinse_out.why">,
     {},
     {},
     ""},
    {"rinse-pipette",
     pipette_to_be_rinsed,
     [](F f) { return f.pipette_rinsed; },
     says<"guide.rinse_pipette.do">,
     says<"guide.rinse_pipette.why">,
     Deed::rinse_pipette_with_sample,
     {},
     ""},
};

}  // namespace

bool rinsing(F f) {
  if (!preparing(f) || f.expected_cm3 || f.level->burette.wet_cm3 <= 0.0) return false;
  return f.rinses < kRinses || to_be_thrown_away(f);
}

bool rinses_out(F f) { return rinsing(f) && to_be_thrown_away(f) && f.seen.beaker_under; }

bool rinse_to_be_poured(F f) { return not_turned(f) && (f.funnel_in ? !poured_in(f) : !liquid_in_tube(f)); }

std::span<const GuideStep> steps_of_rinsing() { return kRinsing; }

}  // namespace halfdrop::guide

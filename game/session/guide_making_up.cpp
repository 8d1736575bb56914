// The guide's steps in making up a standard: from the weighing bottle to the flask turned over.

#include "game/session/guide_stages.h"

namespace halfdrop::guide {

namespace {

constexpr double kAtLine_mm = 0.3, kNearLine_mm = 15.0;  ///< 0.05 cm3, and well in sight
constexpr double kEyeAtLine_mm = 3.0;
constexpr int kWashings = 3, kInversions = 10;

const PreparationView& work(F f) { return f.seen.preparation; }
/// Until it is used, in whatever order the rest was done.
bool making_up(F f) { return under_way(f) && f.level->standard && !f.standard_used; }
bool weighing(F f) { return making_up(f) && f.poured_over == 0; }
bool filling(F f) {
  return making_up(f) && f.poured_over > 0 && (work(f).inversions == 0 || !work(f).in_neck);
}
bool at_line(F f) { return work(f).bottom_mm >= -kAtLine_mm; }

std::string tip_words(F f) {
  const Range serves = f.level->standard ? f.level->standard->mass_g : Range{};
  return say("guide.standard_tip.do",
             {{"least", one_decimal(serves.low)}, {"most", one_decimal(serves.high)}});
}

const std::vector<GuideStep> kMakingUp = {
    {"standard-before",
     weighing,
     [](F f) { return !f.bottle_before.empty(); },
     says<"guide.standard_before.do">,
     says<"guide.standard_before.why">,
     {},
     {},
     kBottleBefore},
    {"standard-tip",
     weighing,
     [](F f) {
       return f.hands.tip <= 0.0 &&
              (!f.bottle_after.empty() || f.weighed_out_g >= f.level->standard->mass_g.low);
     },
     tip_words,
     says<"guide.standard_tip.why">,
     {},
     {},
     ""},
    {"standard-after",
     weighing,
     [](F f) { return !f.bottle_after.empty(); },
     says<"guide.standard_after.do">,
     says<"guide.standard_after.why">,
     {},
     {},
     kBottleAfter},
    {"standard-dissolve",
     weighing,
     [](F f) { return work(f).to_pour; },
     says<"guide.standard_dissolve.do">,
     says<"guide.standard_dissolve.why">,
     Deed::dissolve_standard,
     {},
     ""},
    {"standard-pour",
     weighing,
     [](F f) { return f.poured_over > 0; },
     says<"guide.standard_pour.do">,
     says<"guide.standard_pour.why">,
     Deed::pour_into_volumetric,
     {},
     ""},
    {"standard-rinse",
     [](F f) { return filling(f) && !work(f).in_neck; },
     [](F f) { return f.washings >= kWashings; },
     says<"guide.standard_rinse.do">,
     says<"guide.standard_rinse.why">,
     Deed::rinse_into_volumetric,
     {},
     ""},
    {"standard-fill",
     filling,
     [](F f) { return work(f).bottom_mm >= -kNearLine_mm; },
     says<"guide.standard_fill.do">,
     says<"guide.standard_fill.why">,
     {},
     {},
     ""},
    {"standard-eye",
     [](F f) { return filling(f) && !at_line(f); },
     [](F f) { return work(f).eye_above_mm <= kEyeAtLine_mm && work(f).eye_above_mm >= -kEyeAtLine_mm; },
     says<"guide.standard_eye.do">,
     says<"guide.standard_eye.why">,
     {},
     {},
     ""},
    {"standard-line",
     filling,
     [](F f) { return at_line(f) && f.hands.fill <= 0.0; },
     says<"guide.standard_line.do">,
     says<"guide.standard_line.why">,
     {},
     {},
     ""},
    {"standard-invert",
     [](F f) { return making_up(f) && f.poured_over > 0; },
     [](F f) { return work(f).inversions >= kInversions; },
     says<"guide.standard_invert.do">,
     says<"guide.standard_invert.why">,
     Deed::invert_volumetric,
     {},
     ""},
};

}  // namespace

std::span<const GuideStep> steps_of_making_up() { return kMakingUp; }

}  // namespace halfdrop::guide

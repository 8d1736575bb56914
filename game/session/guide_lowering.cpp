// The guide's steps for a burette that is to be filled with its top below eye level: out over the bench's
// edge and down, and back again once it is filled.

#include <cmath>

#include "game/session/guide_stages.h"

namespace halfdrop::guide {

namespace {

constexpr double kBackUp_mm = 10.0;

bool to_be_lowered(F f) { return f.level->filling_below_eye && preparing(f) && shut(f) && to_be_poured(f); }
bool to_be_raised(F f) { return f.over_edge && !f.funnel_in && !(preparing(f) && to_be_poured(f)); }
bool at_its_height(F f) { return std::fabs(f.hands.clamp_mm) <= kBackUp_mm; }

const std::vector<GuideStep> kLowering = {
    {"swing-out",
     to_be_lowered,
     [](F f) { return f.over_edge; },
     says<"guide.swing_out.do">,
     says<"guide.swing_out.why">,
     Deed::swing_over_edge,
     {},
     ""},
    {"lower",
     [](F f) { return to_be_lowered(f) && f.over_edge; },
     [](F f) { return f.top_below_eye; },
     says<"guide.lower.do">,
     says<"guide.lower.why">,
     {},
     {},
     ""},
    {"raise", to_be_raised, at_its_height, says<"guide.raise.do">, says<"guide.raise.why">, {}, {}, ""},
    {"swing-back",
     to_be_raised,
     [](F f) { return !f.over_edge; },
     says<"guide.swing_back.do">,
     says<"guide.swing_back.why">,
     Deed::swing_back,
     {},
     ""},
};

}  // namespace

std::span<const GuideStep> steps_of_lowering() { return kLowering; }

}  // namespace halfdrop::guide

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
     say<"Swing the burette out over the bench's edge.">,
     say<"There it has room to go down: its top must come below your eyes before you pour.">,
     Deed::swing_over_edge,
     {},
     ""},
    {"lower",
     [](F f) { return to_be_lowered(f) && f.over_edge; },
     [](F f) { return f.top_below_eye; },
     say<"Lower it in its clamps until its top is below your eyes.">,
     say<"Poured above eye level, what runs over comes down on your face. Never climb up to a burette.">,
     {},
     {},
     ""},
    {"raise",
     to_be_raised,
     at_its_height,
     say<"Raise the burette again.">,
     say<"The jet has to clear the bench, and to reach just into the flask's neck.">,
     {},
     {},
     ""},
    {"swing-back",
     to_be_raised,
     [](F f) { return !f.over_edge; },
     say<"Swing the burette back over the tile.">,
     say<"Over the edge, whatever leaves the jet falls on the floor.">,
     Deed::swing_back,
     {},
     ""},
};

}  // namespace

std::span<const GuideStep> steps_of_lowering() { return kLowering; }

}  // namespace halfdrop::guide

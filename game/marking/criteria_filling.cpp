// How high the burette's top was while it was filled: a level's rule, told as advice. No points and no gate.

#include "game/marking/criteria.h"
#include "game/marking/wording.h"
#include "physics/bench/clamp.h"

namespace halfdrop {

Finding filled_below_eye(const Evidence& evidence, Tick end) {
  Finding finding{Score::hand, "filled-below-eye", false, 0.0, 0.0, "", end, std::nullopt, ""};
  if (evidence.poured_top_mm <= 0.0) {
    finding.seen = "The burette was never filled.";
    finding.judged = false;
    return finding;
  }
  const std::string top = "its top " + figure_text(evidence.poured_top_mm, 0) + " mm above the bench";
  const std::string eye =
      "(a standing eye is taken to be " + figure_text(kStandingEye_mm, 0) + " mm above it)";
  finding.met = !evidence.poured_above_eye;
  finding.tick = evidence.poured_above_eye.value_or(evidence.first_liquid.value_or(0));
  if (finding.met) {
    finding.seen = "The burette was filled with its top below eye level: " + top + " at most " + eye + ".";
  } else {
    finding.seen = "The burette was filled with its top above eye level: " + top + " " + eye + ".";
    finding.advice =
        "Swing it over the bench's edge and lower it before you pour; never lift the bottle above your eyes.";
  }
  return finding;
}

}  // namespace halfdrop

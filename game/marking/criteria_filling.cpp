// How high the burette's top was while it was filled: a level's rule, told as advice. No points and no gate.

#include "game/level/say.h"
#include "game/marking/criteria.h"
#include "game/marking/wording.h"
#include "physics/bench/clamp.h"

namespace halfdrop {

Finding filled_below_eye(const Evidence& evidence, Tick end) {
  Finding finding{Score::hand, "filled-below-eye", false, 0.0, 0.0, "", end, std::nullopt, ""};
  if (evidence.poured_top_mm <= 0.0) {
    finding.seen = say("find.filled_below_eye.never");
    finding.judged = false;
    return finding;
  }
  const std::string top = figure_text(evidence.poured_top_mm, 0) + " mm",
                    eye = figure_text(kStandingEye_mm, 0) + " mm";
  finding.met = !evidence.poured_above_eye;
  finding.tick = evidence.poured_above_eye.value_or(evidence.first_liquid.value_or(0));
  if (finding.met) {
    finding.seen = say("find.filled_below_eye.right", {{"top", top}, {"eye", eye}});
  } else {
    finding.seen = say("find.filled_below_eye.wrong", {{"top", top}, {"eye", eye}});
    finding.advice = say("find.filled_below_eye.advice");
  }
  return finding;
}

}  // namespace halfdrop

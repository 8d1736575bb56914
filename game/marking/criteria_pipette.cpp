// Hand: the pipette where it is worked by hand. Its last drop is with the rinsing.

#include <array>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "physics/bench/pipette_by_hand.h"

namespace halfdrop {

namespace {

/// Off the line by less than this counts as met: a millimetre and a quarter of the stem (our own choice;
/// class A allows the glass 0.03, ISO 648).
constexpr double kOnLine_cm3 = 0.02;
/// Of film or a drop left in it.
constexpr double kDrained_cm3 = 0.01;
/// An eye this far off a level is said to have been off.
constexpr double kEyeOff_mm = 20.0;

/// What so much more of the sample does to the titre.
std::optional<double> in_titre_cm3(const Case& marked, const RunView& run, double sample_cm3) {
  if (run.breakdown == nullptr) return std::nullopt;
  return sample_cm3 * run.breakdown->ideal_cm3 / marked.level().aliquot_cm3;
}

std::string mm_text(double mm) { return figure_text(std::fabs(mm), 0) + " mm"; }

std::string eye_text(const PipetteUse& use) {
  if (std::fabs(use.eye_above_mm) < kEyeOff_mm) return "";
  const std::string off = mm_text(use.eye_above_mm);
  return use.eye_above_mm > 0.0 ? say("find.pipette_to_line.eye_above", {{"off", off}})
                                : say("find.pipette_to_line.eye_below", {{"off", off}});
}

std::optional<Slip> to_line(const Case& marked, const RunView& run) {
  const PipetteUse& use = run.flask->pipette;
  const double off_cm3 = use.off_line_cm3 - use.air_cm3;
  if (use.at_flask == 0 || std::fabs(off_cm3) <= kOnLine_cm3) return std::nullopt;
  const bool froth = use.air_cm3 > kOnLine_cm3;
  const std::string mm = figure_text(std::fabs(use.off_line_cm3) / kStem_cm3_mm, 1) + " mm",
                    off = cm3_text(std::fabs(off_cm3)), eye = eye_text(use);
  const std::string what = froth ? say("find.pipette_to_line.air", {{"air", cm3_text(use.air_cm3)}})
                           : off_cm3 > 0.0
                               ? say("find.pipette_to_line.above", {{"mm", mm}, {"off", off}, {"eye", eye}})
                               : say("find.pipette_to_line.below", {{"mm", mm}, {"off", off}, {"eye", eye}});
  return Slip{std::fabs(off_cm3), what, use.at_flask, in_titre_cm3(marked, run, off_cm3)};
}

std::optional<Slip> wiped(const Case& marked, const RunView& run) {
  const PipetteUse& use = run.flask->pipette;
  if (use.outside_cm3 <= 0.0) return std::nullopt;
  return Slip{use.outside_cm3, say("find.pipette_wiped.wrong", {{"outside", cm3_text(use.outside_cm3)}}),
              use.at_flask, in_titre_cm3(marked, run, use.outside_cm3)};
}

std::optional<Slip> drained(const Case& marked, const RunView& run) {
  const PipetteUse& use = run.flask->pipette;
  if (use.not_given_cm3 <= kDrained_cm3) return std::nullopt;
  return Slip{use.not_given_cm3, say("find.pipette_drained.wrong", {{"left", cm3_text(use.not_given_cm3)}}),
              use.taken_away, in_titre_cm3(marked, run, -use.not_given_cm3)};
}

const std::array<RunRule, 3> kRules = {{
    {Score::hand, "pipette-to-line", 0.5, Needs::both, Shown::initial, false, "find.pipette_to_line.right",
     "find.pipette_to_line.advice", to_line},
    {Score::hand, "pipette-wiped", 0.5, Needs::both, Shown::initial, false, "find.pipette_wiped.right",
     "find.pipette_wiped.advice", wiped},
    {Score::hand, "pipette-drained", 0.5, Needs::both, Shown::initial, false, "find.pipette_drained.right",
     "find.pipette_drained.advice", drained},
}};

}  // namespace

void mark_pipette(const Case& marked, std::vector<Finding>& hand) {
  if (!marked.level().pipette.by_hand) return;
  for (const RunRule& rule : kRules) hand.push_back(judge(marked, rule));
}

}  // namespace halfdrop

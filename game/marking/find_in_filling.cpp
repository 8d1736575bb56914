// What the drill "fill without air" says of a burette that is ready for its first reading, or not.

#include <cmath>

#include "game/level/say.h"
#include "game/marking/drill_marks.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "game/marking/written_number.h"

namespace halfdrop {

namespace {

struct Rule {
  Score score;
  const char* id;
  double of;
};

Finding all_or_nothing(const Rule& rule, const FillingDrill& drill, bool met, const std::string& seen,
                       Phrase advice) {
  Finding finding{rule.score, rule.id, met, met ? rule.of : 0.0, rule.of, seen, drill.tick, std::nullopt, ""};
  if (!met) finding.advice = advice;
  return finding;
}

constexpr Phrase kNothingWritten{"drill.filling.advice.write"};

Finding unjudged(Finding finding) {
  finding.met = finding.judged = false;
  finding.points = 0.0;
  finding.cost_cm3.reset();
  finding.seen = say("drill.filling.no_reading");
  finding.advice = kNothingWritten;
  return finding;
}

Finding on_scale(const FillingDrill& drill) {
  const Rule rule{Score::hand, "on-scale", 1.0};
  const std::string at = figure_text(drill.true_cm3, 2);
  if (drill.running)
    return all_or_nothing(rule, drill, false, say("drill.filling.still_falling", {{"at", at}}),
                          "drill.filling.advice.wait");
  return all_or_nothing(rule, drill, drill.on_scale,
                        drill.on_scale ? say("drill.filling.on_scale", {{"at", at}})
                                       : say("drill.filling.off_scale", {{"at", at}}),
                        "drill.filling.advice.scale");
}

/// Costs are signed as in a titre that would begin with this reading.
std::vector<Finding> of_the_hand(const FillingDrill& drill) {
  const bool full = drill.jet_air_cm3 <= kSeenInJet_cm3, no_drop = drill.hanging_cm3 <= kSeenHanging_cm3;
  std::vector<Finding> hand = {
      all_or_nothing({Score::hand, "jet-filled", 3.0}, drill, full,
                     full ? say("drill.filling.no_air")
                          : say("drill.filling.air", {{"size", cm3_text(drill.jet_air_cm3)}}),
                     "drill.filling.advice.air"),
      all_or_nothing({Score::hand, "funnel-out", 2.0}, drill, !drill.funnel_in,
                     drill.funnel_in ? say("drill.filling.funnel_in", {{"size", cm3_text(drill.funnel_cm3)}})
                                     : say("drill.filling.funnel_out"),
                     "drill.filling.advice.funnel"),
      all_or_nothing({Score::hand, "no-drop", 1.0}, drill, no_drop,
                     no_drop ? say("drill.filling.no_drop")
                             : say("drill.filling.drop", {{"size", cm3_text(drill.hanging_cm3, 3)}}),
                     "drill.filling.advice.drop"),
      on_scale(drill)};
  hand[0].cost_cm3 = drill.jet_air_cm3;
  hand[1].cost_cm3 = -drill.funnel_cm3;
  hand[2].cost_cm3 = -drill.hanging_cm3;
  return hand;
}

std::vector<Finding> of_the_eye(const FillingDrill& drill, const Level& level) {
  const double parallax_cm3 = drill.apparent_cm3 - drill.true_cm3;
  const bool is_level = std::fabs(parallax_cm3) <= kLevelEye_cm3;
  Finding height = all_or_nothing(
      {Score::eye, "eye-level", 1.0}, drill, is_level,
      is_level             ? say("drill.filling.eye_level")
      : parallax_cm3 < 0.0 ? say("drill.filling.eye_above", {{"size", signed_cm3_text(parallax_cm3)}})
                           : say("drill.filling.eye_below", {{"size", signed_cm3_text(parallax_cm3)}}),
      "find.eye_level.advice");
  height.cost_cm3 = -parallax_cm3;
  const double error_cm3 = drill.error_cm3().value_or(0.0);
  const double of = level.eye_bands.front().points;
  Finding error{Score::eye, "reading-error", false, 0.0, of, "", drill.tick, -error_cm3, ""};
  error.points = band_points(level.eye_bands, error_cm3);
  error.met = error.points == of;
  error.seen = say("drill.filling.error", {{"text", as_written(drill.text)},
                                           {"true", figure_text(drill.true_cm3, 3)},
                                           {"error", signed_cm3_text(error_cm3, 3)}});
  if (!error.met) error.advice = say("drill.filling.advice.error");
  if (!drill.error_cm3()) error = unjudged(error);
  return {height, error};
}

Finding of_the_record(const FillingDrill& drill) {
  const bool met = written_to_half_a_division(drill.text);
  return all_or_nothing({Score::record, "half-divisions", 1.0}, drill, met,
                        met ? say("drill.filling.decimals", {{"text", as_written(drill.text)}})
                            : say("drill.filling.not_decimals", {{"text", as_written(drill.text)}}),
                        "drill.filling.advice.decimals");
}

}  // namespace

void find_in_filling(const FillingDrill& drill, const Level& level, std::vector<Finding>& findings) {
  std::vector<Finding> hand = of_the_hand(drill), eye = of_the_eye(drill, level),
                       record = {of_the_record(drill)};
  for (std::vector<Finding>* score : {&hand, &eye, &record}) {
    for (Finding& finding : *score) {
      if (!drill.looked) finding = unjudged(finding);
    }
  }
  append_findings(Score::hand, std::move(hand), findings, kNothingWritten);
  append_findings(Score::eye, std::move(eye), findings, kNothingWritten);
  append_findings(Score::record, std::move(record), findings, kNothingWritten);
}

}  // namespace halfdrop

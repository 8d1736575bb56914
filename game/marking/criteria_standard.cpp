// A standard weighed out by difference and made up: its weighings (record), and what the hand did with it.

#include <cmath>

#include "game/level/say.h"
#include "game/level/standard_to_make.h"
#include "game/marking/criteria.h"
#include "game/marking/wording.h"
#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

/// Half a millimetre of the neck (our own choice; class A allows the glass 0.15 cm3, ISO 1042).
constexpr double kOnLine_cm3 = 0.10;
constexpr int kEnoughWashings = 2, kEnoughInversions = 10;
/// Of the solid left in beaker, rod and funnel: one washing leaves 1e-4 of it, two a fortieth of that.
constexpr double kLittleLeft = 5e-5;
/// An eye this far off the line is said to have been off.
constexpr double kEyeOff_mm = 20.0;
constexpr double kSameWeight_g = 0.1 * kBalanceShows_g;

const MadeUp& made_up(const Case& marked) { return marked.evidence.standard.made_up(); }

/// What a standard stronger by this share does to a titre.
std::optional<double> in_titre_cm3(const Case& marked, double stronger) {
  for (const TitreRow& row : marked.titres) {
    if (!row.breakdown) continue;
    return (marked.level().unknown_in_flask ? -stronger : stronger) * row.breakdown->ideal_cm3;
  }
  return std::nullopt;
}

Finding open(const Case& marked, Score score, const char* id) {
  const MadeUp& made = made_up(marked);
  Finding finding{score, id, false, 0.0, 1.0, "", made.at, std::nullopt, ""};
  if (made.in_flask_cm3 > 0.0 && made.tipped_out_g > 0.0) return finding;
  finding.judged = false;
  finding.tick = marked.end();
  finding.seen = say("find.standard.never_made");
  finding.advice = say("find.standard.never_made.advice");
  return finding;
}

Finding& met(Finding& finding, std::string seen) {
  finding.met = true;
  finding.points = finding.of;
  finding.seen = std::move(seen);
  return finding;
}

Finding& missed(Finding& finding, std::string seen, Phrase advice) {
  finding.seen = std::move(seen);
  finding.advice = say(advice);
  return finding;
}

Finding washings_in(const Case& marked) {
  Finding finding = open(marked, Score::hand, "washings-in");
  if (!finding.judged) return finding;
  const MadeUp& made = made_up(marked);
  const std::string left = figure_text(100.0 * made.left_in_beaker, 2) + " %",
                    count = std::to_string(made.washings);
  const std::string seen = say("find.washings_in.seen", {{"count", count}, {"left", left}});
  if (made.washings >= kEnoughWashings && made.left_in_beaker <= kLittleLeft) return met(finding, seen);
  finding.cost_cm3 = in_titre_cm3(marked, -made.left_in_beaker);
  return missed(finding, seen, "find.washings_in.advice");
}

std::string eye_text(const MadeUp& made) {
  if (std::fabs(made.eye_above_mm) < kEyeOff_mm) return "";
  const std::string off = figure_text(std::fabs(made.eye_above_mm), 0) + " mm";
  return made.eye_above_mm > 0.0 ? say("find.made_to_mark.eye_above", {{"off", off}})
                                 : say("find.made_to_mark.eye_below", {{"off", off}});
}

Finding made_to_mark(const Case& marked) {
  Finding finding = open(marked, Score::hand, "made-to-mark");
  if (!finding.judged) return finding;
  const MadeUp& made = made_up(marked);
  const double off_cm3 = made.off_line_cm3;
  if (std::fabs(off_cm3) <= kOnLine_cm3) return met(finding, say("find.made_to_mark.right"));
  const std::string mm = figure_text(std::fabs(off_cm3) / kNeck_cm3_mm, 1) + " mm",
                    off = cm3_text(std::fabs(off_cm3)), eye = eye_text(made);
  finding.cost_cm3 = in_titre_cm3(marked, -off_cm3 / marked.level().standard->flask_cm3);
  return missed(finding,
                off_cm3 > 0.0 ? say("find.made_to_mark.above", {{"mm", mm}, {"off", off}, {"eye", eye}})
                              : say("find.made_to_mark.below", {{"mm", mm}, {"off", off}, {"eye", eye}}),
                "find.made_to_mark.advice");
}

Finding turned_over(const Case& marked) {
  Finding finding = open(marked, Score::hand, "turned-over");
  if (!finding.judged) return finding;
  const int count = made_up(marked).inversions;
  const std::string seen = say("find.turned_over.seen", {{"count", std::to_string(count)}});
  if (count >= kEnoughInversions) return met(finding, seen);
  return missed(finding, seen, "find.turned_over.advice");
}

/// As the balance showed it, with its last figure.
bool is_weight(const Case& marked, const char* cell, double shown_g) {
  const std::string text = marked.sheet.text(cell);
  const auto written = marked.sheet.number(cell);
  return written && decimals_written(text) == 3 && std::fabs(*written - shown_g) < kSameWeight_g;
}

std::string weight_text(const Case& marked, const char* cell) {
  const std::string text = marked.sheet.text(cell);
  return text.empty() ? say("find.standard_weighed.nothing") : text;
}

}  // namespace

void mark_standard(const Case& marked, std::vector<Finding>& hand) {
  if (!marked.level().standard) return;
  hand.push_back(washings_in(marked));
  hand.push_back(made_to_mark(marked));
  hand.push_back(turned_over(marked));
}

void mark_weighing(const Case& marked, std::vector<Finding>& record) {
  if (!marked.level().standard) return;
  const BenchSpec& spec = marked.session.spec();
  Finding finding = open(marked, Score::record, "standard-weighed");
  const double first_g = balance_shows_g(spec, lay_out(spec)),
               last_g = balance_shows_g(spec, marked.session.state());
  const Range& serves = marked.level().standard->mass_g;
  const double mass_g = first_g - last_g;
  const bool right = is_weight(marked, kBottleBefore, first_g) && is_weight(marked, kBottleAfter, last_g);
  const bool enough = mass_g >= serves.low - kSameWeight_g && mass_g <= serves.high + kSameWeight_g;
  const std::string seen = say("find.standard_weighed.seen", {{"before", weight_text(marked, kBottleBefore)},
                                                              {"after", weight_text(marked, kBottleAfter)},
                                                              {"first", figure_text(first_g, 3)},
                                                              {"last", figure_text(last_g, 3)}});
  if (finding.judged && right && enough) {
    met(finding, seen);
  } else if (finding.judged) {
    missed(finding, seen,
           right ? Phrase("find.standard_weighed.amount") : Phrase("find.standard_weighed.advice"));
  }
  record.push_back(std::move(finding));
}

}  // namespace halfdrop

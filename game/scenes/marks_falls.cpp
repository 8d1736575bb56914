#include <algorithm>

#include "game/level/say.h"
#include "game/scenes/drill_charts.h"
#include "game/scenes/marks_layout.h"
#include "game/scenes/marks_page.h"
#include "game/scenes/uncertainty_chart.h"
#include "game/scenes/waterfall_chart.h"
#include "game/scenes/words.h"

namespace halfdrop {

using namespace marks_layout;

namespace {

constexpr double kLeastReach_cm3 = 0.12;  ///< two drops and a bit
constexpr double kLeastReach_percent = 0.5;

const TitreRow* row_of(const MarkedAttempt& marked, const std::string& run) {
  for (const TitreRow& row : marked.titres) {
    if (row.run == run && row.breakdown) return &row;
  }
  return nullptr;
}

/// Accurate runs share one reach, so that their bars can be compared; the trial has its own, and so has a run
/// that would shrink the shown one's to nothing.
FallsReach reach_for(const MarkedAttempt& marked, const TitreRow& shown) {
  constexpr double kTooWide = 4.0;
  const FallsReach own = reach_of(titre_waterfall(*shown.breakdown), kLeastReach_cm3);
  FallsReach reach = own;
  if (shown.run == "trial") return own;
  for (const TitreRow& row : marked.titres) {
    if (row.run == "trial" || !row.breakdown) continue;
    const FallsReach wider = both(reach, reach_of(titre_waterfall(*row.breakdown), kLeastReach_cm3));
    if (wider.high - wider.low <= kTooWide * (own.high - own.low)) reach = wider;
  }
  return reach;
}

std::string tab_words(const TitreRow& row) {
  const double off = row.breakdown->recorded_cm3 - row.breakdown->ideal_cm3;
  return (row.run == "trial" ? say("marks.tab.trial") : say("marks.tab.run", {{"run", row.run}})) +
         (row.used ? " \u2713  " : "  ") + words::with_sign(off, 2);
}

}  // namespace

float MarksPage::draw_charts(Canvas& canvas, float y) const {
  if (!marked_.drill) {
    parts_.emplace_back("titres", y + scroll_);
    y = draw_titre_falls(canvas, y);
    parts_.emplace_back("result", y + scroll_);
    y = draw_result_falls(canvas, y);
    parts_.emplace_back("uncertainty", y + scroll_);
    return draw_own_uncertainty(canvas, y);
  }
  std::vector<std::pair<std::string, Rect>> dots;
  y += draw_drill_charts(canvas, {kLeft, y}, kWidth, {*marked_.drill, earlier_, projector_}, dots);
  for (const auto& dot : dots) {
    if (dot.second.y > 0 && dot.second.bottom() < kFooter) places_.push_back(dot);
  }
  return y;
}

/// A tab a run: its distance from the ideal titre, a tick where it counts.
float MarksPage::draw_run_tabs(Canvas& canvas, float y) const {
  const float size = projector_ ? 29.0F : 16.0F, high = size * 2;
  float x = kLeft;
  for (const TitreRow& row : marked_.titres) {
    if (!row.breakdown) continue;
    const std::string text = tab_words(row);
    const bool shown = row.run == shown_run();
    const TextStyle style{size, shown ? palette::pill_text : palette::accent, Face::semibold, Align::centre};
    const float wide = canvas.text_width(text, style) + 28;
    if (x + wide > kLeft + kWidth) {
      x = kLeft;
      y += high + 6;
    }
    const Rect tab{x, y, wide, high};
    canvas.rounded_rect(tab, 6, shown ? palette::accent : rgb(0xfffdf8));
    canvas.stroke(rounded_rect_points(tab, 6), {1.2F, true}, palette::accent);
    canvas.text_middle(text, tab.centre(), style);
    if (tab.y > 0 && tab.bottom() < kFooter) places_.emplace_back("run/" + row.run, tab);
    x += wide + 10;
  }
  if (!projector_) {
    canvas.text_middle(words::kAnotherRun, {kLeft + kWidth, y + high / 2},
                       {15, palette::print, Face::regular, Align::right});
  }
  return y + high + 8;
}

float MarksPage::draw_titre_falls(Canvas& canvas, float y) const {
  const TitreRow* row = row_of(marked_, shown_run());
  if (!row) return y;
  y = draw_run_tabs(canvas, heading(canvas, y, words::kWhereTitre, words::kWhereTitreWhy, projector_));
  const Waterfall falls = titre_waterfall(*row->breakdown);
  const WaterfallCard card{falls,
                           reach_for(marked_, *row),
                           FallsUnit::cm3,
                           say("marks.titres.ideal"),
                           words::fixed(falls.start, 3) + " cm\u00b3",
                           row->run == "trial" ? say("marks.titres.recorded_trial")
                                               : say("marks.titres.recorded", {{"run", row->run}}),
                           words::fixed(falls.end, 2) + " cm\u00b3",
                           projector_};
  draw_waterfall(canvas, {kLeft, y}, kWidth, card);
  return y + waterfall_height(card) + kGap;
}

float MarksPage::draw_result_falls(Canvas& canvas, float y) const {
  if (!marked_.result_split) return y;
  const ResultSplit& split = *marked_.result_split;
  y = heading(canvas, y, words::kWhereResult,
              split.larger_with_titre ? words::kWhereResultWhy : words::kWhereResultTurned, projector_);
  const Waterfall falls = result_waterfall(split);
  const WaterfallCard card{
      falls,
      reach_of(falls, kLeastReach_percent),
      FallsUnit::percent,
      say("marks.result.true", {{"value", words::figures(marked_.true_value, 4)}, {"unit", marked_.unit}}),
      "0",
      say("marks.result.yours", {{"value", marked_.reported_text}, {"unit", marked_.unit}}),
      words::with_sign(split.percent, 2) + " %",
      projector_};
  draw_waterfall(canvas, {kLeft, y}, kWidth, card);
  return y + waterfall_height(card) + kGap;
}

float MarksPage::draw_own_uncertainty(Canvas& canvas, float y) const {
  // Of figures that nobody read there is nothing to know.
  if (!marked_.uncertainty || shown_run().empty()) return y;
  y = heading(canvas, y, words::kHowWell, words::kHowWellWhy, projector_);
  return y + draw_uncertainty(canvas, {kLeft, y}, kWidth, marked_, projector_) + kGap;
}

}  // namespace halfdrop

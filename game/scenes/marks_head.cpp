#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/marks_layout.h"
#include "game/scenes/marks_page.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/words.h"

namespace halfdrop {

using namespace marks_layout;

namespace {

void draw_score_bar(Canvas& canvas, const Rect& at, const std::string& name, const Marks::Part& part,
                    bool counts) {
  canvas.text_middle(name, {at.x, at.y + 14}, {18, palette::print, Face::semibold});
  canvas.text_middle(points(part), {at.right(), at.y + 14},
                     {18, palette::print, Face::semibold, Align::right});
  const Rect bar{at.x, at.y + 30, at.w, 18};
  canvas.rounded_rect(bar, 4, faded(palette::accent, 0.13));
  const float share = part.of > 0 ? static_cast<float>(std::clamp(part.points / part.of, 0.0, 1.0)) : 0.0F;
  if (share > 0)
    canvas.rounded_rect({bar.x, bar.y, std::max(8.0F, bar.w * share), bar.h}, 4,
                        counts ? palette::accent : palette::print_soft);
  // A stroke a point while they can be told apart.
  for (int i = 1; part.of <= 40 && i < static_cast<int>(part.of); ++i) {
    const float x = bar.x + bar.w * static_cast<float>(i / part.of);
    canvas.line({x, bar.y}, {x, bar.bottom()}, 1, rgb(0xffffff, 0.55));
  }
}

std::string result_line(const MarkedAttempt& marked) {
  std::string off;
  if (marked.reported && marked.true_value > 0) {
    off = " (" + words::with_sign((*marked.reported / marked.true_value - 1.0) * 100.0, 1) + " %)";
  }
  const std::string reported =
      marked.reported ? marked.reported_text + " " + marked.unit : say("marks.summary.nothing");
  const std::string mean = marked.mean_titre_cm3 ? words::fixed(*marked.mean_titre_cm3, 2) + " cm\u00b3"
                                                 : say("marks.summary.no_mean");
  return say("marks.summary", {{"reported", reported},
                               {"true", words::figures(marked.true_value, 4) + " " + marked.unit},
                               {"off", off},
                               {"mean", mean},
                               {"ideal", words::fixed(marked.ideal_titre_cm3, 3)}});
}

}  // namespace

float MarksPage::draw_summary(Canvas& canvas, float y) const {
  canvas.text(marked_.level_title, {kLeft, y + 34}, {32, palette::print, Face::bold});
  canvas.text((marked_.alias.empty() ? "" : marked_.alias + ", ") + std::string(way_words(marked_.way)),
              {kLeft + kWidth, y + 34}, {18, palette::print_soft, Face::semibold, Align::right});
  y += 62;
  if (!marked_.outcome.reproduced) {
    y += canvas.paragraph(say("marks.not_reproduced", {{"why", marked_.outcome.message}}), {kLeft, y}, kWidth,
                          24, {17, palette::bad, Face::semibold});
  }
  y = draw_next_fix(canvas, y - 12);
  if (marked_.drill) return y;
  y = draw_diagnosis(canvas, y);
  y += canvas.paragraph(result_line(marked_), {kLeft, y + 18}, kWidth, 25, plain(18));
  return y + 6;
}

/// The one thing to change, larger than all that follows.
float MarksPage::draw_next_fix(Canvas& canvas, float y) const {
  const float left = kLeft + 22, width = kWidth - 44;
  const TextStyle large{21, palette::print, Face::bold};
  const std::string advice = !fix_                  ? words::kNothingToChange
                             : fix_->advice.empty() ? fix_->why
                                                    : fix_->advice;
  const std::string why = fix_ && !fix_->advice.empty() ? fix_->why : "";
  const auto lines = [&](const std::string& text, const TextStyle& style) {
    return text.empty() ? 0.0F : static_cast<float>(canvas.wrapped(text, width, style).size());
  };
  const float high = 42 + 27 * lines(advice, large) + 23 * lines(why, plain(17));
  const Rect card{kLeft, y, kWidth, high};
  canvas.rounded_rect(card, 8, rgb(0xfbe9b7, 0.85));
  canvas.rect({card.x, card.y + 8, 6, card.h - 16}, palette::accent);
  canvas.text(words::kNextTime, {left, y + 24}, {16, palette::accent, Face::semibold});
  float at = y + 50;
  at += canvas.paragraph(advice, {left, at}, width, 27, large);
  if (!why.empty()) canvas.paragraph(why, {left, at - 2}, width, 23, plain(17));
  return card.bottom() + 12;
}

/// The answer, what was, and what the answer earned.
float MarksPage::draw_diagnosis(Canvas& canvas, float y) const {
  y += canvas.paragraph(verdict(*said_, marked_), {kLeft, y + 18}, kWidth, 25, plain(18));
  const auto earned = diagnosis_points(*said_, marked_);
  if (!earned) return y + 4;
  canvas.text(say("marks.said_first", {{"cause", std::to_string(earned->cause)},
                                       {"of_cause", std::to_string(kPointsForCause)},
                                       {"way", std::to_string(earned->way)},
                                       {"of_way", std::to_string(kPointsForWay)}}) +
                  " " + say(words::kBesideTheMarks),
              {kLeft, y + 18}, {18, palette::accent, Face::semibold});
  return y + 29;
}

/// Safety first, then the total.
float MarksPage::draw_gate(Canvas& canvas, float y) const {
  const bool safe = marked_.marks.safe;
  const bool judged = std::any_of(marked_.findings.begin(), marked_.findings.end(),
                                  [](const Finding& f) { return f.score == Score::safety; });
  const Rect gate{kLeft, y, kWidth, 44};
  const sf::Color colour = !judged ? palette::accent : (safe ? palette::good : palette::bad);
  canvas.rounded_rect(gate, 8, faded(colour, 0.12));
  canvas.stroke(rounded_rect_points(gate, 8), {1.4F, true}, colour);
  if (judged) draw_tick_or_cross(canvas, {gate.x + 24, gate.centre().y}, 12, safe);
  canvas.text_middle(!judged ? words::kSafetyNothing : (safe ? words::kSafetyMet : words::kSafetyNotMet),
                     {gate.x + (judged ? 48.0F : 20.0F), gate.centre().y},
                     {18, palette::print, Face::semibold});
  canvas.text_middle(say("marks.total", {{"points", points({marked_.marks.total, marked_.marks.of})}}),
                     {gate.right() - 16, gate.centre().y}, {20, palette::print, Face::bold, Align::right});
  return gate.bottom();
}

float MarksPage::draw_scores(Canvas& canvas, float y) const {
  y = draw_gate(canvas, y) + 14;
  constexpr Score scores[] = {Score::hand, Score::eye, Score::record, Score::arithmetic};
  std::vector<std::size_t> shown;  // a drill has no points in some
  for (std::size_t i = 0; i < 4; ++i) {
    if (marked_.marks.parts[i].of > 0) shown.push_back(i);
  }
  const float columns = static_cast<float>(std::max<std::size_t>(1, shown.size()));
  const float each = (kWidth - (columns - 1) * kGap) / columns;
  for (std::size_t at = 0; at < shown.size(); ++at) {
    draw_score_bar(canvas, {kLeft + (each + kGap) * static_cast<float>(at), y, each, 50},
                   std::string(score_words(scores[shown[at]])), marked_.marks.parts[shown[at]],
                   marked_.marks.safe);
  }
  return y + 56;
}

}  // namespace halfdrop

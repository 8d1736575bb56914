#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/marks_layout.h"
#include "game/scenes/marks_page.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

using namespace marks_layout;

std::string marks_layout::points(const Marks::Part& part) {
  return say("marks.points", {{"points", words::points(part.points)}, {"of", words::points(part.of)}});
}

float marks_layout::heading(Canvas& canvas, float y, Phrase text, Phrase under, bool large) {
  const float size = large ? 34.0F : 24.0F, words = large ? 29.0F : 16.0F;
  canvas.text(text, {kLeft, y + size + 2}, {size, palette::print, Face::bold});
  y += size + 18;
  if (under.empty()) return y;
  return y + 8 + canvas.paragraph(under, {kLeft, y + words * 0.5F}, kWidth, words * 1.3F, plain(words)) -
         words * 0.3F;
}

float MarksPage::draw_finding(Canvas& canvas, float y, std::size_t index) const {
  const Finding& finding = marked_.findings[index];
  const float text = kLeft + 128, right = kLeft + kWidth - 232, width = right - text - 16;
  const TextStyle seen = plain(17), advice{17, palette::accent, Face::italic};
  const float lines =
      static_cast<float>(canvas.wrapped(finding.seen, width, seen).size() +
                         (finding.advice.empty() ? 0 : canvas.wrapped(finding.advice, width, advice).size()));
  const bool costs = finding.cost_cm3 && std::fabs(*finding.cost_cm3) >= 0.0005;
  const Rect row{kLeft, y, kWidth, std::max(costs ? 2.0F : 1.0F, lines) * 23 + 21};
  if (finding_ == index) canvas.rounded_rect(row, 6, rgb(0xfbe9b7, 0.8));
  draw_tick_or_cross(canvas, {kLeft + 22, y + 22}, 11, finding.met);
  const Phrase how = is_harmless(finding) ? words::kHarmless : finding.met ? words::kMet : words::kNotMet;
  canvas.text_middle(how, {kLeft + 42, y + 22},
                     {16, finding.met ? palette::good : palette::bad, Face::semibold});
  float at = y + 28;
  at += canvas.paragraph(finding.seen, {text, at}, width, 23, seen);
  if (!finding.advice.empty()) canvas.paragraph(finding.advice, {text, at}, width, 23, advice);
  std::string facts(score_words(finding.score));
  if (finding.of > 0) facts += ", " + points({finding.points, finding.of});
  canvas.text_middle(facts, {right, y + 22}, plain(15));
  if (costs)
    canvas.text_middle(say("marks.finding.cost", {{"size", words::with_sign(1000.0 * *finding.cost_cm3, 0)}}),
                       {right, y + 42}, plain(15));
  const Rect when{kLeft + kWidth - 82, y + 9, 74, 28};
  canvas.rounded_rect(when, 6, faded(palette::accent, 0.12));
  canvas.text_middle("\u25b6 " + words::clock(finding.tick), when.centre(),
                     {15, palette::accent, Face::semibold, Align::centre});
  if (when.bottom() > 0 && when.bottom() < kFooter)
    places_.emplace_back("finding/" + std::to_string(index), when);
  canvas.line({kLeft, row.bottom()}, {kLeft + kWidth, row.bottom()}, 1, palette::paper_line);
  return row.bottom() + 1;
}

float MarksPage::draw_findings(Canvas& canvas, float y) const {
  if (marked_.findings.empty()) return y;
  y = heading(canvas, y, words::kFindings);
  // What was not met first: that is what there is to learn.
  for (const bool met : {false, true}) {
    for (std::size_t i = 0; i < marked_.findings.size(); ++i) {
      const Finding& finding = marked_.findings[i];
      if (finding.met == met && !is_harmless(finding)) y = draw_finding(canvas, y, i);
    }
  }
  if (std::none_of(marked_.findings.begin(), marked_.findings.end(), is_harmless)) return y + kGap;
  parts_.emplace_back("harmless", y + 16 + scroll_);
  y = heading(canvas, y + 16, words::kHarmlessHeading);
  for (std::size_t i = 0; i < marked_.findings.size(); ++i) {
    if (is_harmless(marked_.findings[i])) y = draw_finding(canvas, y, i);
  }
  return y + kGap;
}

void MarksPage::draw_footer(Canvas& canvas) const {
  const Rect all = canvas.window();
  canvas.rect({all.x, kFooter, all.w, all.bottom() - kFooter + 2}, rgb(0xfffdf8));
  canvas.line({all.x, kFooter}, {all.right(), kFooter}, 1.2F, palette::paper_line);
  const Rect again{kLeft + kWidth - 432, kFooter + 12, 232, 44},
      list{kLeft + kWidth - 184, kFooter + 12, 184, 44};
  draw_page_button(canvas, again, words::kAgain, true);
  draw_page_button(canvas, list, words::kLevelList, false);
  places_.emplace_back("again", again);
  places_.emplace_back("level list", list);
  const float width = again.x - kLeft - 20;
  canvas.text(words::kMarksKeys, {kLeft, kFooter + 28}, {14, palette::print_soft});
  canvas.paragraph(words::kRehearsal, {kLeft, kFooter + 48}, width, 16,
                   {13.5F, palette::print, Face::semibold});
}

void MarksPage::draw_page(Canvas& canvas) const {
  draw_page_ground(canvas);
  canvas.flush();
  const Rect all = canvas.window();
  canvas.clip({all.x, all.y, all.w, kFooter - all.y});
  const float top = 24 - scroll_;
  float y = draw_summary(canvas, top);
  y = draw_scores(canvas, y);
  y = draw_charts(canvas, y + kGap);
  parts_.emplace_back("findings", y + scroll_);
  y = draw_findings(canvas, y + 4);
  y += canvas.paragraph(words::kRehearsal, {kLeft, y + 20}, kWidth, 24, {17, palette::print, Face::semibold});
  content_height_ = y + 20 - top + 24;
  canvas.flush();
  draw_scroll_bar(canvas, {1246, 16, 8, kFooter - 32}, content_height_, kFooter, scroll_);
  canvas.unclip();
  draw_footer(canvas);
  canvas.flush();
}

}  // namespace halfdrop

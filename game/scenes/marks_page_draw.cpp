#include <algorithm>
#include <cmath>

#include "game/scenes/drill_charts.h"
#include "game/scenes/marks_page.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/titre_chart.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr float kLeft = 90.0F, kWidth = 1080.0F, kFooter = 652.0F;
constexpr float kGap = 20.0F;

TextStyle plain(float size) { return {size, palette::print}; }

float heading(Canvas& canvas, float y, const char* text, const char* under = nullptr) {
  canvas.text(text, {kLeft, y + 26}, {24, palette::print, Face::bold});
  if (!under) return y + 42;
  canvas.text(under, {kLeft, y + 50}, plain(16));
  return y + 66;
}

std::string points(const Marks::Part& part) {
  const auto figure = [](double value) { return words::fixed(value, value == std::round(value) ? 0 : 1); };
  return figure(part.points) + " of " + figure(part.of);
}

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
  std::string line = "Result: you reported ";
  line += marked.reported ? words::figures(*marked.reported, 4) + " " + marked.unit : "nothing";
  line += "; true " + words::figures(marked.true_value, 4) + " " + marked.unit;
  if (marked.reported && marked.true_value > 0) {
    line += " (" + words::with_sign((*marked.reported / marked.true_value - 1.0) * 100.0, 1) + " %)";
  }
  line += ".  Mean titre: ";
  line += marked.mean_titre_cm3 ? words::fixed(*marked.mean_titre_cm3, 2) + " cm\u00b3" : "none";
  return line + "; ideal " + words::fixed(marked.ideal_titre_cm3, 2) + " cm\u00b3.";
}

}  // namespace

float MarksPage::draw_summary(Canvas& canvas, float y) const {
  canvas.text(marked_.level_title, {kLeft, y + 34}, {32, palette::print, Face::bold});
  canvas.text((marked_.alias.empty() ? "" : marked_.alias + ", ") + std::string(way_name(marked_.way)),
              {kLeft + kWidth, y + 34}, {18, palette::print_soft, Face::semibold, Align::right});
  y += 62;
  if (!marked_.outcome.reproduced) {
    y += canvas.paragraph("This attempt does not replay as it was played: " + marked_.outcome.message,
                          {kLeft, y}, kWidth, 24, {17, palette::bad, Face::semibold});
  }
  if (marked_.drill) return y - 8;
  y += canvas.paragraph(verdict(*said_, marked_), {kLeft, y}, kWidth, 25, plain(18));
  y += 2 + canvas.paragraph(result_line(marked_), {kLeft, y}, kWidth, 25, plain(18));
  return y;
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
  canvas.text_middle("Total: " + points({marked_.marks.total, marked_.marks.of}),
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
                   std::string(score_name(scores[shown[at]])), marked_.marks.parts[shown[at]],
                   marked_.marks.safe);
  }
  return y + 56;
}

float MarksPage::draw_charts(Canvas& canvas, float y) const {
  if (!marked_.drill) return draw_titre_charts(canvas, y);
  std::vector<std::pair<std::string, Rect>> dots;
  y += draw_drill_charts(canvas, {kLeft, y}, kWidth, {*marked_.drill, earlier_, projector_}, dots);
  for (const auto& dot : dots) {
    if (dot.second.y > 0 && dot.second.bottom() < kFooter) places_.push_back(dot);
  }
  return y;
}

float MarksPage::draw_titre_charts(Canvas& canvas, float y) const {
  const auto broken_down = [](const TitreRow& row) { return row.breakdown.has_value(); };
  if (std::none_of(marked_.titres.begin(), marked_.titres.end(), broken_down)) return y;
  y = heading(canvas, y, words::kWhereTitre, words::kWhereTitreWhy);
  const float each = (kWidth - kGap) / 2;
  float ends[2] = {y, y};  // of the two columns; the next chart goes under the shorter
  for (const TitreRow& row : marked_.titres) {
    if (!row.breakdown) continue;
    const int column = ends[1] < ends[0] ? 1 : 0;
    draw_titre_chart(canvas, {kLeft + static_cast<float>(column) * (each + kGap), ends[column]}, each, row);
    ends[column] += titre_chart_height(row) + kGap;
  }
  return std::max(ends[0], ends[1]);
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
  canvas.text_middle(finding.met ? words::kMet : words::kNotMet, {kLeft + 42, y + 22},
                     {16, finding.met ? palette::good : palette::bad, Face::semibold});
  float at = y + 28;
  at += canvas.paragraph(finding.seen, {text, at}, width, 23, seen);
  if (!finding.advice.empty()) canvas.paragraph(finding.advice, {text, at}, width, 23, advice);
  std::string facts(score_name(finding.score));
  if (finding.of > 0) facts += ", " + points({finding.points, finding.of});
  canvas.text_middle(facts, {right, y + 22}, plain(15));
  if (costs)
    canvas.text_middle("cost " + words::with_sign(*finding.cost_cm3, 3) + " cm\u00b3", {right, y + 42},
                       plain(15));
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
      if (marked_.findings[i].met == met) y = draw_finding(canvas, y, i);
    }
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
  canvas.paragraph(words::kRehearsal, {kLeft, kFooter + 50}, width, 16, {14, palette::print, Face::semibold});
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

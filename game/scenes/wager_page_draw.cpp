#include <algorithm>

#include "game/level/say.h"
#include "game/scenes/mean_chart.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/wager_page.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr float kLeft = 70.0F, kRight = 1210.0F;
constexpr Rect kPaper{70, 176, 580, 250};
constexpr Rect kDeedList{70, 444, 580, 236};
constexpr Rect kPanel{680, 176, 530, 504};
constexpr float kDeedRow = 21.0F, kRunColumn = 72.0F;

constexpr Phrase kQuestion{"wager.question"};
constexpr Phrase kStakeWords[] = {"wager.stake.1", "wager.stake.2", "wager.stake.3"};
constexpr Phrase kRowWords[] = {"wager.final", "wager.initial", "sheet.titre"};

void draw_choice(Canvas& canvas, const Rect& at, const std::string& text, bool chosen) {
  draw_choice_ground(canvas, at, chosen);
  canvas.text_middle(text, at.centre(),
                     {19, palette::print, chosen ? Face::bold : Face::semibold, Align::centre});
}

std::string signed_points(int points) {
  const std::string size = std::to_string(std::abs(points));
  return points > 0 ? "+" + size : points < 0 ? "\u2212" + size : size;
}

std::string cm3(double value) { return words::fixed(value, 2) + " cm\u00b3"; }

std::string truth_words(const MeanTruth& truth, double within_cm3) {
  const std::string off = cm3(std::abs(truth.off_cm3()));
  if (truth.mean == MeanIs::right)
    return say("wager.truth.right", {{"within", cm3(within_cm3)}, {"off", off}});
  return truth.mean == MeanIs::too_low ? say("wager.truth.too_low", {{"off", off}})
                                       : say("wager.truth.too_high", {{"off", off}});
}

std::string cause_words(const MeanTruth& truth) {
  if (truth.causes.empty()) return say("wager.causes.none");
  std::string said;
  for (const LargestCause& cause : truth.causes) {
    if (!said.empty()) said += "; ";
    said += std::string(words::cause_name(cause.cause)) + " " + words::volume_with_sign(cause.mean_cm3);
  }
  return say("wager.causes", {{"causes", said}});
}

}  // namespace

void WagerPage::draw(Canvas& canvas) const {
  places_.clear();
  draw_page_ground(canvas);
  canvas.flush();
  if (ended()) {
    draw_end(canvas);
  } else {
    draw_head(canvas);
    if (shown_ < rounds_.size()) {
      draw_paper(canvas, rounds_[shown_]);
      draw_deeds(canvas, rounds_[shown_]);
      revealed() ? draw_truth(canvas, rounds_[shown_]) : draw_bet(canvas);
    } else {
      canvas.text(say("wager.wait"), {640, 400}, {26, palette::print, Face::semibold, Align::centre});
    }
  }
  canvas.flush();
}

void WagerPage::draw_head(Canvas& canvas) const {
  canvas.text(wager_.title, {kLeft, 64}, {32, palette::print, Face::bold});
  canvas.text(say("wager.head", {{"number", std::to_string(shown_ + 1)},
                                 {"of", std::to_string(wager_.rounds.size())},
                                 {"points", signed_points(points())}}),
              {kRight, 64}, {20, palette::print, Face::semibold, Align::right});
  canvas.paragraph(wager_.story, {kLeft, 96}, kRight - kLeft, 24, {17, palette::print});
}

void WagerPage::draw_paper(Canvas& canvas, const Shown& shown) const {
  draw_paper_ground(canvas, kPaper, false);
  canvas.flush();
  const float left = kPaper.x + 24;
  canvas.text(words::kSheetHeading, {left, kPaper.y + 36}, {17, palette::print, Face::bold});
  const char* const rows[] = {"final", "initial", "titre"};
  for (std::size_t row = 0; row < 3; ++row)
    canvas.text(say(kRowWords[row]), {left, kPaper.y + 76 + 38 * static_cast<float>(row)},
                {18, palette::print});
  float x = left + 156;
  for (const TitreRow& run : shown.round.marked.titres) {
    const std::string name = run.run == "trial" ? say("wager.trial") : say("wager.run", {{"run", run.run}});
    canvas.text(run.used ? name + " \u2713" : name, {x, kPaper.y + 36},
                {17, palette::print, Face::semibold, Align::centre});
    const std::string cells[] = {run.final_text, run.initial_text,
                                 run.recorded_cm3 ? words::fixed(*run.recorded_cm3, 2) : ""};
    for (std::size_t row = 0; row < 3; ++row) {
      const Point at{x, kPaper.y + 76 + 38 * static_cast<float>(row)};
      if (row < 2) {
        const Rect cell{x - 33, at.y - 23, 66, 32};
        canvas.rounded_rect(cell, 5, rgb(0xe8eef2));
        place("look/" + run.run + "/" + rows[row], cell);
      }
      canvas.text(cells[row], at, {21, palette::ink, row == 2 ? Face::bold : Face::semibold, Align::centre});
    }
    x += kRunColumn;
  }
  canvas.text(say("wager.mean", {{"mean", cm3(shown.round.truth.mean_cm3)},
                                 {"count", std::to_string(shown.round.truth.titres_cm3.size())},
                                 {"spread", cm3(shown.round.truth.spread_cm3)}}),
              {left, kPaper.y + 194}, {19, palette::ink, Face::bold});
  canvas.text(say("wager.readings"), {left, kPaper.y + 226}, {16, palette::print});
}

void WagerPage::draw_deeds(Canvas& canvas, const Shown& shown) const {
  canvas.text(say("wager.deeds"), {kDeedList.x, kDeedList.y + 14}, {16, palette::print, Face::semibold});
  const Rect list{kDeedList.x, kDeedList.y + 26, kDeedList.w, kDeedList.h - 26};
  canvas.clip(list);
  const std::size_t rows = (shown.deeds.size() + 1) / 2;
  for (std::size_t i = 0; i < shown.deeds.size(); ++i) {
    const std::size_t column = i / rows, row = i % rows;
    const float y = list.y + 16 + kDeedRow * (static_cast<float>(row) - static_cast<float>(scrolled_));
    if (y < list.y || y > list.bottom()) continue;
    const float x = list.x + 285 * static_cast<float>(column);
    const DeedLine& deed = shown.deeds[i];
    canvas.text(words::clock(deed.tick), {x + 44, y}, {16, palette::accent, Face::semibold, Align::right});
    canvas.text(deed.text + (deed.times > 1 ? " \u00d7 " + std::to_string(deed.times) : ""), {x + 54, y},
                {16, palette::print});
    place("deed/" + std::to_string(i), {x, y - 15, 270, kDeedRow});
  }
  canvas.flush();
  canvas.unclip();
  draw_scroll_bar(canvas, {list.right() - 6, list.y, 6, list.h}, kDeedRow * static_cast<float>(rows), list.h,
                  kDeedRow * static_cast<float>(scrolled_));
}

void WagerPage::draw_bet(Canvas& canvas) const {
  const float left = kPanel.x;
  canvas.text(kQuestion, {left, kPanel.y + 34}, {28, palette::print, Face::bold});
  canvas.paragraph(say("wager.what_is_right", {{"within", cm3(wager_.within_cm3)}}), {left, kPanel.y + 66},
                   kPanel.w, 25, {18, palette::print});
  for (std::size_t i = 0; i < kMeanAnswers.size(); ++i) {
    const MeanAnswer& answer = kMeanAnswers[i];
    const Rect at{left + 180 * static_cast<float>(i), kPanel.y + 122, 168, 64};
    draw_choice(canvas, at, say(answer.words), answer_ == answer.mean);
    place(answer.place, at);
  }
  canvas.text(say("wager.stake"), {left, kPanel.y + 240}, {20, palette::print, Face::semibold});
  for (int stake = kLeastStake; stake <= kMostStake; ++stake) {
    const Rect at{left + 180 * static_cast<float>(stake - 1), kPanel.y + 260, 168, 52};
    draw_choice(canvas, at, say(kStakeWords[stake - 1]), stake_ == stake);
    place("stake/" + std::to_string(stake), at);
  }
  const Rect button{left, kPanel.y + 350, 348, 52};
  draw_page_button(canvas, button, answer_ ? say("wager.bet") : say("wager.first_say"), answer_.has_value(),
                   19);
  place("go on", button);
  canvas.text(say("wager.keys"), {left, kPanel.y + 440}, {16, palette::print});
}

void WagerPage::draw_truth(Canvas& canvas, const Shown& shown) const {
  const float left = kPanel.x;
  const int won = bet_points(bets_[shown_], shown.round.truth);
  canvas.text(truth_words(shown.round.truth, wager_.within_cm3), {left, kPanel.y + 34},
              {28, palette::print, Face::bold});
  draw_tick_or_cross(canvas, {left + 12, kPanel.y + 64}, 12, won > 0);
  const std::string answer = kMeanAnswers[static_cast<std::size_t>(bets_[shown_].mean)].words;
  canvas.text(std::abs(won) == 1
                  ? say("wager.you_bet.one", {{"answer", answer}, {"points", signed_points(won)}})
                  : say("wager.you_bet", {{"answer", answer}, {"points", signed_points(won)}}),
              {left + 34, kPanel.y + 70}, {19, won > 0 ? palette::good : palette::bad, Face::semibold});
  draw_mean_chart(canvas, {left, kPanel.y + 92, kPanel.w, 150}, shown.round.truth, wager_.within_cm3);
  float y = kPanel.y + 282;
  y += canvas.paragraph(cause_words(shown.round.truth), {left, y}, kPanel.w, 26,
                        {19, palette::print, Face::semibold});
  if (!shown.round.truth.causes.empty())
    canvas.paragraph(shown.fix, {left, y + 6}, kPanel.w, 24, {17, palette::print});
  const Rect button{left, kPanel.bottom() - 52, 348, 52};
  const bool last = shown_ + 1 == wager_.rounds.size();
  draw_page_button(canvas, button, last ? say("wager.about") : say("wager.next"), true, 19);
  place("go on", button);
}

void WagerPage::draw_end(Canvas& canvas) const {
  canvas.text(wager_.title, {kLeft, 84}, {32, palette::print, Face::bold});
  canvas.text(say("wager.points", {{"points", signed_points(points())},
                                   {"of", std::to_string(kMostStake * static_cast<int>(bets_.size()))}}),
              {kRight, 84}, {24, palette::print, Face::bold, Align::right});
  float y = 130;
  for (std::size_t i = 0; i < bets_.size(); ++i) {
    const MeanTruth& truth = rounds_[i].round.truth;
    const int won = bet_points(bets_[i], truth);
    canvas.rounded_rect({kLeft, y, kRight - kLeft, 84}, 8, rgb(0xfffdf8, 0.85));
    draw_tick_or_cross(canvas, {kLeft + 34, y + 42}, 16, won > 0);
    canvas.text(say("wager.line", {{"number", std::to_string(i + 1)},
                                   {"count", std::to_string(truth.titres_cm3.size())},
                                   {"spread", cm3(truth.spread_cm3)},
                                   {"truth", truth_words(truth, wager_.within_cm3)}}),
                {kLeft + 70, y + 34}, {20, palette::print, Face::semibold});
    canvas.text(cause_words(truth), {kLeft + 70, y + 64}, {17, palette::print});
    canvas.text(signed_points(won), {kRight - 30, y + 50}, {24, palette::print, Face::bold, Align::right});
    y += 98;
  }
  canvas.paragraph(wager_.closing, {kLeft, y + 34}, kRight - kLeft, 30, {21, palette::print});
  const Rect button{kLeft, 610, 348, 52};
  draw_page_button(canvas, button, say("wager.back"), true, 19);
  place("go on", button);
}

}  // namespace halfdrop

#include <algorithm>

#include "game/level/say.h"
#include "game/scenes/level_list.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

using namespace list_layout;

void draw_card(Canvas& canvas, const Rect& at, bool chosen) {
  canvas.soft_rect({at.x, at.y + 3, at.w, at.h}, 6, 6, faded(palette::shadow, chosen ? 0.26 : 0.14));
  canvas.rounded_rect(at, 8, chosen ? rgb(0xfffdf4) : rgb(0xfffdf8, 0.85));
  canvas.stroke(rounded_rect_points(at, 8), {chosen ? 2.4F : 1.0F, true},
                chosen ? palette::accent : palette::paper_line);
  if (chosen)
    canvas.polygon(
        {{at.x - 22, at.centre().y - 9}, {at.x - 8, at.centre().y}, {at.x - 22, at.centre().y + 9}},
        palette::accent);
}

/// A drop about to leave a tip: the bench's sign.
void draw_sign(Canvas& canvas, Point at) {
  canvas.polygon(
      {{at.x - 8, at.y - 44}, {at.x + 8, at.y - 44}, {at.x + 4, at.y - 18}, {at.x - 4, at.y - 18}},
      Paint::horizontal(at.x - 8, at.x + 8,
                        {{0, palette::glass_edge}, {0.4F, rgb(0xeaf3f4)}, {1, palette::glass_edge}}));
  const Points drop = Path({at.x - 4, at.y - 18})
                          .cubic({at.x - 5, at.y - 6}, {at.x - 11, at.y - 4}, {at.x - 11, at.y + 5})
                          .cubic({at.x - 11, at.y + 19}, {at.x + 11, at.y + 19}, {at.x + 11, at.y + 5})
                          .cubic({at.x + 11, at.y - 4}, {at.x + 5, at.y - 6}, {at.x + 4, at.y - 18})
                          .points();
  canvas.polygon(drop, Paint::horizontal(at.x - 11, at.x + 11,
                                         {{0, rgb(0xd96ba6)}, {0.35F, rgb(0xf6c6de)}, {1, rgb(0xc2508f)}}));
  canvas.ellipse({at.x - 4, at.y + 3}, 2.4F, 4.2F, rgb(0xffffff, 0.8));
}

}  // namespace

void LevelList::draw(Canvas& canvas) const {
  draw_page_ground(canvas);
  canvas.flush();
  page_ ? page_->draw(canvas, message_) : draw_list(canvas);
  canvas.flush();
}

void LevelList::draw_row(Canvas& canvas, std::size_t row) const {
  Rect at = row_rect(row);
  at.y -= scroll_;
  if (at.bottom() < kTop - 20 || at.y > kBottom + 20) return;
  draw_card(canvas, at, focus_ == row);
  if (row < unfinished_.size()) {
    canvas.text_middle(
        say("list.go_on", {{"level", unfinished_[row].title}, {"when", unfinished_[row].when}}),
        {at.x + 20, at.centre().y}, {18, palette::print, Face::semibold});
    return;
  }
  if (row >= first_wager()) return draw_wager(canvas, at, row - first_wager());
  const std::size_t number = row - unfinished_.size();
  const Level& l = levels_[number].level;
  if (heads_drills(number))
    canvas.text(words::kDrills, {kLeft, at.y - 10}, {16, palette::print_soft, Face::semibold});
  draw_number(canvas, {at.x + 38, at.y + 36}, number);
  canvas.text(l.title, {at.x + kText, at.y + 32}, {21, palette::print, Face::bold});
  canvas.paragraph(l.why, {at.x + kText, at.y + 58}, at.w - kText - 20, kLine, {17, palette::print});
}

void LevelList::draw_wager(Canvas& canvas, const Rect& at, std::size_t wager) const {
  const Wager& w = wagers_[wager].wager;
  if (wager == 0) canvas.text(words::kWagers, {kLeft, at.y - 10}, {16, palette::print_soft, Face::semibold});
  canvas.text(std::to_string(wager + 1), {at.x + 38, at.y + 36},
              {26, palette::accent, Face::bold, Align::centre});
  canvas.text(w.title, {at.x + kText, at.y + 32}, {21, palette::print, Face::bold});
  canvas.paragraph(w.why, {at.x + kText, at.y + 58}, at.w - kText - 20, kLine, {17, palette::print});
}

/// Titrations and drills are numbered apart.
void LevelList::draw_number(Canvas& canvas, Point at, std::size_t level) const {
  std::size_t number = 1;
  for (std::size_t i = level; i > 0 && !heads_drills(i); --i) ++number;
  canvas.text(std::to_string(number), at, {26, palette::accent, Face::bold, Align::centre});
}

void LevelList::draw_list(Canvas& canvas) const {
  const Rect all = canvas.window();
  canvas.clip({all.x, kTop, all.w, kBottom - kTop});
  if (!unfinished_.empty()) {
    canvas.text(words::kUnfinished, {kLeft, kTop + 28 - scroll_}, {16, palette::print_soft, Face::semibold});
  }
  for (std::size_t row = 0; row < rows(); ++row) draw_row(canvas, row);
  float y = row_rect(rows()).y - scroll_;
  for (const Fault& fault : faults_) {
    y += canvas.paragraph(to_string(fault), {kLeft, y + 18}, kWidth, 20, {15, palette::bad, Face::semibold});
  }
  canvas.flush();
  draw_scroll_bar(canvas, {1112, kTop + 10, 8, kBottom - kTop - 20}, content_height(), kBottom - kTop,
                  scroll_);
  canvas.unclip();
  draw_sign(canvas, {kLeft + 18, 84});
  canvas.text("Halfdrop", {kLeft + 50, 90}, {44, palette::print, Face::bold});
  canvas.text(words::kListSubtitle, {kLeft + 52, 116}, {18, palette::print_soft});
  canvas.text(words::kListKeys, {kLeft + kWidth, 116},
              {15, palette::print_soft, Face::regular, Align::right});
  canvas.line({kLeft, kBottom}, {kLeft + kWidth, kBottom}, 1, palette::paper_line);
  canvas.text(words::kRehearsal, {kLeft, kBottom + 26}, {15, palette::print, Face::semibold});
  if (!message_.empty())
    canvas.paragraph(message_, {kLeft, kBottom + 46}, kWidth, 17, {14, palette::bad, Face::semibold});
}

}  // namespace halfdrop

#include "game/level/say.h"
#include "game/scenes/marks_page.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr float kTop = 148.0F, kRow = 41.0F, kLeft = 150.0F, kColumn = 494.0F;

void draw_choice(Canvas& canvas, const Rect& at, const std::string& text, bool chosen) {
  draw_choice_ground(canvas, at, chosen);
  const Point dot{at.x + 20, at.centre().y};
  canvas.circle(dot, 7, palette::print_soft);
  canvas.circle(dot, 5.4F, rgb(0xffffff));
  if (chosen) canvas.circle(dot, 3.8F, palette::accent);
  canvas.text_middle(text, {at.x + 38, at.centre().y},
                     {17, palette::print, chosen ? Face::semibold : Face::regular});
}

}  // namespace

void MarksPage::draw_question(Canvas& canvas) const {
  draw_page_ground(canvas);
  canvas.text(words::kQuestion, {kLeft, 84}, {32, palette::print, Face::bold});
  canvas.text(words::kQuestionWhy, {kLeft, 120}, {18, palette::print});
  constexpr std::size_t half = (kCauses + 1) / 2;
  for (std::size_t i = 0; i < kCauses; ++i) {
    const Rect at{kLeft + (i < half ? 0.0F : kColumn), kTop + kRow * static_cast<float>(i % half),
                  kColumn - 14, kRow - 8};
    draw_choice(canvas, at, std::string(words::cause_name(static_cast<Cause>(i))), i == chosen_);
    places_.emplace_back("cause/" + std::string(cause_id(static_cast<Cause>(i))), at);
  }
  const float y = kTop + kRow * half + 16;
  const std::pair<const char*, Phrase> answers[] = {
      {"too high", words::kTooHigh}, {"too low", words::kTooLow}, {"nothing", words::kNothing}};
  float x = kLeft;
  for (const auto& [name, text] : answers) {
    const Rect at{x, y, 232, 44};
    draw_page_button(canvas, at, text, chosen_ && std::string(name) != "nothing");
    places_.emplace_back(name, at);
    x += 248;
  }
  canvas.text(words::kQuestionKeys, {kLeft, y + 70}, {16, palette::print});
  canvas.flush();
}

}  // namespace halfdrop

#include "game/scenes/drill_card.h"

#include <algorithm>
#include <cassert>

#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr float kMargin = 22.0F;
constexpr float kLeastLarge = 29.0F;  ///< 4 % of the height
constexpr std::size_t kLongestFigure = 8;

}  // namespace

DrillCard::DrillCard(const Session& session, const Rect& area, bool large)
    : drill_(*session.level().drill), area_(area), large_(large) {}

float DrillCard::word_size(float size) const { return large_ ? std::max(size, kLeastLarge) : size; }

float DrillCard::button_height() const { return large_ ? 50.0F : 40.0F; }

Rect DrillCard::inside() const {
  return {area_.x + kMargin, area_.y + kMargin * 0.7F, area_.w - 2 * kMargin,
          area_.h - kMargin * 1.6F - button_height()};
}

std::vector<std::pair<std::string, Rect>> DrillCard::places() const {
  const float high = button_height(), y = area_.bottom() - kMargin * 0.7F - high;
  const float left = area_.x + kMargin, wide = area_.w - 2 * kMargin;
  if (asking()) {
    const float each = wide * 0.26F;
    return {{"yes", {left + wide - 2 * each - 10, y, each, high}},
            {"no", {left + wide - each, y, each, high}}};
  }
  const float hand_in = wide * (large_ ? 0.36F : 0.30F);
  return {{"step", {left, y, wide - hand_in - 12, high}},
          {"hand in", {left + wide - hand_in, y, hand_in, high}}};
}

bool DrillCard::write(const std::string& cell, Session& session) {
  assert(!typed_.empty());
  const bool written = put({cell, typed_}, session);
  if (written) typed_.clear();
  return written;
}

void DrillCard::do_step(Session& session) {
  tell({});
  step(session);
}

bool DrillCard::key(const sf::Event::KeyEvent& key, Session& session) {
  switch (key.code) {
    case sf::Keyboard::Enter:
      if (!enter_held_) do_step(session);  // the keyboard repeats itself
      enter_held_ = true;
      return true;
    case sf::Keyboard::H:
      ask();
      return true;
    case sf::Keyboard::Backspace:
      if (!typed_.empty()) typed_.pop_back();
      return true;
    default:
      return false;
  }
}

bool DrillCard::type(sf::Uint32 character) {
  const bool figure = (character >= '0' && character <= '9') || character == '.' || character == ',';
  if (!figure || !takes_figures() || asking()) return false;
  tell({});
  if (typed_.size() < kLongestFigure) typed_ += static_cast<char>(character);
  return true;
}

bool DrillCard::click(sf::Vector2f at, Session& session) {
  if (!area_.contains(at)) return false;
  for (const auto& [name, rect] : places()) {
    if (!rect.contains(at)) continue;
    if (name == "yes" || name == "no") answer(name == "yes", session);
    if (name == "hand in") ask();
    if (name == "step") do_step(session);
    break;
  }
  return true;
}

void DrillCard::key_released(const sf::Event::KeyEvent& key) {
  if (key.code == sf::Keyboard::Enter) enter_held_ = false;
}

void DrillCard::draw_entry(Canvas& canvas, const Rect& at, const std::string& written) const {
  canvas.rounded_rect(at, 8, typed_.empty() ? rgb(0xffffff, 0.8) : rgb(0xfbe9b7, 0.9));
  canvas.stroke(rounded_rect_points(at, 8), {2, true}, palette::accent);
  const std::string& shown = typed_.empty() ? written : typed_;
  const float size = at.h * 0.62F;
  const TextStyle style{size, palette::ink, Face::italic, Align::centre};
  canvas.text_middle(shown, at.centre(), style);
  if (typed_.empty() && !written.empty()) return;
  const float caret = at.centre().x + canvas.text_width(shown, style) / 2 + 3;
  canvas.line({caret, at.centre().y - size * 0.45F}, {caret, at.centre().y + size * 0.45F}, 2, palette::ink);
}

void DrillCard::draw_foot(Canvas& canvas) const {
  for (const auto& [name, rect] : places()) {
    if (name == "yes") draw_page_button(canvas, rect, words::kYes, true, word_size(17));
    if (name == "no") draw_page_button(canvas, rect, words::kNo, false, word_size(17));
    if (name == "step") draw_page_button(canvas, rect, step_words(), true, word_size(18));
    if (name == "hand in")
      draw_page_button(canvas, rect, large_ ? words::kHandIn : words::kHandInKey, false, word_size(17));
  }
  if (!asking()) return;
  const Rect yes = places().front().second;
  canvas.text_middle(large_ ? words::kHandInShort : words::kHandInLast, {inside().x, yes.centre().y},
                     {word_size(16), palette::bad, Face::semibold});
}

void DrillCard::draw(Canvas& canvas, const Session& session) const {
  canvas.flush();
  draw_paper_ground(canvas, area_, false);
  draw_inside(canvas, session);
  draw_foot(canvas);
  canvas.flush();
}

std::unique_ptr<DrillCard> drill_card(const Session& session, bool large) {
  switch (session.level().drill->kind) {
    case DrillKind::read_meniscus:
      return reading_card(session, large);
    case DrillKind::deliver_exactly:
      return delivery_card(session, large);
    case DrillKind::know_apparatus:
      return apparatus_card(session, large);
    case DrillKind::fill_without_air:
      break;
  }
  return filling_card(session, large);
}

}  // namespace halfdrop

#include "game/scenes/marks_page.h"

#include <algorithm>

#include "game/marking/counted_runs.h"

namespace halfdrop {

namespace {

constexpr float kWheelStep = 60.0F, kPageStep = 520.0F, kPageShown = 652.0F;
constexpr std::size_t kColumns = 2;  ///< of causes in the question

}  // namespace

MarksPage::MarksPage(MarkedAttempt marked, std::vector<EarlierGo> earlier, bool projector)
    : marked_(std::move(marked)),
      earlier_(std::move(earlier)),
      projector_(projector),
      fix_(next_fix(marked_)) {
  if (marked_.drill) said_ = Diagnosis{};
}

MarksPage::Wish MarksPage::take_wish() { return std::exchange(wish_, Wish::none); }

void MarksPage::draw(Canvas& canvas) const {
  places_.clear();
  parts_.clear();
  said_ ? draw_page(canvas) : draw_question(canvas);
}

void MarksPage::scroll(float by) {
  scroll_ = std::clamp(scroll_ + by, 0.0F, std::max(0.0F, content_height_ - kPageShown));
}

void MarksPage::turn_to(const std::string& part) {
  const auto found =
      std::find_if(parts_.begin(), parts_.end(), [&](const auto& one) { return one.first == part; });
  scroll_ = 0.0F;
  if (found != parts_.end()) scroll(found->second - 12.0F);
}

/// A way without a cause is no answer yet.
void MarksPage::say_way(bool too_high) {
  if (chosen_) said_ = Diagnosis{static_cast<Cause>(*chosen_), too_high};
}

bool MarksPage::question_key(const sf::Event::KeyEvent& key) {
  const std::size_t half = (kCauses + kColumns - 1) / kColumns;
  switch (key.code) {
    case sf::Keyboard::Up:
      chosen_ = (chosen_.value_or(kCauses) + kCauses - 1) % kCauses;
      return true;
    case sf::Keyboard::Down:
    case sf::Keyboard::Tab:
      chosen_ = chosen_ ? (*chosen_ + 1) % kCauses : 0;
      return true;
    case sf::Keyboard::Left:
    case sf::Keyboard::Right:
      chosen_ =
          chosen_ && *chosen_ >= half ? *chosen_ - half : std::min(kCauses - 1, chosen_.value_or(0) + half);
      return true;
    case sf::Keyboard::Num0:
    case sf::Keyboard::Numpad0:
      said_ = Diagnosis{};
      return true;
    default:
      return false;
  }
}

bool MarksPage::page_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::Up:
    case sf::Keyboard::Down:
      scroll(key.code == sf::Keyboard::Up ? -kWheelStep : kWheelStep);
      return true;
    case sf::Keyboard::PageUp:
    case sf::Keyboard::PageDown:
      scroll(key.code == sf::Keyboard::PageUp ? -kPageStep : kPageStep);
      return true;
    case sf::Keyboard::Left:
    case sf::Keyboard::Right:
      look_at_run(key.code == sf::Keyboard::Left ? -1 : 1);
      return true;
    case sf::Keyboard::Home:
    case sf::Keyboard::End:
      scroll(key.code == sf::Keyboard::Home ? -content_height_ : content_height_);
      return true;
    case sf::Keyboard::Tab:
      if (marked_.findings.empty()) return true;
      finding_ = finding_
                     ? (*finding_ + (key.shift ? marked_.findings.size() - 1 : 1)) % marked_.findings.size()
                     : 0;
      return true;
    case sf::Keyboard::Enter:
      return finding_ && choose("finding/" + std::to_string(*finding_));
    case sf::Keyboard::A:
      return choose("again");
    case sf::Keyboard::L:
    case sf::Keyboard::Escape:
      return choose("level list");
    default:
      return false;
  }
}

std::string MarksPage::shown_run() const {
  if (!run_.empty()) return run_;
  const auto counted = counted_runs(marked_.titres);
  if (!counted.empty()) return counted.front()->run;
  const auto any = std::find_if(marked_.titres.begin(), marked_.titres.end(),
                                [](const TitreRow& row) { return row.breakdown.has_value(); });
  return any == marked_.titres.end() ? std::string() : any->run;
}

void MarksPage::look_at_run(int by) {
  std::vector<std::string> runs;
  for (const TitreRow& row : marked_.titres) {
    if (row.breakdown) runs.push_back(row.run);
  }
  if (runs.empty()) return;
  const auto at = std::find(runs.begin(), runs.end(), shown_run()) - runs.begin();
  run_ = runs[static_cast<std::size_t>(
      std::clamp<std::ptrdiff_t>(at + by, 0, static_cast<std::ptrdiff_t>(runs.size()) - 1))];
}

void MarksPage::look_at_picture(const std::string& place) {
  for (const PictureRead& picture : std::get<ReadingDrill>(*marked_.drill).pictures) {
    if (place != "picture/" + std::to_string(picture.number)) continue;
    wish_ = Wish::replay;
    replay_tick_ = picture.tick;
  }
}

bool MarksPage::choose(const std::string& place) {
  if (place == "again") wish_ = Wish::again;
  if (place == "level list") wish_ = Wish::level_list;
  if (place == "nothing") said_ = Diagnosis{};
  if (place == "too high" || place == "too low") say_way(place == "too high");
  if (place.starts_with("cause/")) {
    for (std::size_t i = 0; i < kCauses; ++i) {
      if (place == "cause/" + std::string(cause_id(static_cast<Cause>(i)))) chosen_ = i;
    }
  }
  if (place.starts_with("picture/")) look_at_picture(place);
  if (place.starts_with("run/")) run_ = place.substr(4);
  for (std::size_t i = 0; i < marked_.findings.size(); ++i) {
    if (place != "finding/" + std::to_string(i)) continue;
    wish_ = Wish::replay;
    replay_tick_ = marked_.findings[i].tick;
  }
  return true;
}

bool MarksPage::click(sf::Vector2f at) {
  for (const auto& [name, rect] : places_) {
    if (rect.contains(at)) return choose(std::string(name));
  }
  return false;
}

bool MarksPage::event(const sf::Event& event, sf::Vector2f pointer) {
  switch (event.type) {
    case sf::Event::KeyPressed:
      return said_ ? page_key(event.key) : question_key(event.key);
    case sf::Event::TextEntered:
      // + and - lie elsewhere on every keyboard: taken as text.
      if (said_ || (event.text.unicode != '+' && event.text.unicode != '-')) return false;
      say_way(event.text.unicode == '+');
      return true;
    case sf::Event::MouseButtonPressed:
      return event.mouseButton.button == sf::Mouse::Left && click(pointer);
    case sf::Event::MouseWheelScrolled:
      if (said_) scroll(-event.mouseWheelScroll.delta * kWheelStep);
      return true;
    default:
      return false;
  }
}

}  // namespace halfdrop

#include "game/scenes/level_list.h"

#include <algorithm>
#include <utility>

namespace halfdrop {

namespace {

using namespace list_layout;

constexpr float kWheelStep = 60.0F, kPageStep = 420.0F;
constexpr std::size_t kLetters = 96;  ///< that surely fit a line of a card

float card_height(const std::string& why) {
  const std::size_t lines = std::max<std::size_t>(1, (why.size() + kLetters - 1) / kLetters);
  return 54.0F + kLine * static_cast<float>(lines);
}

}  // namespace

LevelList::LevelList(std::vector<Entry> levels, std::vector<Unfinished> unfinished, std::vector<Fault> faults,
                     std::vector<WagerEntry> wagers)
    : levels_(std::move(levels)),
      unfinished_(std::move(unfinished)),
      faults_(std::move(faults)),
      wagers_(std::move(wagers)) {}

std::optional<LevelList::Wish> LevelList::take_wish() { return std::exchange(wish_, std::nullopt); }

void LevelList::tell(const std::vector<Fault>& faults) {
  message_ = faults.empty() ? "" : to_string(faults.front());
}

void LevelList::show_cautions(std::size_t level) {
  page_.emplace(levels_[level].level, way_);
  focus_ = unfinished_.size() + level;
}

bool LevelList::heads_drills(std::size_t level) const {
  return levels_[level].level.drill && (level == 0 || !levels_[level - 1].level.drill);
}

void LevelList::open(std::size_t row) {
  if (row < unfinished_.size()) {
    wish_ = Wish{Wish::Kind::go_on, unfinished_[row].path, {}};
  } else if (row < first_wager()) {
    show_cautions(row - unfinished_.size());
  } else if (row < rows()) {
    wish_ = Wish{Wish::Kind::wager, wagers_[row - first_wager()].path, {}};
  }
}

Rect LevelList::row_rect(std::size_t row) const {
  float y = kTop + 10;
  if (!unfinished_.empty()) y += 30;
  if (row < unfinished_.size()) return {kLeft, y + 54 * static_cast<float>(row), kWidth, 44};
  if (!unfinished_.empty()) y += 54 * static_cast<float>(unfinished_.size()) + 14;
  for (std::size_t i = 0; i < levels_.size(); ++i) {
    if (heads_drills(i)) y += kHeading;
    const float height = card_height(levels_[i].level.why);
    if (unfinished_.size() + i == row) return {kLeft, y, kWidth, height};
    y += height + 12;
  }
  if (!wagers_.empty()) y += kHeading;
  for (std::size_t i = 0; i < wagers_.size(); ++i) {
    const float height = card_height(wagers_[i].wager.why);
    if (first_wager() + i == row) return {kLeft, y, kWidth, height};
    y += height + 12;
  }
  return {kLeft, y, kWidth, 0};
}

float LevelList::content_height() const {
  // Faults are few and short; two lines each.
  return row_rect(rows()).y - kTop + 24 + 44 * static_cast<float>(faults_.size());
}

void LevelList::scroll(float by) {
  scroll_ = std::clamp(scroll_ + by, 0.0F, std::max(0.0F, content_height() - (kBottom - kTop)));
}

/// The chosen row comes into sight, and what heads or ends the list with it.
void LevelList::show_focus() {
  const Rect row = row_rect(focus_);
  scroll(std::max(0.0F, row.bottom() + 24 - scroll_ - kBottom));
  scroll(std::min(0.0F, row.y - 48 - scroll_ - kTop));
}

std::string LevelList::place_of(std::size_t row) const {
  if (row < unfinished_.size()) return "unfinished/" + std::to_string(row);
  if (row < first_wager()) return "level/" + levels_[row - unfinished_.size()].level.id;
  return "wager/" + wagers_[row - first_wager()].wager.id;
}

std::vector<std::pair<std::string, Rect>> LevelList::places() const {
  if (page_) return page_->places();
  std::vector<std::pair<std::string, Rect>> places;
  for (std::size_t row = 0; row < rows(); ++row) {
    Rect at = row_rect(row);
    const float top = std::max(at.y - scroll_, kTop), bottom = std::min(at.bottom() - scroll_, kBottom);
    if (bottom - top < 8) continue;
    at.y = top;
    at.h = bottom - top;
    places.emplace_back(place_of(row), at);
  }
  return places;
}

bool LevelList::choose_on_page(const std::string& place) {
  if (page_->choose(place)) return true;
  if (!levels_[focus_ - unfinished_.size()].level.drill) way_ = page_->way();
  if (place == "start")
    wish_ = Wish{Wish::Kind::start, levels_[focus_ - unfinished_.size()].path, page_->way()};
  if (place == "back") page_.reset();
  return true;
}

bool LevelList::choose(const std::string& place) {
  message_.clear();
  if (page_) return choose_on_page(place);
  for (std::size_t row = 0; row < rows(); ++row) {
    if (place == place_of(row)) {
      open(row);
      break;
    }
  }
  return true;
}

bool LevelList::key(sf::Keyboard::Key code) {
  if (page_) {
    if (code == sf::Keyboard::Enter) return choose("start");
    if (code == sf::Keyboard::Escape || code == sf::Keyboard::Backspace) return choose("back");
    return page_->key(code);
  }
  switch (code) {
    case sf::Keyboard::Up:
    case sf::Keyboard::Down:
    case sf::Keyboard::Tab:
      if (rows() == 0) return true;
      focus_ = code == sf::Keyboard::Up ? (focus_ + rows() - 1) % rows() : (focus_ + 1) % rows();
      show_focus();
      return true;
    case sf::Keyboard::PageUp:
    case sf::Keyboard::PageDown:
      scroll(code == sf::Keyboard::PageUp ? -kPageStep : kPageStep);
      return true;
    case sf::Keyboard::Enter:
      open(focus_);
      return true;
    case sf::Keyboard::Escape:
      wish_ = Wish{Wish::Kind::quit, {}, {}};
      return true;
    default:
      return false;
  }
}

bool LevelList::event(const sf::Event& event, sf::Vector2f pointer) {
  switch (event.type) {
    case sf::Event::KeyPressed:
      return key(event.key.code);
    case sf::Event::MouseWheelScrolled:
      if (page_) {
        page_->scroll(-event.mouseWheelScroll.delta * kWheelStep);
      } else {
        scroll(-event.mouseWheelScroll.delta * kWheelStep);
      }
      return true;
    case sf::Event::MouseButtonPressed:
      if (event.mouseButton.button != sf::Mouse::Left) return false;
      for (const auto& [name, rect] : places()) {
        if (rect.contains(pointer)) return choose(std::string(name));
      }
      return false;
    default:
      return false;
  }
}

}  // namespace halfdrop

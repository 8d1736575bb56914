#include "game/scenes/level_list.h"

#include <algorithm>
#include <utility>

namespace halfdrop {

namespace {

constexpr float kWheelStep = 60.0F, kPageStep = 420.0F;
constexpr float kListTop = 128.0F, kListBottom = 664.0F;

}  // namespace

LevelList::LevelList(std::vector<Entry> levels, std::vector<Unfinished> unfinished, std::vector<Fault> faults)
    : levels_(std::move(levels)), unfinished_(std::move(unfinished)), faults_(std::move(faults)) {}

std::optional<LevelList::Wish> LevelList::take_wish() { return std::exchange(wish_, std::nullopt); }

void LevelList::show_cautions(std::size_t level) {
  cautions_ = level;
  focus_ = unfinished_.size() + level;
}

void LevelList::open(std::size_t row) {
  if (row < unfinished_.size()) {
    wish_ = Wish{Wish::Kind::go_on, unfinished_[row].path};
  } else if (row < rows()) {
    show_cautions(row - unfinished_.size());
  }
}

void LevelList::scroll(float by) {
  scroll_ = std::clamp(scroll_ + by, 0.0F, std::max(0.0F, content_height_ - (kListBottom - kListTop)));
}

bool LevelList::choose(const std::string& place) {
  if (place == "start" && cautions_) wish_ = Wish{Wish::Kind::start, levels_[*cautions_].path};
  if (place == "back") cautions_.reset();
  for (std::size_t i = 0; i < unfinished_.size(); ++i) {
    if (place == "unfinished/" + std::to_string(i)) open(i);
  }
  for (std::size_t i = 0; i < levels_.size(); ++i) {
    if (place == "level/" + levels_[i].level.id) open(unfinished_.size() + i);
  }
  return true;
}

bool LevelList::key(sf::Keyboard::Key code) {
  if (cautions_) {
    if (code == sf::Keyboard::Enter) return choose("start");
    if (code == sf::Keyboard::Escape || code == sf::Keyboard::Backspace) return choose("back");
    return false;
  }
  switch (code) {
    case sf::Keyboard::Up:
    case sf::Keyboard::Down:
    case sf::Keyboard::Tab:
      if (rows() == 0) return true;
      focus_ = code == sf::Keyboard::Up ? (focus_ + rows() - 1) % rows() : (focus_ + 1) % rows();
      // The chosen row comes into sight; its place was last drawn one row away.
      scroll(code == sf::Keyboard::Up ? std::min(0.0F, focus_rect_.y - 110 - kListTop)
                                      : std::max(0.0F, focus_rect_.bottom() + 110 - kListBottom));
      if (focus_ == 0) scroll(-content_height_);
      if (focus_ + 1 == rows()) scroll(content_height_);
      return true;
    case sf::Keyboard::PageUp:
    case sf::Keyboard::PageDown:
      scroll(code == sf::Keyboard::PageUp ? -kPageStep : kPageStep);
      return true;
    case sf::Keyboard::Enter:
      open(focus_);
      return true;
    case sf::Keyboard::Escape:
      wish_ = Wish{Wish::Kind::quit, {}};
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
      if (!cautions_) scroll(-event.mouseWheelScroll.delta * kWheelStep);
      return true;
    case sf::Event::MouseButtonPressed:
      if (event.mouseButton.button != sf::Mouse::Left) return false;
      for (const auto& [name, rect] : places_) {
        if (rect.contains(pointer)) return choose(std::string(name));
      }
      return false;
    default:
      return false;
  }
}

}  // namespace halfdrop

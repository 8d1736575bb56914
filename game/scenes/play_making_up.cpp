// What keys and mouse do while a standard is made up.

#include "game/level/say.h"
#include "game/scenes/making_up_panel.h"
#include "game/scenes/play_scene.h"

namespace halfdrop {

namespace {

std::optional<std::size_t> number_of(sf::Keyboard::Key key) {
  if (key >= sf::Keyboard::Num1 && key <= sf::Keyboard::Num9)
    return static_cast<std::size_t>(key - sf::Keyboard::Num1);
  if (key >= sf::Keyboard::Numpad1 && key <= sf::Keyboard::Numpad9)
    return static_cast<std::size_t>(key - sf::Keyboard::Numpad1);
  return std::nullopt;
}

Grasp grasp_of(Grip grip) { return grip == Grip::tip ? Grasp::tip : Grasp::let_in; }

}  // namespace

bool PlayScene::shows_making_up() const {
  return view_.preparation.asked && !view_.preparation.taken_from && !making_up_hidden_;
}

/// 1 to 6 are the panel's lines, 0 hides it and shows it again.
bool PlayScene::making_up_key(const sf::Event::KeyEvent& key) {
  if (!view_.preparation.asked || view_.preparation.taken_from) return false;
  if (key.code == sf::Keyboard::Num0 || key.code == sf::Keyboard::Numpad0) {
    making_up_hidden_ = !making_up_hidden_;
    look();
    return true;
  }
  const std::optional<std::size_t> number = number_of(key.code);
  if (!number || *number >= making_up_lines().size()) return false;
  const MakingUpLine& line = making_up_lines()[*number];
  if (line.deed) {
    act(*line.deed);
  } else {
    take(grasp_of(line.grip), making_up_strength(line.grip, key.shift));
  }
  return true;
}

void PlayScene::making_up_key_released(const sf::Event::KeyEvent& key) {
  const std::optional<std::size_t> number = number_of(key.code);
  if (!view_.preparation.asked || !number || *number >= making_up_lines().size()) return;
  const MakingUpLine& line = making_up_lines()[*number];
  if (line.grip != Grip::none) release(grasp_of(line.grip));
}

void PlayScene::hold_making_up(const Thing& thing, bool gently) {
  hold_by_button(grasp_of(thing.grip), making_up_strength(thing.grip, gently));
}

}  // namespace halfdrop

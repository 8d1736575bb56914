#pragma once
// After an assessed attempt: where the file lies that is to be handed in.

#include <SFML/Window/Event.hpp>
#include <string>

#include "game/scenes/canvas.h"

namespace halfdrop {

class HandedInPage {
 public:
  /// `file`: the attempt's own; `whole`: it is there to its last line.
  HandedInPage(std::string level_title, std::string file, bool whole);

  void draw(Canvas& canvas) const;
  /// Enter, Escape or the button leave it.
  void event(const sf::Event& event, sf::Vector2f pointer);
  [[nodiscard]] bool left() const { return left_; }

 private:
  std::string level_title_, file_;
  bool whole_ = true, left_ = false;
};

}  // namespace halfdrop

#pragma once
// The page before a level: its story, what its liquids have to be warned of at their strengths, how to work
// safely, and in which of the three ways it is to be played.

#include <SFML/Window/Event.hpp>
#include <string>
#include <utility>
#include <vector>

#include "game/level/bottle_hazards.h"
#include "game/level/say.h"
#include "game/scenes/canvas.h"
#include "game/session/way.h"

namespace halfdrop {

class SafetyPage {
 public:
  /// `level` must outlive the page; `way` is proposed. A drill is played one way: independently.
  SafetyPage(const Level& level, Way way);

  /// `message`: why the level could not begin; mostly empty.
  void draw(Canvas& canvas, const std::string& message) const;
  /// Arrows, Tab or 1 to 3 choose a way; Page Up and Page Down turn what is too long. True when the key was
  /// the page's own.
  bool key(sf::Keyboard::Key code);
  /// A place that was clicked: "way/guided" ... True when it was a way.
  bool choose(const std::string& place);
  /// What can be clicked: the ways, "start", "back".
  [[nodiscard]] std::vector<std::pair<std::string, Rect>> places() const;
  [[nodiscard]] Way way() const { return way_; }
  /// Moves on in a story or in cautions that are longer than their place.
  void scroll(float by);

 private:
  void draw_story(Canvas& canvas) const;
  void draw_safety(Canvas& canvas) const;
  void draw_ways(Canvas& canvas) const;

  const Level& level_;
  Way way_;
  std::vector<BottleHazards> bottles_;
  float scroll_ = 0;
  mutable float hidden_ = 0;  ///< of the longer column, as drawn last
};

/// What is to be heeded in every titration: eye protection, filling height, filler, spills, clearing up.
[[nodiscard]] std::vector<std::string> house_rules();
/// "0.40 % sodium hydroxide: not classified at this strength."
[[nodiscard]] std::string bottle_line(const BottleHazards& bottle);

}  // namespace halfdrop

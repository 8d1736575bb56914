#pragma once
// The paper that lies beside the bench: a results sheet, or the card of a drill. The bench goes on ticking
// while one writes.

#include <SFML/Window/Event.hpp>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "game/scenes/canvas.h"
#include "game/session/session.h"

namespace halfdrop {

class Paper {
 public:
  Paper() = default;
  Paper(const Paper&) = delete;
  Paper& operator=(const Paper&) = delete;
  virtual ~Paper() = default;

  virtual void draw(Canvas& canvas, const Session& session) const = 0;
  /// True when the paper took the event. `pointer` is the mouse in design units. H asks whether to hand in;
  /// a confirmed "Hand in" ends the session ("handed in").
  virtual bool event(const sf::Event& event, sf::Vector2f pointer, Session& session) = 0;
  /// Letters belong to the paper: a cell is being written.
  [[nodiscard]] virtual bool editing() const = 0;
  [[nodiscard]] virtual Rect area() const = 0;
  /// Every place that can be clicked, by name.
  [[nodiscard]] virtual std::vector<std::pair<std::string, Rect>> places() const = 0;
};

/// `large`: words at 4 % of the height at least, where the paper can have them (a drill's card).
[[nodiscard]] std::unique_ptr<Paper> paper_of(const Level& level, bool large);

}  // namespace halfdrop

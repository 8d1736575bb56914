#pragma once
// The results sheet as paper one writes on. The bench goes on ticking while one writes.

#include <SFML/Window/Event.hpp>
#include <map>
#include <string>
#include <vector>

#include "game/scenes/canvas.h"
#include "game/session/session.h"

namespace halfdrop {

class SheetPaper {
 public:
  explicit SheetPaper(const Level& level);

  void draw(Canvas& canvas, const Session& session) const;
  /// True when the paper took the event. `pointer` is the mouse in design units. Enter writes through
  /// Session::write at the session's tick; a confirmed "Hand in" ends the session ("handed in").
  bool event(const sf::Event& event, sf::Vector2f pointer, Session& session);

  /// A cell is being written: keys belong to the paper.
  [[nodiscard]] bool editing() const { return !editing_.empty(); }
  [[nodiscard]] const std::string& edited_cell() const { return editing_; }
  /// The question "Hand in?" stands open: keys belong to the paper.
  [[nodiscard]] bool asking() const { return asking_; }
  /// The paper lies larger over the bench (key T, or its corner).
  [[nodiscard]] bool forward() const { return forward_; }
  void come_forward(bool forward);
  /// Starts writing in a cell; empty: the next cell that wants writing.
  void open(const std::string& cell, const Session& session);

  /// Where the paper lies, and a cell of it; also "hand in", "turn", "yes", "no". Empty rectangle if not
  /// shown.
  [[nodiscard]] Rect area() const;
  [[nodiscard]] Rect rect_of(const std::string& cell) const;
  /// Every place that can be clicked, by name.
  [[nodiscard]] std::vector<std::pair<std::string, Rect>> places() const;

 private:
  bool key(const sf::Event::KeyEvent& key, Session& session);
  bool click(sf::Vector2f at, Session& session);
  bool answer(bool yes, Session& session);
  void write(Session& session);
  void move(int columns, int rows, Session& session);
  void step(int by, Session& session);
  void toggle_counts(const std::string& cell, Session& session);
  void draw_table(Canvas& canvas, const Session& session) const;
  void draw_calculation(Canvas& canvas, const Session& session) const;
  void draw_cell(Canvas& canvas, const Session& session, const std::string& cell) const;
  void draw_foot(Canvas& canvas) const;

  std::vector<std::string> runs_;
  std::vector<CalculationStep> calculation_;
  std::vector<std::string> cells_;
  std::string editing_, text_, message_;
  bool forward_ = false;
  bool asking_ = false;
};

/// What stood in each cell before what stands there now, oldest first.
[[nodiscard]] std::vector<std::string> struck_out(const Attempt& attempt, const std::string& cell);

}  // namespace halfdrop

#pragma once
// The results sheet as paper one writes on.

#include <string>
#include <vector>

#include "game/scenes/paper.h"
#include "game/scenes/sheet_layout.h"
#include "game/scenes/worked_slip.h"

namespace halfdrop {

class SheetPaper : public Paper {
 public:
  /// `slip`: the working on other figures; one that offers nothing is never shown.
  /// `no_example`: why the slip is not to be had, where that is not because it is withdrawn.
  explicit SheetPaper(const Level& level, WorkedSlip slip = {}, std::string no_example = {});

  void draw(Canvas& canvas, const Session& session) const override;
  /// A cell is being written: keys belong to the paper.
  [[nodiscard]] bool editing() const override { return !editing_.empty(); }
  [[nodiscard]] const std::string& edited_cell() const { return editing_; }
  /// The paper lies larger over the bench (key T, or its corner).
  [[nodiscard]] bool forward() const { return forward_; }
  void come_forward(bool forward);
  /// The slip with the working on other figures lies beside the paper (key F4, or "e.g." at a line; by itself
  /// when the working is opened for the first time).
  [[nodiscard]] bool shows_example() const { return example_shown_; }
  void show_example(bool shown);
  /// Starts writing in a cell; empty name: the next cell that wants writing, in the order of work; the first
  /// where none does.
  void open(const std::string& cell, const Session& session);

  /// Where the paper lies, and a cell of it; also "hand in", "turn", "yes", "no", "example/..." with a step's
  /// cell. Empty rectangle if not shown.
  [[nodiscard]] Rect area() const override;
  [[nodiscard]] Rect rect_of(const std::string& cell) const;
  /// Every place that can be clicked, by name.
  [[nodiscard]] std::vector<std::pair<std::string, Rect>> places() const override;

 private:
  [[nodiscard]] SheetLayout layout() const;
  /// R opens the next cell, T brings the paper forward, F4 the working on other figures, H asks whether to
  /// hand in. Enter, Tab and up/down write through Session::write at the session's tick, Esc leaves the cell
  /// as it was, Delete strikes it out.
  bool key(const sf::Event::KeyEvent& key, Session& session) override;
  [[nodiscard]] std::string next_empty(const Session& session) const;
  bool editing_key(const sf::Event::KeyEvent& key, Session& session);
  bool idle_key(const sf::Event::KeyEvent& key, Session& session);
  bool type(sf::Uint32 character) override;
  bool click(sf::Vector2f at, Session& session) override;
  void open_place(const std::string& name, Session& session);
  void leave(Session& session);
  void move(int columns, int rows, Session& session);
  void step(int by, Session& session);
  void draw_table(Canvas& canvas, const SheetLayout& sheet, const Session& session) const;
  void draw_working(Canvas& canvas, const SheetLayout& sheet, const Session& session) const;
  void draw_working_line(Canvas& canvas, const SheetLayout& sheet, const Session& session) const;
  void draw_foot(Canvas& canvas, const SheetLayout& sheet) const;

  Level level_;
  std::vector<CalculationStep> lines_;  ///< weighings, then the working
  WorkedSlip slip_;
  std::string no_example_;
  std::vector<std::string> runs_;
  std::string editing_, text_;
  bool forward_ = false, example_shown_ = false, example_seen_ = false;
  bool came_for_working_ = false;  ///< goes back to its place when the working is left
  bool swallow_ = false;           ///< the key that opened a cell also comes as text
};

/// What stood in a cell before what stands there now, oldest first.
[[nodiscard]] std::vector<std::string> struck_out(const Attempt& attempt, const std::string& cell);

}  // namespace halfdrop

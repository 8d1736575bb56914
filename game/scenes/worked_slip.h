#pragma once
// A slip of paper beside the results sheet: the working on another bench's figures, line by line, and what of
// it is withdrawn.

#include <string>
#include <vector>

#include "game/marking/worked_example.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

class WorkedSlip {
 public:
  WorkedSlip() = default;
  WorkedSlip(WorkedExample example, std::vector<std::string> withdrawn)
      : example_(std::move(example)), withdrawn_(std::move(withdrawn)) {}

  /// Something can be shown: a line still stands.
  [[nodiscard]] bool offered() const;
  [[nodiscard]] bool is_withdrawn(const std::string& cell) const;
  /// Lines that still stand.
  [[nodiscard]] std::size_t standing() const;

  [[nodiscard]] static Rect area();
  /// `cell`: the line that is being written, marked on the slip; may be empty.
  void draw(Canvas& canvas, const std::string& cell) const;

 private:
  [[nodiscard]] float larger() const { return example_.lines.size() <= 6 ? 2.0F : 0.0F; }
  float draw_line(Canvas& canvas, float y, std::size_t index, bool marked) const;

  WorkedExample example_;
  std::vector<std::string> withdrawn_;
};

/// Lines withdrawn for this level by what its attempts in a folder, handed in under the same alias, wrote
/// rightly. Nothing is replayed: the sheet alone is looked at.
[[nodiscard]] std::vector<std::string> withdrawn_lines(const std::string& folder, const Level& level,
                                                       const std::string& alias);

}  // namespace halfdrop

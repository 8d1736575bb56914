#pragma once
// Where everything lies on the results sheet, at its place beside the bench or forward over it. Pure.

#include <string>
#include <utility>
#include <vector>

#include "game/level/level.h"
#include "game/level/say.h"
#include "game/scenes/paint.h"

namespace halfdrop {

/// A cell of the table by column (run) and row.
inline constexpr int kSheetRows = 4;
[[nodiscard]] const char* sheet_row_name(int row);  ///< final, initial, titre, counts: as the paper has them
/// As the trade heads them: "initial reading / cm³".
[[nodiscard]] Phrase sheet_row_words(int row, bool with_unit);

struct SheetLayout {
  Rect paper;
  Rect table;  ///< heading and rows
  float heading_height = 0.0F, row_height = 0.0F, label_width = 0.0F, column_width = 0.0F;
  float print_size = 0.0F, ink_size = 0.0F, struck_size = 0.0F;
  Rect working;                                      ///< the calculation, or the line that stands for it
  float line_height = 0.0F;                          ///< of the working
  std::vector<std::pair<std::string, Rect>> places;  ///< cells, "turn", "hand in"; "yes", "no" while asking

  /// Empty if there is no such place.
  [[nodiscard]] Rect place(const std::string& name) const;
};

/// `forward`: larger, with the working; otherwise beside the bench, with one line that stands for it
/// ("working").
[[nodiscard]] SheetLayout sheet_layout(const std::vector<std::string>& runs,
                                       const std::vector<CalculationStep>& calculation, bool forward,
                                       bool asking);

}  // namespace halfdrop

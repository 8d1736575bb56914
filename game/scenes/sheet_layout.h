#pragma once
// Where everything lies on the results sheet, at its place beside the bench or forward over it. Pure.

#include <span>
#include <string>
#include <utility>
#include <vector>

#include "game/level/level.h"
#include "game/level/say.h"
#include "game/scenes/paint.h"

namespace halfdrop {

/// A row of the table as the paper has them, by its cells' name, and as the trade heads it: "initial
/// reading", with its unit "initial reading / cm³".
struct SheetRow {
  const char* name;
  Phrase words;
  Phrase with_unit;
};
/// Readings with the last on top, titres, counts; `two`: where a flask has two endpoints.
[[nodiscard]] std::span<const SheetRow> sheet_rows(bool two);

struct SheetLayout {
  Rect paper;
  std::span<const SheetRow> rows;
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
                                       bool asking, bool two_endpoints = false);

}  // namespace halfdrop

#include "game/scenes/sheet_layout.h"

#include <algorithm>
#include <array>

#include "game/level/say.h"

namespace halfdrop {

namespace {

constexpr Rect kAside{850, 440, 418, 266};
constexpr Rect kForward{150, 14, 698, 632};
constexpr float kMostLine = 42.0F;

void place_table(SheetLayout& sheet, const std::vector<std::string>& runs) {
  for (std::size_t column = 0; column < runs.size(); ++column) {
    for (std::size_t row = 0; row < sheet.rows.size(); ++row) {
      sheet.places.emplace_back(
          runs[column] + "/" + sheet.rows[row].name,
          Rect{sheet.table.x + sheet.label_width + sheet.column_width * static_cast<float>(column),
               sheet.table.y + sheet.heading_height + sheet.row_height * static_cast<float>(row),
               sheet.column_width, sheet.row_height});
    }
  }
}

void place_working(SheetLayout& sheet, const std::vector<CalculationStep>& calculation) {
  const Rect& w = sheet.working;
  sheet.line_height =
      std::min(kMostLine, w.h / static_cast<float>(std::max<std::size_t>(1, calculation.size())));
  for (std::size_t i = 0; i < calculation.size(); ++i) {
    sheet.places.emplace_back(calculation[i].cell,
                              Rect{w.x + w.w * 0.56F, w.y + sheet.line_height * static_cast<float>(i),
                                   w.w * 0.26F, sheet.line_height});
  }
}

void place_foot(SheetLayout& sheet, bool forward, bool asking) {
  const Rect& p = sheet.paper;
  const float margin = forward ? 24.0F : 14.0F, height = forward ? 36.0F : 30.0F;
  const float y = p.bottom() - margin * 0.6F - height;
  if (!asking) {
    sheet.places.emplace_back("hand in", Rect{p.right() - margin - 96, y, 96, height});
    return;
  }
  sheet.places.emplace_back("yes", Rect{p.right() - margin - 138, y, 64, height});
  sheet.places.emplace_back("no", Rect{p.right() - margin - 64, y, 64, height});
}

}  // namespace

std::span<const SheetRow> sheet_rows(bool two) {
  static constexpr SheetRow kFinal{"final", "sheet.final", "sheet.final.cm3"},
      kInitial{"initial", "sheet.initial", "sheet.initial.cm3"},
      kTitre{"titre", "sheet.titre", "sheet.titre.cm3"}, kCounts{"counts", "sheet.counts", "sheet.counts"};
  static constexpr std::array kOne = {kFinal, kInitial, kTitre, kCounts};
  static constexpr std::array kTwo = {
      kFinal,   SheetRow{"first endpoint", "sheet.first_endpoint", "sheet.first_endpoint.cm3"},
      kInitial, SheetRow{"first titre", "sheet.first_titre", "sheet.first_titre.cm3"},
      kTitre,   kCounts};
  if (two) return kTwo;
  return kOne;
}

Rect SheetLayout::place(const std::string& name) const {
  const auto found =
      std::find_if(places.begin(), places.end(), [&](const auto& p) { return p.first == name; });
  return found == places.end() ? Rect{} : found->second;
}

SheetLayout sheet_layout(const std::vector<std::string>& runs,
                         const std::vector<CalculationStep>& calculation, bool forward, bool asking,
                         bool two_endpoints) {
  SheetLayout sheet;
  sheet.rows = sheet_rows(two_endpoints);
  const float columns = static_cast<float>(runs.size());
  sheet.paper = forward ? kForward : kAside;
  const Rect& p = sheet.paper;
  const float margin = forward ? 24.0F : 14.0F;
  sheet.heading_height = forward ? 36.0F : 30.0F;
  const bool long_working = calculation.size() > 6;
  sheet.row_height = forward ? (long_working ? 43.0F : 50.0F) : 35.0F;
  if (two_endpoints) sheet.row_height = forward ? 39.0F : 23.5F;
  sheet.label_width = forward ? 178.0F : 104.0F;
  sheet.print_size = forward ? 18.0F : 15.0F;
  sheet.ink_size = forward ? 24.0F : (columns > 5 ? 16.0F : 19.0F);
  sheet.struck_size = forward ? 16.0F : 13.0F;
  if (two_endpoints) sheet.ink_size = forward ? 21.0F : 15.0F;
  sheet.table = {p.x + margin, p.y + (forward ? 48.0F : 12.0F), p.w - 2 * margin,
                 sheet.heading_height + sheet.row_height * static_cast<float>(sheet.rows.size())};
  sheet.column_width = (sheet.table.w - sheet.label_width) / columns;
  place_table(sheet, runs);
  const float working_top = sheet.table.bottom() + (forward ? (long_working ? 12.0F : 18.0F) : 2.0F);
  const float foot = forward ? (long_working ? 54.0F : 62.0F) : 42.0F;
  sheet.working = {sheet.table.x, working_top, sheet.table.w, p.bottom() - foot - working_top};
  if (forward) {
    place_working(sheet, calculation);
  } else {
    sheet.places.emplace_back("working", sheet.working);
  }
  sheet.places.emplace_back("turn", Rect{p.right() - 26, p.y, 26, 26});
  place_foot(sheet, forward, asking);
  return sheet;
}

}  // namespace halfdrop

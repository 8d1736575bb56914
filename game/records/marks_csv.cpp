#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "game/marking/wording.h"
#include "game/records/marks_json.h"

namespace halfdrop {

namespace {

/// A spreadsheet takes a cell that begins so for a formula; an apostrophe in front makes it text.
std::string defused(const std::string& text) {
  const bool formula = !text.empty() && std::string("=+-@\t\r").find(text.front()) != std::string::npos;
  return formula ? "'" + text : text;
}

/// Quoted where a comma, a quote or a line end asks for it (RFC 4180).
std::string quoted(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + "\"";
}

std::string name(const std::string& text) { return quoted(defused(text)); }

/// Shortest figure that reads back the same; empty when there is none.
std::string number(std::optional<double> value) {
  if (!value || !std::isfinite(*value)) return {};
  std::array<char, 40> buffer{};
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), *value);
  return error == std::errc() ? std::string(buffer.data(), end) : std::string();
}

/// Its kind, and each of its own figures in its own column.
std::string drill_columns(const std::optional<DrillFigures>& drill) {
  std::string columns = "," + (drill ? std::string(drill_name(kind_of(*drill))) : "");
  const std::vector<DrillFigure> figures = drill ? key_figures(*drill) : std::vector<DrillFigure>();
  for (const std::string& id : key_figure_ids()) {
    const auto found = std::find_if(figures.begin(), figures.end(),
                                    [&](const DrillFigure& figure) { return figure.id == id; });
    columns += "," + (found == figures.end() ? "" : number(found->value));
  }
  return columns;
}

std::string yes_no(bool value) { return value ? "yes" : "no"; }

}  // namespace

std::string marks_csv_header() {
  std::string header =
      "attempt,alias,level,reproduced,safety,hand,eye,record,arithmetic,total,of,mean_titre_cm3,ideal_"
      "titre_cm3,"
      "reported,true,unit,drill";
  for (const std::string& id : key_figure_ids()) header += "," + id;
  return header;
}

std::string marks_csv_row(const MarkedAttempt& marked, const std::string& attempt_name) {
  std::string row = name(attempt_name) + "," + name(marked.alias) + "," + name(marked.level_id) + "," +
                    yes_no(marked.outcome.reproduced) + "," + yes_no(marked.marks.safe);
  for (const Marks::Part& part : marked.marks.parts) row += "," + number(part.points);
  const std::array<std::optional<double>, 6> figures = {marked.marks.total,    marked.marks.of,
                                                        marked.mean_titre_cm3, tidy(marked.ideal_titre_cm3),
                                                        marked.reported,       marked.true_value};
  for (const std::optional<double>& figure : figures) row += "," + number(figure);
  return row + "," + name(marked.unit) + drill_columns(marked.drill);
}

}  // namespace halfdrop

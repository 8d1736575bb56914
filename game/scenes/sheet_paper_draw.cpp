#include <algorithm>
#include <functional>

#include "game/level/say.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/sheet_paper.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

TextStyle print(float size, Face face = Face::regular, Align align = Align::left) {
  return {size, palette::print, face, align};
}

/// A hand does not keep the line: up to a unit off, the same for the same words.
float unsteadiness(const std::string& text) {
  return static_cast<float>(std::hash<std::string>{}(text) % 5) * 0.5F - 1.0F;
}

/// The largest of some sizes at which a text fits, never below 13.
float fitting(const Canvas& canvas, const std::string& text, float width, TextStyle style) {
  while (style.size > 13.0F && canvas.text_width(text, style) > width) style.size -= 1.0F;
  return style.size;
}

void draw_tick(Canvas& canvas, Point at, float size) {
  canvas.stroke({{at.x - size * 0.42F, at.y - size * 0.02F},
                 {at.x - size * 0.10F, at.y + size * 0.34F},
                 {at.x + size * 0.50F, at.y - size * 0.46F}},
                {size * 0.15F, false, true}, palette::ink);
}

void draw_tick_box(Canvas& canvas, const Rect& cell, float size) {
  const Rect box{cell.centre().x - size / 2, cell.centre().y - size / 2, size, size};
  canvas.stroke(rounded_rect_points(box, 2), {std::max(1.0F, canvas.pixel()), true}, palette::print_soft);
}

void draw_grid(Canvas& canvas, const SheetLayout& sheet, const std::vector<std::string>& runs, bool forward) {
  const Rect& t = sheet.table;
  const float px = std::max(1.0F, canvas.pixel());
  for (std::size_t row = 0; row <= sheet.rows.size(); ++row) {
    const float y = t.y + sheet.heading_height + sheet.row_height * static_cast<float>(row);
    canvas.line({t.x, y}, {t.right(), y}, row == 0 ? 1.6F * px : px,
                row == 0 ? palette::print_soft : palette::paper_line);
  }
  const TextStyle head = print(sheet.print_size, Face::semibold);
  canvas.text_middle(forward ? words::kSheetRun : words::kSheetHeading,
                     {t.x + 2, t.y + sheet.heading_height / 2}, head);
  for (std::size_t c = 0; c < runs.size(); ++c) {
    const float x = t.x + sheet.label_width + sheet.column_width * static_cast<float>(c);
    canvas.line({x, t.y + 4}, {x, t.bottom()}, px, palette::paper_line);
    const std::string& name = runs[c] == "trial" ? say("sheet.trial") : runs[c];
    canvas.text_middle(
        name, {x + sheet.column_width / 2, t.y + sheet.heading_height / 2},
        fitted(canvas, name, sheet.column_width - 6, print(sheet.print_size, Face::semibold, Align::centre)));
  }
  for (std::size_t row = 0; row < sheet.rows.size(); ++row) {
    const float y = t.y + sheet.heading_height + sheet.row_height * (static_cast<float>(row) + 0.5F);
    const Phrase words = forward ? sheet.rows[row].with_unit : sheet.rows[row].words;
    canvas.text_middle(words, {t.x + 2, y},
                       fitted(canvas, words, sheet.label_width - 4, print(sheet.print_size)));
  }
}

/// What a cell shows; what was struck out oldest first.
struct CellInk {
  std::string now;
  std::vector<std::string> struck;
  bool edited = false;
};

/// The latest that fit, each with its own stroke; a dot or three for what stood there before.
void draw_struck(Canvas& canvas, const SheetLayout& sheet, const Rect& cell,
                 std::vector<std::string> struck) {
  constexpr float kBetween = 8.0F;
  TextStyle style{sheet.struck_size, faded(palette::ink, 0.85), Face::italic, Align::left};
  const auto width = [&] {
    float all = -kBetween;
    for (const std::string& text : struck) all += canvas.text_width(text, style) + kBetween;
    return all;
  };
  while (style.size > 12.0F && width() > cell.w - 6) style.size -= 0.5F;
  bool more = false;
  while (struck.size() > 1 && width() > cell.w - 6) {
    struck.erase(struck.begin() + (more ? 1 : 0));
    if (!more) struck.insert(struck.begin(), "\u2026");
    more = true;
    if (struck.size() == 2) break;
  }
  const float y = cell.y + 4 + sheet.struck_size * 0.5F;
  float x = cell.centre().x - width() / 2;
  for (const std::string& text : struck) {
    const float wide = canvas.text_width(text, style);
    canvas.text_middle(text, {x, y}, style);
    if (text != "\u2026") canvas.line({x - 2, y + 1.5F}, {x + wide + 2, y - 1.5F}, 1.6F, palette::ink);
    x += wide + kBetween;
  }
}

void draw_ink(Canvas& canvas, const SheetLayout& sheet, const Rect& cell, const CellInk& ink) {
  if (ink.edited) {
    canvas.rounded_rect(cell.grown(-1.5F), 4, rgb(0xfbe9b7, 0.9));
    canvas.stroke(rounded_rect_points(cell.grown(-1.5F), 4), {1.6F, true}, palette::accent);
  }
  if (!ink.struck.empty()) draw_struck(canvas, sheet, cell, ink.struck);
  TextStyle style{sheet.ink_size, palette::ink, Face::italic, Align::centre};
  style.size = fitting(canvas, ink.now, cell.w - 4, style);
  const float drop = ink.struck.empty() ? 0.0F : sheet.struck_size * 0.62F;
  const Point at{cell.centre().x, cell.centre().y + drop + (ink.edited ? 0.0F : unsteadiness(ink.now))};
  canvas.text_middle(ink.now, at, style);
  if (!ink.edited) return;
  const float caret = at.x + canvas.text_width(ink.now, style) / 2 + 2;
  canvas.line({caret, at.y - style.size * 0.5F}, {caret, at.y + style.size * 0.5F}, 1.6F, palette::ink);
}

void draw_button(Canvas& canvas, const Rect& at, const std::string& text, float size, bool strong) {
  canvas.rounded_rect(at, 6, strong ? palette::accent : rgb(0xffffff, 0.6));
  canvas.stroke(rounded_rect_points(at, 6), {1.4F, true}, palette::accent);
  canvas.text_middle(text, at.centre(),
                     {size, strong ? palette::pill_text : palette::accent, Face::semibold, Align::centre});
}

/// What is seen in a cell while `editing` may be in it.
CellInk ink_of(const Session& session, const std::string& cell, const std::string& editing,
               const std::string& typed) {
  CellInk ink{session.cell(cell), struck_out(session.attempt(), cell), cell == editing};
  if (ink.edited) {
    if (!ink.now.empty()) ink.struck.push_back(ink.now);
    ink.now = typed;
  }
  return ink;
}

}  // namespace

void SheetPaper::draw_table(Canvas& canvas, const SheetLayout& sheet, const Session& session) const {
  draw_grid(canvas, sheet, runs_, forward_);
  for (const std::string& run : runs_) {
    for (std::size_t row = 0; row < sheet.rows.size(); ++row) {
      const std::string cell = run + "/" + sheet.rows[row].name;
      const Rect place = sheet.place(cell);
      const CellInk ink = ink_of(session, cell, editing_, text_);
      if (row + 1 < sheet.rows.size()) {
        draw_ink(canvas, sheet, place, ink);
        continue;
      }
      if (ink.edited) draw_ink(canvas, sheet, place, {"", {}, true});
      draw_tick_box(canvas, place, sheet.ink_size * 0.9F);
      if (!session.cell(cell).empty()) draw_tick(canvas, place.centre(), sheet.ink_size * 0.8F);
    }
  }
}

void SheetPaper::draw_working(Canvas& canvas, const SheetLayout& sheet, const Session& session) const {
  const float px = std::max(1.0F, canvas.pixel());
  for (const CalculationStep& step : lines_) {
    const Rect place = sheet.place(step.cell);
    const float middle = place.centre().y, left = sheet.working.x;
    const float width = place.x - left - 24;
    TextStyle style = print(17);
    if (canvas.text_width(step.prompt, style) > width) {  // two lines of print to one of ink
      style.size = std::min(style.size, sheet.line_height * 0.42F);
      style.size = fitting(canvas, step.prompt, width * 1.9F, style);
    }
    const auto lines = canvas.wrapped(step.prompt, width, style);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const float shift =
          (static_cast<float>(i) - 0.5F * static_cast<float>(lines.size() - 1)) * style.size * 1.1F;
      canvas.text_middle(lines[i], {left + 2, middle + shift}, style);
    }
    canvas.text_middle("=", {place.x - 12, middle}, print(17, Face::regular, Align::centre));
    canvas.line({place.x, place.bottom() - 5}, {place.right(), place.bottom() - 5}, px, palette::print_soft);
    const CellInk ink = ink_of(session, step.cell, editing_, text_);
    const Rect line{place.x, place.y, place.w, place.h - 5};
    if (ink.struck.empty()) {
      draw_ink(canvas, sheet, line, ink);
    } else {
      SheetLayout small = sheet;
      small.struck_size = 13;
      small.ink_size = 19;
      draw_ink(canvas, small, line, ink);
    }
    canvas.text_middle(step.unit, {place.right() + 8, middle}, print(16));
    const Rect example = sheet.place("example/" + step.cell);
    if (example.w > 0)
      draw_button(canvas, example, words::kExample, 14, example_shown_ && step.cell == editing_);
  }
}

/// One line that stands for the working.
void SheetPaper::draw_working_line(Canvas& canvas, const SheetLayout& sheet, const Session& session) const {
  if (lines_.empty()) return;
  const Rect& w = sheet.working;
  const auto done = std::count_if(lines_.begin(), lines_.end(),
                                  [&](const CalculationStep& s) { return !session.cell(s.cell).empty(); });
  const CalculationStep& last = lines_.back();
  const std::string result = session.cell(last.cell);
  canvas.text_middle(
      say("sheet.working", {{"done", std::to_string(done)}, {"of", std::to_string(lines_.size())}}),
      {w.x + 2, w.centre().y}, print(15));
  if (result.empty()) {
    canvas.text_middle(words::kWorkingMore, {w.right() - 2, w.centre().y},
                       {15, palette::accent, Face::semibold, Align::right});
  } else {
    canvas.text_middle(result + " " + last.unit, {w.right() - 2, w.centre().y},
                       {17, palette::ink, Face::italic, Align::right});
  }
}

void SheetPaper::draw_foot(Canvas& canvas, const SheetLayout& sheet) const {
  const float size = forward_ ? 18.0F : 15.0F;
  const Rect button = sheet.place(asking() ? "yes" : "hand in");
  const float left = sheet.table.x + 2, middle = button.centre().y, width = button.x - left - 10;
  std::string note = editing() ? words::kSheetEditing : (forward_ ? words::kSheetForward : words::kSheetIdle);
  if (forward_ && slip_.offered()) note += words::kSheetExample;
  if (!message().empty()) note = message();
  if (asking()) note = words::kHandInQuestion;
  TextStyle style = print(asking() || !message().empty() ? size : (forward_ ? 15.0F : 13.0F),
                          asking() || !message().empty() ? Face::semibold : Face::regular);
  if (!message().empty() || asking()) style.colour = palette::bad;
  style.size = fitting(canvas, note, width, style);
  canvas.text_middle(note, {left, middle}, fitted(canvas, note, width + 8, style));
  if (asking()) {
    draw_button(canvas, sheet.place("yes"), words::kYes, size, true);
    draw_button(canvas, sheet.place("no"), words::kNo, size, false);
  } else {
    draw_button(canvas, button, words::kHandIn, size, true);
  }
}

void SheetPaper::draw(Canvas& canvas, const Session& session) const {
  const SheetLayout sheet = layout();
  canvas.flush();
  draw_paper_ground(canvas, sheet.paper, forward_);
  if (forward_) {
    canvas.text_middle(level_.title, {sheet.table.x + 2, sheet.paper.y + 30}, print(20, Face::bold));
  }
  draw_table(canvas, sheet, session);
  forward_ ? draw_working(canvas, sheet, session) : draw_working_line(canvas, sheet, session);
  draw_foot(canvas, sheet);
  canvas.flush();
  if (!example_shown_) return;
  slip_.draw(canvas, editing_);
  canvas.flush();
}

}  // namespace halfdrop

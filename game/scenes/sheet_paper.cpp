#include "game/scenes/sheet_paper.h"

#include <algorithm>

#include <SFML/System/String.hpp>

#include "game/level/say.h"

namespace halfdrop {

namespace {

const std::string kExample = "example/";
constexpr std::size_t kLongestWriting = 40;  ///< bytes, as check_writing has it

bool is_counts(const std::string& cell) { return cell.ends_with("/counts"); }
bool is_weighing(const std::string& cell) { return cell == kBottleBefore || cell == kBottleAfter; }
bool is_working(const std::string& cell) { return cell.starts_with("calculation/") || is_weighing(cell); }

/// The lines beneath the table.
std::vector<CalculationStep> lines_of(const Level& level) {
  std::vector<CalculationStep> lines;
  if (level.standard)
    lines = {{kBottleBefore, say("sheet.bottle_before"), "g", {}, {}, {}, {}},
             {kBottleAfter, say("sheet.bottle_after"), "g", {}, {}, {}, {}}};
  lines.insert(lines.end(), level.calculation.begin(), level.calculation.end());
  return lines;
}

std::string utf8(sf::Uint32 character) {
  const auto bytes = sf::String(character).toUtf8();
  return {bytes.begin(), bytes.end()};
}

void drop_last_character(std::string& text) {
  while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U) text.pop_back();
  if (!text.empty()) text.pop_back();
}

}  // namespace

std::vector<std::string> struck_out(const Attempt& attempt, const std::string& cell) {
  std::vector<std::string> texts;
  for (const Change& change : attempt.changes) {
    const auto* writing = std::get_if<Writing>(&change.what);
    if (writing && writing->cell == cell) texts.push_back(writing->text);
  }
  if (!texts.empty()) texts.pop_back();
  std::erase(texts, "");
  return texts;
}

SheetPaper::SheetPaper(const Level& level, WorkedSlip slip, std::string no_example)
    : level_(level),
      lines_(lines_of(level)),
      slip_(std::move(slip)),
      no_example_(std::move(no_example)),
      runs_(run_names(level)) {}

SheetLayout SheetPaper::layout() const {
  SheetLayout sheet = sheet_layout(runs_, lines_, forward_, asking(), level_.then.has_value());
  for (std::size_t i = 0; forward_ && i < level_.calculation.size(); ++i) {
    const std::string& cell = level_.calculation[i].cell;
    if (!slip_.offered() || slip_.is_withdrawn(cell)) continue;
    const Rect line = sheet.place(cell);
    sheet.places.emplace_back(kExample + cell,
                              Rect{sheet.working.right() - 34, line.centre().y - 11, 34, 22});
  }
  return sheet;
}

Rect SheetPaper::area() const { return layout().paper; }

Rect SheetPaper::rect_of(const std::string& cell) const { return layout().place(cell); }

std::vector<std::pair<std::string, Rect>> SheetPaper::places() const { return layout().places; }

void SheetPaper::come_forward(bool forward) {
  forward_ = forward;
  came_for_working_ = false;
  if (!forward) example_shown_ = false;
  if (!forward && is_working(editing_)) editing_.clear();
}

void SheetPaper::show_example(bool shown) {
  if (shown && !slip_.offered()) {
    const std::string done = say("worked.all_withdrawn");
    tell(level_.calculation.empty() ? "" : (no_example_.empty() ? done : no_example_));
    return;
  }
  if (shown && !forward_) come_forward(true);
  example_shown_ = shown;
  example_seen_ = example_seen_ || shown;
}

std::string SheetPaper::next_empty(const Session& session) const {
  for (const CalculationStep& line : lines_) {
    if (is_weighing(line.cell) && session.cell(line.cell).empty()) return line.cell;
  }
  for (const std::string& run : runs_) {
    for (const std::string_view row : titre_rows(level_)) {
      const std::string cell = run + std::string(row);
      if (session.cell(cell).empty()) return cell;
    }
  }
  for (const CalculationStep& step : level_.calculation) {
    if (session.cell(step.cell).empty()) return step.cell;
  }
  return runs_.front() + "/initial";
}

void SheetPaper::open(const std::string& cell, const Session& session) {
  ask(false);
  tell({});
  text_.clear();
  editing_ = cell.empty() ? next_empty(session) : cell;
  if (!is_working(editing_)) return;
  if (!forward_) forward_ = came_for_working_ = true;
  // Before the own calculation comes a worked one; once, then it is asked for.
  if (!is_weighing(editing_) && !example_seen_ && slip_.offered()) example_shown_ = example_seen_ = true;
}

/// Writes what was typed; nothing typed leaves the cell as it was.
void SheetPaper::leave(Session& session) {
  if (!text_.empty() && !is_counts(editing_)) put({editing_, text_}, session);
  text_.clear();
}

void SheetPaper::open_place(const std::string& name, Session& session) {
  if (name == "turn") {
    come_forward(!forward_);
  } else if (name == "hand in") {
    ask();
  } else if (name == "working") {
    if (!lines_.empty()) open(lines_.front().cell, session);
  } else if (name.starts_with(kExample)) {
    open(name.substr(kExample.size()), session);
    show_example(true);
  } else if (is_counts(name)) {
    put({name, session.cell(name).empty() ? "yes" : ""}, session);
  } else {
    open(name, session);
  }
}

bool SheetPaper::click(sf::Vector2f at, Session& session) {
  const SheetLayout sheet = layout();
  if (example_shown_ && WorkedSlip::area().contains(at)) {
    show_example(false);
    return true;
  }
  if (!sheet.paper.contains(at)) {
    if (!editing()) return false;
    leave(session);
    editing_.clear();
    if (came_for_working_) come_forward(false);
    return false;  // the bench may have what was clicked
  }
  for (const auto& [name, rect] : sheet.places) {
    if (!rect.contains(at)) continue;
    if (name == "yes" || name == "no") {
      answer(name == "yes", session);
      return true;
    }
    leave(session);
    editing_.clear();
    open_place(name, session);
    return true;
  }
  return true;
}

void SheetPaper::move(int columns, int rows, Session& session) {
  const std::span<const SheetRow> table = sheet_rows(level_.then.has_value());
  const int table_rows = static_cast<int>(table.size());
  const auto row_name = [&](int row) { return std::string("/") + table[static_cast<std::size_t>(row)].name; };
  const auto at = std::find_if(lines_.begin(), lines_.end(),
                               [&](const CalculationStep& s) { return s.cell == editing_; });
  int column = 0, row = table_rows + static_cast<int>(at - lines_.begin());
  if (at == lines_.end()) {
    for (int c = 0; c < static_cast<int>(runs_.size()); ++c) {
      for (int r = 0; r < table_rows; ++r) {
        if (editing_ != runs_[static_cast<std::size_t>(c)] + row_name(r)) continue;
        column = c;
        row = r;
      }
    }
  }
  const int last = table_rows + static_cast<int>(lines_.size()) - 1;
  column = std::clamp(column + columns, 0, static_cast<int>(runs_.size()) - 1);
  row = std::clamp(row + rows, 0, last);
  leave(session);
  open(row < table_rows ? runs_[static_cast<std::size_t>(column)] + row_name(row)
                        : lines_[static_cast<std::size_t>(row - table_rows)].cell,
       session);
}

/// In the order of work: initial, final, titre, counts of each run, then the working.
void SheetPaper::step(int by, Session& session) {
  const auto cells = sheet_cells(level_);
  const auto at = std::find(cells.begin(), cells.end(), editing_) - cells.begin();
  const auto next = std::clamp<std::ptrdiff_t>(at + by, 0, static_cast<std::ptrdiff_t>(cells.size()) - 1);
  leave(session);
  const std::string told = message();
  open(cells[static_cast<std::size_t>(next)], session);
  tell(told);
}

bool SheetPaper::editing_key(const sf::Event::KeyEvent& key, Session& session) {
  swallow_ = false;
  switch (key.code) {
    case sf::Keyboard::Escape:
    case sf::Keyboard::Enter:
      if (key.code == sf::Keyboard::Enter) {
        if (is_counts(editing_)) put({editing_, session.cell(editing_).empty() ? "yes" : ""}, session);
        leave(session);
      }
      text_.clear();
      editing_.clear();
      if (came_for_working_) come_forward(false);
      return true;
    case sf::Keyboard::F4:
      show_example(!example_shown_);
      return true;
    case sf::Keyboard::Tab:
      step(key.shift ? -1 : 1, session);
      return true;
    case sf::Keyboard::Up:
    case sf::Keyboard::Down:
      move(0, key.code == sf::Keyboard::Up ? -1 : 1, session);
      return true;
    case sf::Keyboard::Left:
    case sf::Keyboard::Right:
      if (text_.empty()) move(key.code == sf::Keyboard::Left ? -1 : 1, 0, session);
      return true;
    case sf::Keyboard::Backspace:
      drop_last_character(text_);
      return true;
    case sf::Keyboard::Delete:
      if (!session.cell(editing_).empty()) put({editing_, ""}, session);
      return true;
    case sf::Keyboard::Space:
      if (is_counts(editing_)) put({editing_, session.cell(editing_).empty() ? "yes" : ""}, session);
      return true;
    default:
      return true;
  }
}

bool SheetPaper::idle_key(const sf::Event::KeyEvent& key, Session& session) {
  if (key.control || key.alt || key.system) return false;
  switch (key.code) {
    case sf::Keyboard::R:
      open("", session);
      swallow_ = editing();
      return true;
    case sf::Keyboard::T:
      come_forward(!forward_);
      return true;
    case sf::Keyboard::F4:
      show_example(!example_shown_);
      return true;
    case sf::Keyboard::H:
      ask();
      return true;
    case sf::Keyboard::Escape:
      if (!forward_) return false;
      come_forward(false);
      return true;
    default:
      return false;
  }
}

bool SheetPaper::key(const sf::Event::KeyEvent& key, Session& session) {
  return editing() ? editing_key(key, session) : idle_key(key, session);
}

bool SheetPaper::type(sf::Uint32 character) {
  if (!editing()) return false;
  if (swallow_) {
    swallow_ = false;
    return true;
  }
  if (is_counts(editing_) || character < 32 || character == 127) return true;
  const std::string more = utf8(character);
  if (text_.size() + more.size() <= kLongestWriting) text_ += more;
  return true;
}

}  // namespace halfdrop

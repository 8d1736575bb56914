#include "game/marking/results_sheet.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "game/marking/reading_moments.h"

namespace halfdrop {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string mantissa(const std::string& text) { return text.substr(0, text.find_first_of("eE")); }

int exponent(const std::string& text) {
  const std::size_t at = text.find_first_of("eE");
  if (at == std::string::npos) return 0;
  const std::size_t begin = at + 1 + (at + 1 < text.size() && text[at + 1] == '+' ? 1 : 0);
  int value = 0;
  std::from_chars(text.data() + begin, text.data() + text.size(), value);
  return value;
}

}  // namespace

void ResultsSheet::write(Tick tick, const Writing& writing) {
  cells_[writing.cell].push_back(Entry{tick, writing.text});
}

const std::vector<Entry>& ResultsSheet::history(const std::string& cell) const {
  static const std::vector<Entry> kNothing;
  const auto found = cells_.find(cell);
  return found == cells_.end() ? kNothing : found->second;
}

std::string ResultsSheet::text(const std::string& cell) const {
  const std::vector<Entry>& entries = history(cell);
  return entries.empty() ? std::string() : entries.back().text;
}

std::optional<double> ResultsSheet::number(const std::string& cell) const {
  return number_written(text(cell));
}

Tick ResultsSheet::written_at(const std::string& cell) const {
  const std::vector<Entry>& entries = history(cell);
  return entries.empty() ? 0 : entries.back().tick;
}

int ResultsSheet::corrections(const std::string& cell) const {
  const std::vector<Entry>& entries = history(cell);
  int count = 0;
  for (std::size_t i = 1; i < entries.size(); ++i) {
    if (!entries[i - 1].text.empty() && entries[i].text != entries[i - 1].text) ++count;
  }
  return count;
}

bool ResultsSheet::begun(const std::string& run) const {
  return !text(run + "/initial").empty() || !text(run + "/final").empty() || !text(run + "/titre").empty() ||
         ticked(run);
}

bool written_to_half_a_division(const std::string& text) {
  const std::size_t point = text.find('.');
  if (point == std::string::npos || point == 0 || text.size() != point + 3) return false;
  const bool digits = std::all_of(text.begin(), text.end(), [](char c) { return is_digit(c) || c == '.'; });
  return digits && std::count(text.begin(), text.end(), '.') == 1 &&
         (text.back() == '0' || text.back() == '5');
}

int decimals_written(const std::string& text) {
  const std::string digits = mantissa(text);
  const std::size_t point = digits.find('.');
  return point == std::string::npos ? 0 : static_cast<int>(digits.size() - point - 1);
}

int significant_figures(const std::string& text) {
  const std::string digits = mantissa(text);
  const auto first = std::find_if(digits.begin(), digits.end(), [](char c) { return c >= '1' && c <= '9'; });
  return static_cast<int>(std::count_if(first, digits.end(), is_digit));
}

double half_unit_written(const std::string& text) {
  return 0.5 * std::pow(10.0, exponent(text) - decimals_written(text));
}

}  // namespace halfdrop

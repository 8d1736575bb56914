#include "game/desk/plain_number.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace halfdrop::desk {

namespace {

struct Figure {
  double value = 0.0;
  std::string_view rest;  ///< what stands after it
};

std::string_view without_blanks(std::string_view text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

/// The figure that a text begins with.
std::optional<Figure> figure_of(std::string_view text) {
  text = without_blanks(text);
  if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
  Figure figure;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), figure.value);
  if (error != std::errc() || !std::isfinite(figure.value)) return std::nullopt;
  if (figure.value == 0.0) figure.value = 0.0;  // "-0" is 0, and is printed so
  figure.rest = text.substr(static_cast<std::size_t>(end - text.data()));
  return figure;
}

tl::unexpected<std::string> expected(const NumberWanted& wanted, const std::string& how,
                                     std::string_view text) {
  std::string message = "expected " + std::string(wanted.words);
  if (!wanted.unit.empty()) message += " " + std::string(wanted.unit);
  return tl::unexpected(message + how + ", found \"" + std::string(text) + "\"");
}

bool fits(const Figure& figure, const NumberWanted& wanted) {
  return figure.value >= wanted.low && figure.value <= wanted.high;
}

}  // namespace

tl::expected<double, std::string> plain_number(std::string_view text, const NumberWanted& wanted) {
  const std::optional<Figure> figure = figure_of(text);
  if (!figure) return expected(wanted, "", text);
  if (figure->rest.starts_with(',')) return expected(wanted, ", with a decimal point", text);
  if (!figure->rest.empty())
    return expected(wanted, wanted.unit.empty() ? " and nothing after it" : ", without its unit", text);
  if (!fits(*figure, wanted)) return expected(wanted, "", text);
  return figure->value;
}

tl::expected<std::vector<double>, std::string> plain_numbers(std::string_view text,
                                                             const NumberWanted& wanted) {
  const std::string between = " with commas between";
  std::vector<double> numbers;
  for (std::string_view left = text;;) {
    const std::size_t comma = left.find(',');
    const std::optional<Figure> figure = figure_of(left.substr(0, comma));
    if (!figure) return expected(wanted, between, text);
    if (!figure->rest.empty())
      return expected(wanted, between + (wanted.unit.empty() ? " and nothing else" : ", without their unit"),
                      text);
    if (!fits(*figure, wanted)) return expected(wanted, between, text);
    numbers.push_back(figure->value);
    if (comma == std::string_view::npos) return numbers;
    left.remove_prefix(comma + 1);
  }
}

}  // namespace halfdrop::desk

#include "game/marking/written_number.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace halfdrop {

namespace {

using std::string_view_literals::operator""sv;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// What is written in more than one way, as one: raised digits behind a ^, signs, spaces, times signs.
std::string in_plain_signs(std::string_view text) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 21> kSame = {
      {{"⁰"sv, "^0"sv},    {"¹"sv, "^1"sv}, {"²"sv, "^2"sv}, {"³"sv, "^3"sv},     {"⁴"sv, "^4"sv},
       {"⁵"sv, "^5"sv},    {"⁶"sv, "^6"sv}, {"⁷"sv, "^7"sv}, {"⁸"sv, "^8"sv},     {"⁹"sv, "^9"sv},
       {"⁻"sv, "^-"sv},    {"⁺"sv, "^+"sv}, {"−"sv, "-"sv},  {"–"sv, "-"sv},      {"×"sv, "x"sv},
       {"·"sv, "x"sv},     {"*"sv, "x"sv},  {"X"sv, "x"sv},  {"\u00a0"sv, " "sv}, {"\u202f"sv, " "sv},
       {"\u2009"sv, " "sv}}};
  std::string out;
  bool was_raised = false;
  while (!text.empty()) {
    const auto found = std::find_if(kSame.begin(), kSame.end(),
                                    [&](const auto& pair) { return text.starts_with(pair.first); });
    const std::string_view plain = found == kSame.end() ? text.substr(0, 1) : found->second;
    const bool raised = plain.size() > 1 && plain.front() == '^';
    out += raised && was_raised ? plain.substr(1) : plain;  // one ^ for a whole raised number
    was_raised = raised;
    text.remove_prefix(found == kSame.end() ? 1 : found->first.size());
  }
  return out;
}

/// Takes a figure from the front of a text, piece by piece.
class Taker {
 public:
  explicit Taker(std::string_view text) : rest_(text) {}

  [[nodiscard]] std::string_view rest() const { return rest_; }
  void spaces() { rest_.remove_prefix(std::min(rest_.find_first_not_of(' '), rest_.size())); }
  bool take(std::string_view sign) {
    if (!rest_.starts_with(sign)) return false;
    rest_.remove_prefix(sign.size());
    return true;
  }
  std::string digits() {
    const auto end = std::find_if_not(rest_.begin(), rest_.end(), is_digit);
    const auto count = static_cast<std::size_t>(end - rest_.begin());
    std::string taken(rest_.substr(0, count));
    rest_.remove_prefix(count);
    return taken;
  }
  std::string sign() {
    if (take("-")) return "-";
    static_cast<void>(take("+"));
    return {};
  }

 private:
  std::string_view rest_;
};

/// "e-3", "x10^-3", " x 10-3" from the front; empty (and nothing taken) when there is none.
std::string take_power(Taker& text) {
  Taker ahead = text;
  bool power = ahead.take("e") || ahead.take("E");
  if (!power) {
    ahead.spaces();
    if (!ahead.take("x")) return {};
    ahead.spaces();
    if (!ahead.take("10")) return {};
    static_cast<void>(ahead.take("^"));
  }
  const std::string sign = ahead.sign();
  const std::string digits = ahead.digits();
  if (digits.empty()) return {};
  text = ahead;
  return "e" + sign + digits;
}

/// "cm^3", "mol dm^-3", "mol/L", "%": symbols with their powers, and nothing else.
bool is_unit(Taker text) {
  static constexpr std::array kSymbols = {"cm"sv,    "dm"sv, "ml"sv, "mL"sv,    "mmol"sv, "mol"sv,
                                          "moles"sv, "M"sv,  "cc"sv, "mg"sv,    "kg"sv,   "g"sv,
                                          "l"sv,     "L"sv,  "m"sv,  "litre"sv, "%"sv};
  while (true) {
    text.spaces();
    if (text.rest().empty()) return true;
    const auto longest = std::max_element(kSymbols.begin(), kSymbols.end(), [&](auto a, auto b) {
      return (text.rest().starts_with(a) ? a.size() : 0) < (text.rest().starts_with(b) ? b.size() : 0);
    });
    if (!text.take(*longest)) return false;
    static_cast<void>(text.take("^"));
    static_cast<void>(text.sign());
    static_cast<void>(text.digits());
    text.spaces();
    for (const char* between : {"/", "x", "."}) static_cast<void>(text.take(between));
  }
}

/// A plain figure's digits before its power.
std::string_view mantissa(std::string_view plain) { return plain.substr(0, plain.find('e')); }

int exponent(std::string_view plain) {
  constexpr int kMost = 400;  // beyond any double
  const std::size_t at = plain.find('e');
  if (at == std::string_view::npos) return 0;
  const std::string_view digits = plain.substr(at + 1);
  int value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error == std::errc::result_out_of_range) return digits.starts_with('-') ? -kMost : kMost;
  return std::clamp(value, -kMost, kMost);
}

int decimals_of(std::string_view plain) {
  const std::string_view digits = mantissa(plain);
  const std::size_t point = digits.find('.');
  return point == std::string_view::npos ? 0 : static_cast<int>(digits.size() - point - 1);
}

}  // namespace

std::optional<std::string> plain_figure(std::string_view text) {
  const std::string signs = in_plain_signs(text);
  Taker taker(signs);
  taker.spaces();
  std::string figure = taker.sign();
  const std::string whole = taker.digits();
  figure += whole;
  if (taker.take(".") || taker.take(",")) {
    const std::string part = taker.digits();
    if (whole.empty() && part.empty()) return std::nullopt;
    figure += "." + part;
  } else if (whole.empty()) {
    return std::nullopt;
  }
  figure += take_power(taker);
  if (!is_unit(taker)) return std::nullopt;
  return figure;
}

std::optional<double> number_written(std::string_view text) {
  const std::optional<std::string> plain = plain_figure(text);
  if (!plain) return std::nullopt;
  double value = 0.0;
  const auto [end, error] = std::from_chars(plain->data(), plain->data() + plain->size(), value);
  if (error != std::errc() || end != plain->data() + plain->size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

bool written_to_half_a_division(std::string_view text) {
  const std::string plain = plain_figure(text).value_or("");
  const std::size_t point = plain.find('.');
  if (point == std::string::npos || point == 0 || plain.size() != point + 3) return false;
  const bool digits = std::all_of(plain.begin(), plain.end(), [](char c) { return is_digit(c) || c == '.'; });
  return digits && (plain.back() == '0' || plain.back() == '5');
}

int decimals_written(std::string_view text) { return decimals_of(plain_figure(text).value_or("")); }

int significant_figures(std::string_view text) {
  const std::string plain = plain_figure(text).value_or("");
  const std::string_view digits = mantissa(plain);
  const auto first = std::find_if(digits.begin(), digits.end(), [](char c) { return c >= '1' && c <= '9'; });
  return static_cast<int>(std::count_if(first, digits.end(), is_digit));
}

double half_unit_written(std::string_view text) {
  const std::string plain = plain_figure(text).value_or("");
  return 0.5 * std::pow(10.0, exponent(plain) - decimals_of(plain));
}

}  // namespace halfdrop

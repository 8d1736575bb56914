#include "game/marking/wording.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>

namespace halfdrop {

namespace {

std::string print(const char* format, int places, double value) {
  std::array<char, 400> buffer{};  // the longest double with a few decimals has 309 + places digits
  std::snprintf(buffer.data(), buffer.size(), format, places, value);
  return buffer.data();
}

std::string without_empty_sign(std::string text) {
  if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text;
}

/// Pushes what is a half in decimal, and a trifle less in binary, over the half.
double paper_half(double value) { return value * (1.0 + 1e-12); }

}  // namespace

/// A half of the last place goes up, as on paper, whatever its binary tail; beyond a bench's figures, powers
/// of ten.
std::string figure_text(double value, int decimals) {
  constexpr double kPlain = 1e7;
  if (std::fabs(value) >= kPlain) return significant_text(value, 4);
  return without_empty_sign(print("%.*f", decimals, paper_half(value)));
}

std::string significant_text(double value, int figures) {
  return print("%.*g", figures, std::isfinite(paper_half(value)) ? paper_half(value) : value);
}

std::string rounded_like(double value, double uncertainty) {
  constexpr int kMostDecimals = 9;
  if (!(uncertainty > 0.0)) return significant_text(value, 4);
  const int first = static_cast<int>(std::floor(std::log10(uncertainty)));
  return figure_text(value, std::clamp(kUncertaintyFigures - 1 - first, 0, kMostDecimals));
}

std::string cm3_text(double cm3, int decimals) { return figure_text(cm3, decimals) + " cm³"; }

std::string signed_cm3_text(double cm3, int decimals) {
  const std::string size = figure_text(std::fabs(cm3), decimals);
  if (size.find_first_of("123456789") == std::string::npos) return size + " cm³";
  return (cm3 < 0.0 ? "−" : "+") + size + " cm³";
}

std::string as_written(const std::string& text) { return "“" + text + "”"; }

double tidy(double value) {
  const std::string text = print("%.*g", 12, value);
  double rounded = value;
  std::from_chars(text.data(), text.data() + text.size(), rounded);
  return rounded;
}

std::string run_text(const std::string& run) { return run == "trial" ? "trial run" : "run " + run; }

std::string sentence(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

std::string count_text(std::size_t count, const std::string& noun) {
  return std::to_string(count) + " " + noun + (count == 1 ? "" : "s");
}

}  // namespace halfdrop

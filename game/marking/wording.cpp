#include "game/marking/wording.h"

#include <array>
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

}  // namespace

std::string figure_text(double value, int decimals) {
  return without_empty_sign(print("%.*f", decimals, value));
}

std::string significant_text(double value, int figures) { return print("%.*g", figures, value); }

std::string cm3_text(double cm3, int decimals) { return figure_text(cm3, decimals) + " cm³"; }

std::string signed_cm3_text(double cm3, int decimals) {
  const std::string size = figure_text(std::fabs(cm3), decimals);
  if (size.find_first_of("123456789") == std::string::npos) return size + " cm³";
  return (cm3 < 0.0 ? "−" : "+") + size + " cm³";
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

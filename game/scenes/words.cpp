#include "game/scenes/words.h"

#include <array>
#include <cmath>
#include <cstdio>

#include "game/marking/cause_titles.h"
#include "physics/units.h"

namespace halfdrop::words {

namespace {

std::string printed(const char* pattern, int precision, double value) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), pattern, precision, value);
  return text.data();
}

}  // namespace

std::string_view cause_name(Cause cause) { return cause_title(cause); }

std::string fixed(double value, int decimals) {
  const std::string text = printed("%.*f", decimals, std::fabs(value));
  const bool zero = text.find_first_not_of("0.") == std::string::npos;
  return value < 0.0 && !zero ? "\u2212" + text : text;
}

std::string with_sign(double value, int decimals) {
  const std::string text = fixed(value, decimals);
  const bool zero = text.find_first_not_of("0.") == std::string::npos;
  return value > 0.0 && !zero ? "+" + text : text;
}

std::string volume_with_sign(double cm3) {
  constexpr double kTiny_cm3 = 0.0095;
  return std::fabs(cm3) < kTiny_cm3 ? with_sign(1000.0 * cm3, 0) + " \u00b5L"
                                    : with_sign(cm3, 3) + " cm\u00b3";
}

std::string figures(double value, int significant) {
  if (value == 0.0 || !std::isfinite(value)) return fixed(value, significant - 1);
  const int before = static_cast<int>(std::floor(std::log10(std::fabs(value)))) + 1;
  return fixed(value, std::max(0, significant - before));
}

std::string points(double value) { return fixed(value, value == std::round(value) ? 0 : 1); }

std::string clock(Tick tick) {
  const Tick whole = tick / kTicksPerSecond;
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%lld:%02lld", static_cast<long long>(whole / 60),
                static_cast<long long>(whole % 60));
  return text.data();
}

}  // namespace halfdrop::words

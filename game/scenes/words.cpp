#include "game/scenes/words.h"

#include <array>
#include <cmath>
#include <cstdio>

#include "physics/units.h"

namespace halfdrop::words {

namespace {

constexpr std::array<const char*, kCauses> kCauseNames = {
    "Rounding of the readings",
    "Reading not what the eye saw",
    "Top of the meniscus read, not the bottom",
    "Eye off level at the initial reading",
    "Eye off level at the final reading",
    "The burette's own scale",
    "Air in the jet",
    "Drop hanging at the tip",
    "Funnel dripped into the burette",
    "Burette refilled during the run",
    "Titrant that missed the flask",
    "Titrant left on the flask's wall",
    "Titrant diluted, or off its label",
    "Aliquot more or less than it should be",
    "Something in the flask before",
    "The indicator's own share",
    "Endpoint passed, or not reached",
};

std::string printed(const char* pattern, int precision, double value) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), pattern, precision, value);
  return text.data();
}

}  // namespace

const char* cause_name(Cause cause) { return kCauseNames[static_cast<std::size_t>(cause)]; }

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

std::string figures(double value, int significant) {
  if (value == 0.0 || !std::isfinite(value)) return fixed(value, significant - 1);
  const int before = static_cast<int>(std::floor(std::log10(std::fabs(value)))) + 1;
  return fixed(value, std::max(0, significant - before));
}

std::string clock(Tick tick) {
  const Tick whole = tick / kTicksPerSecond;
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%lld:%02lld", static_cast<long long>(whole / 60),
                static_cast<long long>(whole % 60));
  return text.data();
}

}  // namespace halfdrop::words

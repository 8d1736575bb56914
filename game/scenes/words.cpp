#include "game/scenes/words.h"

#include <array>
#include <cmath>
#include <cstdio>

#include "physics/units.h"

namespace halfdrop::words {

namespace {

std::string printed(const char* pattern, int precision, double value) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), pattern, precision, value);
  return text.data();
}

}  // namespace

const char* cause_name(Cause cause) {
  switch (cause) {
    case Cause::rounding:
      return "Rounding of the readings";
    case Cause::misreading:
      return "Reading not what the eye saw";
    case Cause::meniscus_edge:
      return "Top of the meniscus read, not the bottom";
    case Cause::parallax_initial:
      return "Eye off level at the initial reading";
    case Cause::parallax_final:
      return "Eye off level at the final reading";
    case Cause::burette_scale:
      return "The burette's own scale";
    case Cause::jet_air:
      return "Air in the jet";
    case Cause::hanging_drop:
      return "Drop hanging at the tip";
    case Cause::funnel_drips:
      return "Funnel dripped into the burette";
    case Cause::refill:
      return "Burette refilled during the run";
    case Cause::missed_flask:
      return "Titrant that missed the flask";
    case Cause::flask_wall:
      return "Titrant left on the flask's wall";
    case Cause::titrant_strength:
      return "Titrant diluted, or off its label";
    case Cause::aliquot:
      return "Aliquot more or less than it should be";
    case Cause::flask_residue:
      return "Something in the flask before";
    case Cause::swirled_out:
      return "Liquid swirled out of the flask";
    case Cause::indicator_blank:
      return "The indicator's own share";
    case Cause::overshoot:
      return "Endpoint passed, or not reached";
  }
  return "";
}

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

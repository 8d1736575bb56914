#include "game/marking/wording.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>

#include "game/level/say.h"

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

std::string as_written(const std::string& text) { return say("find.as_written", {{"text", text}}); }

double tidy(double value) {
  const std::string text = print("%.*g", 12, value);
  double rounded = value;
  std::from_chars(text.data(), text.data() + text.size(), rounded);
  return rounded;
}

std::string run_text(const std::string& run) {
  return run == "trial" ? say("find.trial_run") : say("find.run", {{"run", run}});
}

std::string sentence(std::string text) {
  if (text.empty()) return text;
  if (text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 'a' + 'A');
  // Of UTF-8, à to þ: two bytes, 0x20 above their capitals.
  const bool latin = text.size() > 1 && text[0] == '\xc3' && text[1] >= '\xa0' && text[1] <= '\xbe';
  if (latin && text[1] != '\xb7') text[1] = static_cast<char>(text[1] - 0x20);
  return text;
}

std::string count_text(std::size_t count, Counted what) {
  struct Words {
    Phrase one, many;
  };
  static constexpr std::array<Words, 7> kWords = {{{"count.run.one", "count.run.many"},
                                                   {"count.aliquot.one", "count.aliquot.many"},
                                                   {"count.reading.one", "count.reading.many"},
                                                   {"count.titre.one", "count.titre.many"},
                                                   {"count.figure.one", "count.figure.many"},
                                                   {"count.slip.one", "count.slip.many"},
                                                   {"count.picture.one", "count.picture.many"}}};
  const Words& words = kWords[static_cast<std::size_t>(what)];
  return std::to_string(count) + " " + say(count == 1 ? words.one : words.many);
}

}  // namespace halfdrop

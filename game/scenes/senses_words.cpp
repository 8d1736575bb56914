#include "game/scenes/senses_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "game/level/say.h"

namespace halfdrop {

namespace {

constexpr double kAtLeastEvery_s = 0.25;

/// Linear sRGB to XYZ under D65 (IEC 61966-2-1).
Xyz to_xyz(const Rgb& c) {
  return {0.4124 * c.r + 0.3576 * c.g + 0.1805 * c.b, 0.2126 * c.r + 0.7152 * c.g + 0.0722 * c.b,
          0.0193 * c.r + 0.1192 * c.g + 0.9505 * c.b};
}

/// Names of hue in CIELAB, by angle; the borders are ours.
const char* hue_word(double degrees, double lightness) {
  if (degrees < 25 || degrees >= 308) return lightness > 45 ? "pink" : "red";
  if (degrees < 50) return "red";
  if (degrees < 78) return "orange";
  if (degrees < 115) return "yellow";
  if (degrees < 190) return "green";
  if (degrees < 290) return "blue";
  return "violet";
}

struct Hue {
  std::string_view word;
  Phrase shown;
};
constexpr std::array<Hue, 8> kHues = {{{"pink", "colour.pink"},
                                       {"red", "colour.red"},
                                       {"orange", "colour.orange"},
                                       {"yellow", "colour.yellow"},
                                       {"green", "colour.green"},
                                       {"blue", "colour.blue"},
                                       {"violet", "colour.violet"},
                                       {"colourless", "colour.none"}}};

const char* bottle_word(Bottle bottle) {
  if (bottle == Bottle::sample) return "sample";
  return bottle == Bottle::water ? "water" : "titrant";
}

const char* yes_no(bool value) { return value ? "yes" : "no"; }

std::string formatted(const char* format, double value) {
  char text[48];
  std::snprintf(text, sizeof text, format, value);
  return text;
}

/// Of one that is worked by hand: where its tip is, what clings outside, what it does.
std::string pipette_words(const PipetteView& pipette) {
  if (!pipette.by_hand) return {};
  const char* const tip = pipette.place == PipettePlace::dipped    ? "dipped"
                          : pipette.place == PipettePlace::at_wall ? "wall"
                          : pipette.place == PipettePlace::aside   ? "aside"
                                                                   : "free";
  std::string words = std::string(" tip=") + tip + " outside=" + (pipette.outside_wet ? "wet" : "dry");
  words += std::string(" pipetteruns=") + (pipette.flow_cm3_s > 0.0 ? "yes"
                                           : pipette.drains         ? "drains"
                                                                    : "no");
  return words + (pipette.holds ? " holds=yes" : " holds=no");
}

std::string line_words(const PipetteView& pipette) {
  if (!pipette.by_hand) return {};
  return " line=" + (pipette.holds ? formatted("%+.1fmm", pipette.seen_mm) : std::string("none")) +
         " lineeye=" + formatted("%+.1fmm", pipette.eye_above_mm);
}

std::string events_words(const View& view, const Senses& s) {
  std::string words = " jet=";
  words += s.jet_full ? "full" : (view.jet_fill < 0.02 ? "empty" : "air");
  words +=
      " flask=" + (s.flask_has_liquid ? colour_words(view.common_colour, view.backdrop_colour) : "empty");
  words +=
      " streak=" + (s.flask_has_liquid ? colour_words(view.streak_colour, view.backdrop_colour) : "empty");
  words += std::string(" under=") + (s.flask_under_jet ? "flask" : (s.beaker_under ? "beaker" : "nothing"));
  words += std::string(" tile=") + yes_no(view.tile_laid) + " funnel=" + yes_no(view.funnel_in);
  words += std::string(" hand=") + bottle_word(view.in_hand) + " aslant=" + yes_no(view.held_aslant);
  words += std::string(" pipette=") + (view.pipette_cm3 > 0.5 ? "full" : "empty");
  words += pipette_words(s.pipette);
  words += std::string(" wall=") + (s.wall_wet ? "wet" : "dry") + " bench=" + (s.bench_wet ? "wet" : "dry");
  return words;
}

}  // namespace

std::string colour_words(const Rgb& seen, const Rgb& backdrop) {
  const auto through = [](double a, double b) { return std::clamp(a / std::max(b, 1e-4), 0.0, 1.0); };
  const Lab lab =
      to_lab(to_xyz({through(seen.r, backdrop.r), through(seen.g, backdrop.g), through(seen.b, backdrop.b)}));
  const double chroma = std::hypot(lab.a, lab.b);
  if (chroma < 3) return "colourless";
  double degrees = std::atan2(lab.b, lab.a) * 180 / kPi;
  if (degrees < 0) degrees += 360;
  const std::string hue = hue_word(degrees, lab.l);
  if (chroma < 9) return "faint-" + hue;
  if (chroma < 28) return "pale-" + hue;
  return chroma > 62 ? "deep-" + hue : hue;
}

std::string shown_colour(const Rgb& seen, const Rgb& backdrop) {
  const std::string word = colour_words(seen, backdrop);
  const std::size_t hyphen = word.find('-');
  const std::string hue = hyphen == std::string::npos ? word : word.substr(hyphen + 1);
  const auto found =
      std::find_if(kHues.begin(), kHues.end(), [&](const auto& one) { return one.word == hue; });
  const std::string& shown = say(found->shown);
  if (word.starts_with("faint-")) return say("colour.faint", {{"hue", shown}});
  if (word.starts_with("pale-")) return say("colour.pale", {{"hue", shown}});
  return word.starts_with("deep-") ? say("colour.deep", {{"hue", shown}}) : shown;
}

std::string senses_line(const View& view) {
  const Senses s = senses(view);
  std::string line = "t=" + formatted("%.2f", s.time_s);
  line += " reading=" + (s.meniscus_in_sight ? formatted("%.2f", s.reading_cm3) : std::string("none"));
  line += " level=" + formatted("%+.1fmm", s.eye_above_level_mm);
  line += " drops=" + formatted("%.1f/s", s.drops_per_s) + " hanging=" + formatted("%.2f", s.hanging_share);
  line += line_words(s.pipette);
  return line + events_words(view, s) + " tap=" + formatted("%.4f", view.hands.tap);
}

std::string SensesVoice::hear(const View& view) {
  const Senses s = senses(view);
  // What happens at a moment; figures that creep wait for the quarter second.
  const std::string now = events_words(view, s) + (view.drops_fallen_cm.empty() ? "" : " falling") +
                          (s.meniscus_in_sight ? "" : " no-meniscus");
  if (now == last_ && last_s_ >= 0 && s.time_s - last_s_ < kAtLeastEvery_s) return {};
  last_ = now;
  last_s_ = s.time_s;
  return senses_line(view);
}

}  // namespace halfdrop

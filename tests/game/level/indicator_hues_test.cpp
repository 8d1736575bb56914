// The handbook's words for an indicator's colours against the hue that its spectra come to.

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <string>

#include "physics/flask/visible_change.h"
#include "tests/support/held_flask.h"
#include "tests/support/near.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

constexpr double kDegrees = 180.0 / 3.14159265358979323846;

/// Hue angle of CIELAB in degrees, from `from` on as far as `to`, past 360 if need be.
struct HueWindow {
  double from, to;
};

/// Our own choice. CIELAB's hues of the screen's primaries: red 40, yellow 103, green 136, blue 306; a dye
/// that takes only red light out of daylight is a blue of 215 and more, and dyes that handbooks call red take
/// green out and come to a red of 320 and more. Neighbours may share hues, as words do.
const std::map<std::string, HueWindow> kWindows = {
    {"pink", {320.0, 380.0}},  {"red", {315.0, 410.0}},  {"orange", {50.0, 75.0}},  {"yellow", {75.0, 115.0}},
    {"green", {115.0, 200.0}}, {"blue", {205.0, 310.0}}, {"violet", {280.0, 345.0}}};

/// A liquid paler than this is not called by a colour (our own choice).
constexpr double kColoured = 1.5 * kColourless;

struct Seen {
  double chroma = 0.0, hue_degrees = 0.0;  ///< off the tile
};

Seen seen(const Indicator& indicator, std::size_t form) {
  const Lab liquid = HeldFlask(indicator).colour_of_form(form);
  const Lab tile = to_lab(seen_through(white_tile(), Spectrum{}));
  const double a = liquid.a - tile.a, b = liquid.b - tile.b;
  return {std::hypot(a, b), std::atan2(b, a) * kDegrees};
}

bool is_called(const std::string& word, const Seen& seen) {
  if (word == "colourless") return seen.chroma < kColourless;
  if (seen.chroma < kColoured) return false;
  const HueWindow window = kWindows.at(word);
  return std::fmod(seen.hue_degrees - window.from + 720.0, 360.0) <= window.to - window.from;
}

/// Form on either side of a range: ranges stand for steps, one range for all of them where there is but one.
std::size_t form_past(const Indicator& indicator, std::size_t range) {
  const auto steps = static_cast<std::size_t>(indicator.system.steps);
  return indicator.ranges.size() == steps ? range + 1 : steps;
}

bool colours_are_as_called(const Indicator& indicator) {
  bool all = true;
  for (std::size_t i = 0; i < indicator.ranges.size(); ++i) {
    const ColourRange& range = indicator.ranges[i];
    all = all && is_called(range.acid_colour, seen(indicator, i)) &&
          is_called(range.base_colour, seen(indicator, form_past(indicator, i)));
  }
  return all;
}

}  // namespace

// Source: handbooks' words for the colours, as assets/indicators.json has them ("ranges"); three drops in 50
// cm3 on the tile.
TEST_CASE("each form of an indicator has the hue that handbooks call it by") {
  for (const auto& [name, shelved] : shelf().indicators) {
    const Indicator& indicator = shelved.value;
    CAPTURE(name);
    for (std::size_t i = 0; i < indicator.ranges.size(); ++i) {
      const ColourRange& range = indicator.ranges[i];
      for (const auto& [word, form] :
           {std::pair{range.acid_colour, i}, std::pair{range.base_colour, form_past(indicator, i)}}) {
        const Seen there = seen(indicator, form);
        CAPTURE(word);
        CAPTURE(there.chroma);
        CAPTURE(there.hue_degrees);
        CHECK(is_called(word, there));
      }
    }
  }
}

TEST_CASE("a band in another colour's place is noticed") {
  const auto with = [](const char* name, double from_nm, double to_nm) {
    Indicator indicator = shelf().indicators.at(name).value;
    for (AbsorptionBand& band : indicator.bands) {
      if (band.peak_nm == from_nm) band.peak_nm = to_nm;
    }
    return indicator;
  };
  CHECK(colours_are_as_called(with("bromothymol blue", 620, 620)));
  CHECK_FALSE(colours_are_as_called(with("bromothymol blue", 620, 520)));
  CHECK_FALSE(colours_are_as_called(with("bromocresol green", 616, 520)));
  CHECK_FALSE(colours_are_as_called(with("thymol blue", 596, 500)));
  CHECK_FALSE(colours_are_as_called(with("phenolphthalein", 552, 640)));
  CHECK_FALSE(colours_are_as_called(with("methyl orange", 464, 560)));
  CHECK_FALSE(colours_are_as_called(with("methyl red", 435, 600)));
}

}  // namespace halfdrop::test

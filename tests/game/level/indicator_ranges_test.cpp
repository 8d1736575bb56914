#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <optional>
#include <string>

#include "game/level/assets.h"
#include "tests/support/good_level.h"
#include "tests/support/held_flask.h"
#include "tests/support/near.h"
#include "tests/support/noise.h"

namespace halfdrop::test {
namespace {

/// pH between two others at which the flask is just visibly off a form's colour. Nothing where it is off that
/// colour at the one end already, or not yet at the other.
std::optional<double> ph_where_seen(const HeldFlask& flask, const Lab& form, double like_it,
                                    double unlike_it) {
  const auto is_like = [&](double ph) { return ciede2000(flask.colour_at(ph), form) < kFirstVisibleChange; };
  if (!is_like(like_it) || is_like(unlike_it)) return std::nullopt;
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (like_it + unlike_it);
    (is_like(middle) ? like_it : unlike_it) = middle;
  }
  return 0.5 * (like_it + unlike_it);
}

/// Where a flask is seen to change from one form to another, searched around a handbook's range.
struct SeenChange {
  double difference = 0.0;  ///< between the two forms, CIEDE2000
  std::optional<double> low_ph, high_ph;
};

SeenChange seen_change(const HeldFlask& flask, std::size_t acid_form, std::size_t base_form, double middle) {
  const Lab acid = flask.colour_of_form(acid_form), base = flask.colour_of_form(base_form);
  return {ciede2000(acid, base), ph_where_seen(flask, acid, middle - 4.0, middle + 1.5),
          ph_where_seen(flask, base, middle + 4.0, middle - 1.5)};
}

/// Whether it is a change that an eye can see, in the middle of the range to half a unit.
bool fits(const SeenChange& seen, double middle) {
  if (seen.difference < kFirstVisibleChange || !seen.low_ph || !seen.high_ph) return false;
  return *seen.low_ph < *seen.high_ph && std::abs(0.5 * (*seen.low_ph + *seen.high_ph) - middle) <= 0.5;
}

std::string fixed(double value, int decimals) {
  char text[32];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

Assets assets() {
  const Result<Assets> read = read_assets(HALFDROP_SOURCE_FOLDER);
  REQUIRE_MESSAGE(read.has_value(), why_not(read));
  return *read;
}

}  // namespace

// Source: handbooks' ranges of pH, as assets/indicators.json has them ("ranges").
TEST_CASE("each indicator changes where handbooks say: middle of its range within half a unit") {
  const Assets shelf = assets();
  std::string table =
      "seen from pH ... to (handbook), 3 drops of the bottle's strength in 50 cm3, ionic "
      "strength 0.05 mol/dm3, 25 C, white tile, CIEDE2000 3\n";
  for (const auto& [name, shelved] : shelf.indicators) {
    const Indicator& indicator = shelved.value;
    const HeldFlask flask(indicator);
    const std::size_t steps = static_cast<std::size_t>(indicator.system.steps);
    const bool one_a_step = indicator.ranges.size() == steps;
    for (std::size_t i = 0; i < indicator.ranges.size(); ++i) {
      const ColourRange& range = indicator.ranges[i];
      const double middle = 0.5 * (range.low_ph + range.high_ph);
      const SeenChange seen = seen_change(flask, i, one_a_step ? i + 1 : steps, middle);
      CAPTURE(name);
      CHECK(fits(seen, middle));
      const auto ph = [](const std::optional<double>& at) { return at ? fixed(*at, 2) : "not seen"; };
      table += "  " + name + ": " + ph(seen.low_ph) + " ... " + ph(seen.high_ph) + " (" +
               fixed(range.low_ph, 1) + " ... " + fixed(range.high_ph, 1) + "), path " +
               fixed(flask.path_cm(), 1) + " cm, stock " + fixed(1e3 * indicator.stock_mol_dm3, 2) +
               " mmol/dm3, " + range.acid_colour + " to " + range.base_colour + "\n";
    }
  }
  MESSAGE(table);
}

TEST_CASE("an indicator that is not seen to change, or changes elsewhere, fits no range") {
  const Indicator bromothymol_blue = assets().indicators.at("bromothymol blue").value;
  const auto fits_its_range = [](const Indicator& indicator) {
    return fits(seen_change(HeldFlask(indicator), 0, 1, 6.8), 6.8);
  };
  CHECK(fits_its_range(bromothymol_blue));
  Indicator colourless = bromothymol_blue;
  for (AbsorptionBand& band : colourless.bands) band.epsilon_dm3_mol_cm = 0.0;
  CHECK_FALSE(fits_its_range(colourless));
  Indicator pale = bromothymol_blue;
  pale.stock_mol_dm3 /= 100.0;
  CHECK_FALSE(fits_its_range(pale));
  Indicator of_one_colour = bromothymol_blue;
  for (AbsorptionBand& band : of_one_colour.bands) band.form = AbsorptionBand::kEveryForm;
  CHECK_FALSE(fits_its_range(of_one_colour));
  for (const double shift : {-8.0, -1.0, 1.0, 8.0}) {
    CAPTURE(shift);
    Indicator elsewhere = bromothymol_blue;
    elsewhere.system.pk[0] += shift;
    CHECK_FALSE(fits_its_range(elsewhere));
  }
}

TEST_CASE("nine indicators stand on the shelf, each with its range") {
  const Assets shelf = assets();
  for (const char* name : {"phenolphthalein", "methyl orange", "bromothymol blue", "methyl red", "phenol red",
                           "thymol blue", "bromocresol green", "thymolphthalein", "screened methyl orange"}) {
    CAPTURE(name);
    REQUIRE(shelf.indicators.contains(name));
    CHECK_FALSE(shelf.indicators.at(name).value.ranges.empty());
  }
}

}  // namespace halfdrop::test

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <string>

#include "game/level/assets.h"
#include "physics/chemistry/activity.h"
#include "physics/flask/contents.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"
#include "tests/support/noise.h"

namespace halfdrop::test {
namespace {

constexpr double kIonicStrength_mol_dm3 = 0.05;  // 25 cm3 each of a 0.1 mol/dm3 acid and alkali
constexpr double kVolume_cm3 = 50.0;
constexpr int kDrops = 3;

/// A flask of 50 cm3 with three drops of indicator, whose pH someone holds.
class HeldFlask {
 public:
  explicit HeldFlask(const Indicator& indicator) : indicator_(indicator) {
    const BenchSpec bench;
    mol_dm3_ = indicator.stock_mol_dm3 * kDrops * bench.indicator_drop_cm3 / kVolume_cm3;
    path_cm_ = sight_path_cm(bench.flask, kVolume_cm3);
  }

  [[nodiscard]] Lab colour(const std::array<double, 4>& forms) const {
    Spectrum absorbance = absorbance_per_cm(indicator_, mol_dm3_, forms);
    for (double& a : absorbance) a *= path_cm_;
    return to_lab(seen_through(white_tile(), absorbance));
  }
  [[nodiscard]] Lab colour_at(double ph) const {
    const SolverOptions solver;
    Equilibrium held;
    held.ph = ph;
    held.ionic_strength_mol_dm3 = kIonicStrength_mol_dm3;
    held.h_mol_dm3 = std::pow(10.0, -ph - davies_log10_gamma(1, kIonicStrength_mol_dm3, 25.0));
    return colour(form_fractions(indicator_.system, held, solver));
  }
  [[nodiscard]] Lab colour_of_form(std::size_t form) const {
    std::array<double, 4> forms{};
    forms[form] = 1.0;
    return colour(forms);
  }
  [[nodiscard]] double path_cm() const { return path_cm_; }

 private:
  const Indicator& indicator_;
  double mol_dm3_ = 0.0, path_cm_ = 0.0;
};

/// pH between `low` and `high` at which the flask is just visibly off a form's colour.
double ph_where_seen(const HeldFlask& flask, const Lab& form, double like_it, double unlike_it) {
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (like_it + unlike_it);
    (ciede2000(flask.colour_at(middle), form) < kFirstVisibleChange ? like_it : unlike_it) = middle;
  }
  return 0.5 * (like_it + unlike_it);
}

std::string fixed(double value, int decimals) {
  char text[32];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

Assets assets() {
  const Result<Assets> read = read_assets(HALFDROP_SOURCE_FOLDER);
  REQUIRE_MESSAGE(read.has_value(), all_of(read.error()));
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
      const Lab acid = flask.colour_of_form(i);
      const Lab base = flask.colour_of_form(one_a_step ? i + 1 : steps);
      const double low = ph_where_seen(flask, acid, middle - 4.0, middle + 1.5);
      const double high = ph_where_seen(flask, base, middle + 4.0, middle - 1.5);
      table += "  " + name + ": " + fixed(low, 2) + " ... " + fixed(high, 2) + " (" + fixed(range.low_ph, 1) +
               " ... " + fixed(range.high_ph, 1) + "), path " + fixed(flask.path_cm(), 1) + " cm, stock " +
               fixed(1e3 * indicator.stock_mol_dm3, 2) + " mmol/dm3, " + range.acid_colour + " to " +
               range.base_colour + "\n";
      CAPTURE(name);
      CHECK_NEAR(0.5 * (low + high), middle, 0.5);
    }
  }
  MESSAGE(table);
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

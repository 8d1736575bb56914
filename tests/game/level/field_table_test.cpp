#include "physics/flask/field_table.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "game/level/assets.h"
#include "physics/random.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

TitrationSpec spec_of(const char* flask, const char* burette, const char* indicator) {
  TitrationSpec spec;
  spec.flask = shelf().substances.at(flask).value;
  spec.burette = shelf().substances.at(burette).value;
  spec.indicator = shelf().indicators.at(indicator).value;
  return spec;
}

/// The same cell by the solver and by its spectrum.
class Exact {
 public:
  explicit Exact(const TitrationSpec& spec) : spec_(spec), solver_(spec.solver) {
    solver_.add(spec.flask);
    solver_.add(spec.burette);
    solver_.add(substance_of(*spec.indicator));
    const double drops_cm3 = spec.drops * spec.drop_cm3;
    const double total_cm3 = spec.aliquot_cm3 + drops_cm3;
    flask_ = spec.flask_mol_dm3 * spec.aliquot_cm3 / total_cm3;
    indicator_ = spec.indicator->stock_mol_dm3 * drops_cm3 / total_cm3;
  }
  [[nodiscard]] Equilibrium at(const CellMix& cell) const {
    const std::array mol_dm3{cell.flask * flask_, cell.burette * spec_.burette_mol_dm3,
                             cell.flask * indicator_};
    return solver_.solve(mol_dm3);
  }
  [[nodiscard]] Lab colour(const CellMix& cell, const Equilibrium& there) const {
    Spectrum absorbance = absorbance_per_cm(*spec_.indicator, cell.flask * indicator_ * cell.path_cm,
                                            solver_.form_fractions(2, there));
    return to_lab(xyz_of(to_rgb(seen_through(white_tile(), absorbance))));
  }

 private:
  TitrationSpec spec_;
  Solver solver_;
  double flask_ = 0.0, indicator_ = 0.0;
};

double linear(std::uint8_t code) {
  const double c = code / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

/// Share of a cell that is no water, from which on the table's accuracy holds (field_table.h).
constexpr double kWeakest = 1.0 / 256.0;

/// Anywhere in the flask, half of them within a hundredth to a millionth of an equivalence.
CellMix drawn(const Titration& titration, double whole_cm3, Random& random) {
  double titrant_cm3 = whole_cm3 * std::pow(10.0, random.uniform(-3.0, 1.0));
  if (random.uniform(0.0, 1.0) < 0.5) {
    const auto& all = titration.equivalences();
    const Equivalence& at =
        all[std::min(all.size() - 1,
                     static_cast<std::size_t>(random.uniform(0.0, 1.0) * static_cast<double>(all.size())))];
    const double away = std::pow(10.0, random.uniform(-6.0, -2.0));
    titrant_cm3 = at.volume_cm3 * (random.uniform(0.0, 1.0) < 0.5 ? 1.0 - away : 1.0 + away);
  }
  const double strength = std::pow(10.0, random.uniform(std::log10(kWeakest), 0.0));
  const double titrant = titrant_cm3 / (whole_cm3 + titrant_cm3);
  return {strength * titrant, strength * (1.0 - titrant), random.uniform(0.5, 12.0)};
}

}  // namespace

// Source: our own solver and spectra; one CIEDE2000 is what is just noticeable side by side (textbook).
TEST_CASE("a field's table is within 0.001 of the solver's pH and within what is just noticeable in colour") {
  const struct {
    const char *flask, *burette, *indicator;
  } systems[] = {{"hydrochloric acid", "sodium hydroxide", "bromothymol blue"},
                 {"ethanoic acid", "sodium hydroxide", "phenolphthalein"},
                 {"ammonia", "hydrochloric acid", "methyl red"},
                 {"phosphoric acid", "sodium hydroxide", "bromocresol green"},
                 {"sodium carbonate", "hydrochloric acid", "screened methyl orange"},
                 {"citric acid", "sodium hydroxide", "thymol blue"}};
  for (const auto& system : systems) {
    const TitrationSpec spec = spec_of(system.flask, system.burette, system.indicator);
    const Titration titration(spec);
    const Exact exact(spec);
    FieldTable table(spec, Backdrop::white_tile);
    Random random{11};
    double worst_ph = 0.0, worst_colour = 0.0;
    CellMix worst{};
    for (int i = 0; i < rounds(4000, 100000); ++i) {
      const CellMix cell = drawn(titration, spec.aliquot_cm3 + spec.drops * spec.drop_cm3, random);
      CellLook look;
      table.look({&cell, 1}, {&look, 1});
      const Equilibrium there = exact.at(cell);
      const double off = std::abs(look.ph - there.ph);
      if (off > worst_ph) worst = cell;
      worst_ph = std::max(worst_ph, off);
      const Lab seen = to_lab(xyz_of({linear(look.r), linear(look.g), linear(look.b)}));
      worst_colour = std::max(worst_colour, ciede2000(seen, exact.colour(cell, there)));
    }
    MESSAGE(std::string(system.flask)
            << " with " << std::string(system.indicator) << ": pH off by at most " << worst_ph << " (burette "
            << worst.burette << ", flask " << worst.flask << "), CIEDE2000 " << worst_colour);
    CHECK(worst_ph < 1e-3);
    CHECK(worst_colour < 1.0);
  }
}

TEST_CASE("a field without indicator has the colour of its tile, whatever is in it") {
  TitrationSpec spec = spec_of("ethanoic acid", "sodium hydroxide", "phenolphthalein");
  spec.indicator.reset();
  FieldTable table(spec, Backdrop::white_tile);
  const CellMix cells[] = {{0.0, 0.0, 3.0}, {0.3, 0.6, 3.0}};
  CellLook looks[2];
  table.look(cells, looks);
  for (const CellLook& look : looks) {
    CHECK(look.r == look.g);
    CHECK(look.g == look.b);
    CHECK(int{look.r} == int{encode(0.90)});
  }
}

}  // namespace halfdrop::test

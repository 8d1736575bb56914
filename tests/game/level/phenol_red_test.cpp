#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "game/level/assets.h"
#include "physics/chemistry/activity.h"
#include "physics/chemistry/solver.h"
#include "physics/chemistry/water.h"
#include "physics/light/spectrum.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop::test {
namespace {

/// pH (of the concentration of H+) from the ratio of absorbances at 558 and 433 nm.
double published_ph(double ratio, double ionic_strength_mol_dm3, double temperature_c) {
  const double kelvin = temperature_c + 273.15;
  const double a = 0.5092 + (temperature_c - 25.0) * 8.5e-4;
  const double root = std::sqrt(ionic_strength_mol_dm3);
  const double pk = 5.798 + 666.7 / kelvin - 4.0 * a * (root / (1.0 + root) - 0.3 * ionic_strength_mol_dm3);
  return pk + std::log10((ratio - 0.00244) / (2.734 - ratio * 0.1075));
}

}  // namespace

// Source: Yao and Byrne, Environ. Sci. Technol. 35 (2001): pH of fresh water from phenol red's absorbance
// ratio, pK = 5.798 + 666.7/T - 4A(...), e1 = 0.00244, e2 = 2.734, e3 = 0.1075. Our bands take their heights
// from these ratios; what is checked is the whole way from a mixture by activity and temperature to light.
TEST_CASE("phenol red's absorbances give the pH that the flask has, by the published equation") {
  const Result<Assets> shelf = read_assets(HALFDROP_SOURCE_FOLDER);
  REQUIRE_MESSAGE(shelf.has_value(), why_not(shelf));
  const Indicator& red = shelf->indicators.at("phenol red").value;
  double worst = 0.0;
  for (const double temperature_c : {10.0, 25.0, 30.0}) {
    SolverOptions options;
    options.temperature_c = temperature_c;
    options.pkw = water::pkw(temperature_c);
    Solver solver(options);
    solver.add(shelf->substances.at("phosphoric acid").value);
    solver.add(shelf->substances.at("sodium hydroxide").value);
    const std::size_t indicator = solver.add(substance_of(red));
    for (const double alkali : {1.2, 1.4, 1.6, 1.8, 1.9}) {
      const std::array mol_dm3{0.01, 0.01 * alkali, 2e-6};
      const Equilibrium there = solver.solve(mol_dm3);
      const auto forms = solver.form_fractions(indicator, there);
      const double ratio =
          absorbance_per_cm_at(558.0, red, 2e-6, forms) / absorbance_per_cm_at(433.0, red, 2e-6, forms);
      const double ph = published_ph(ratio, there.ionic_strength_mol_dm3, temperature_c);
      worst = std::max(worst, std::abs(ph + std::log10(there.h_mol_dm3)));
    }
  }
  MESSAGE("largest difference in pH: " << worst);
  CHECK(worst < 0.005);
}

}  // namespace halfdrop::test

#include <doctest/doctest.h>

#include <cmath>

#include "physics/bench/bench.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

/// The shelf's phenolphthalein with alkali of so much in a still flask, closed to the air: share of its
/// colour that is left.
double colour_left(double alkali_mol_dm3, double after_s) {
  BenchSpec spec = titration_bench();
  spec.indicator = shelf().indicators.at("phenolphthalein").value;
  spec.air = false;
  spec.temperature_c = 25.0;
  settle(spec);
  BenchState state = lay_out(spec);
  Parcel liquid = Parcel::solution(50.0, Component::titrant, alkali_mol_dm3);
  liquid.dissolve(Component::indicator, 1e-5);
  state.ledger.open(Account::flask, liquid);
  run(spec, state, at_rest(), after_s);
  const Parcel& rest = state.ledger.balance(Account::flask);
  const auto coloured = static_cast<double>(rest.amount(Component::indicator));
  return coloured / (coloured + static_cast<double>(rest.amount(Component::faded_indicator)));
}

}  // namespace

// Source: a student's experiment, docs.hackuarium.org 2019-04-10: first-order constants 0.2878, 0.1984,
// 0.1217 and 0.0460 (no unit printed; a minute assumed) in 0.300, 0.225, 0.150 and 0.075 mol/dm3 of sodium
// hydroxide, no other salt. Height of the rate fitted to them (assets/indicators.json); how it falls is the
// model's.
TEST_CASE("phenolphthalein fades in strong alkali as fast as was measured, within a tenth") {
  const double measured[][2] = {{0.300, 0.2878}, {0.225, 0.1984}, {0.150, 0.1217}, {0.075, 0.0460}};
  for (const auto& [alkali_mol_dm3, per_minute] : measured) {
    CAPTURE(alkali_mol_dm3);
    const double model_per_minute = -std::log(colour_left(alkali_mol_dm3, 30.0)) / 0.5;
    MESSAGE("model over measured at " << alkali_mol_dm3 << ": " << model_per_minute / per_minute);
    CHECK_NEAR(model_per_minute / per_minute, 1.0, 0.1);
  }
}

// Source: Tamura and co-workers, Anal. Sci. 12 (1996) 927, abstract: the colourless carbinol's pK is 12.
TEST_CASE("only phenolphthalein's red form fades, half of it at pH 12 in the end") {
  for (const auto& [name, shelved] : shelf().indicators) {
    CAPTURE(name);
    const Fading& fading = shelved.value.fading;
    CHECK((fading.per_mol_s > 0.0) == (name == "phenolphthalein"));
    if (fading.per_mol_s == 0.0) continue;
    CHECK(fading.form == 2);
    CHECK_NEAR(fading.half_at_ph, 12.0, 0.05);
  }
}

}  // namespace halfdrop::test

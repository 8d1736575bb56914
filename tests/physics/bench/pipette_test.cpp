#include "physics/bench/pipette.h"

#include <doctest/doctest.h>

#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

void act(const BenchSpec& spec, BenchState& state, Deed deed) {
  REQUIRE(!check(spec, state, deed).has_value());
  apply(spec, state, deed);
}

BenchState aside(const BenchSpec& spec) {
  BenchState state = lay_out(spec);
  state.hands.flask_x_cm = 26.0;
  return state;
}

double analyte_umol(const BenchSpec& spec, BenchState state) {
  act(spec, state, Deed::fill_pipette);
  act(spec, state, Deed::deliver_aliquot);
  return 1e6 * state.ledger.balance(Account::flask).amount_mol(Component::analyte);
}

double nominal_umol(const BenchSpec& spec) { return 1e3 * spec.pipette.true_cm3 * spec.sample.true_mol_dm3; }

}  // namespace

// ISO 648: a one-mark pipette is made to deliver; the last drop is none of its volume.
TEST_CASE("a pipette delivers its volume and keeps the last drop") {
  BenchSpec spec = titration_bench();
  spec.pipette.true_cm3 = 24.9871;
  BenchState state = aside(spec);
  act(spec, state, Deed::fill_pipette);
  act(spec, state, Deed::deliver_aliquot);
  CHECK_NEAR(cm3(state, Account::flask), spec.pipette.true_cm3, 1e-9);
  CHECK_NEAR(cm3(state, Account::pipette_wet), kPipetteKeeps_cm3, 1e-9);
  CHECK(quanta(state, Account::pipette) == 0);
}

TEST_CASE("blown out it delivers the last drop as well") {
  const BenchSpec spec = titration_bench();
  BenchState state = aside(spec);
  CHECK(check(spec, state, Deed::blow_out_pipette) == Refusal::pipette_empty);
  act(spec, state, Deed::fill_pipette);
  CHECK(check(spec, state, Deed::blow_out_pipette) == Refusal::pipette_full);
  act(spec, state, Deed::deliver_aliquot);
  act(spec, state, Deed::blow_out_pipette);
  CHECK_NEAR(cm3(state, Account::flask), spec.pipette.true_cm3 + kPipetteKeeps_cm3, 1e-9);
  CHECK(quanta(state, Account::pipette_wet) == 0);
}

// Arithmetic: what it was left wet with has its share of what is drawn up.
TEST_CASE("a wet pipette delivers too little by the share of its water") {
  BenchSpec spec = titration_bench();
  const double dry_umol = analyte_umol(spec, aside(spec));
  CHECK_NEAR(dry_umol, nominal_umol(spec), 1e-6);
  spec.pipette.wet_cm3 = 0.2;
  const double drawn_cm3 = spec.pipette.true_cm3 + kPipetteKeeps_cm3;
  CHECK_NEAR(analyte_umol(spec, aside(spec)) / dry_umol, 1.0 - 0.2 / drawn_cm3, 1e-6);
}

TEST_CASE("rinsed with the sample a wet pipette delivers what it should; with water it does not") {
  BenchSpec spec = titration_bench();
  spec.pipette.wet_cm3 = 0.2;
  BenchState with_sample = aside(spec), with_water = aside(spec);
  act(spec, with_sample, Deed::rinse_pipette_with_sample);
  act(spec, with_water, Deed::rinse_pipette_with_water);
  // One rinse leaves 0.04 cm3 of which 0.2 / 6 is water: 1.3 in 25,000.
  CHECK_NEAR(analyte_umol(spec, with_sample) / nominal_umol(spec), 1.0, 1e-4);
  CHECK_NEAR(analyte_umol(spec, with_water) / nominal_umol(spec),
             1.0 - kPipetteKeeps_cm3 / (spec.pipette.true_cm3 + kPipetteKeeps_cm3), 1e-6);
}

TEST_CASE("rinsings go into the sink, not back into the bottle") {
  const BenchSpec spec = titration_bench();
  BenchState state = aside(spec);
  const double bottle_cm3 = cm3(state, Account::sample_bottle);
  act(spec, state, Deed::rinse_pipette_with_sample);
  CHECK_NEAR(bottle_cm3 - cm3(state, Account::sample_bottle), kPipetteRinse_cm3, 1e-9);
  CHECK_NEAR(cm3(state, Account::sink), kPipetteRinse_cm3 - kPipetteKeeps_cm3, 1e-9);
  CHECK(quanta(state, Account::flask) == 0);
}

}  // namespace halfdrop

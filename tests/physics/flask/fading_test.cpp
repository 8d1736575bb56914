#include "physics/flask/fading.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/flask/contents.h"
#include "physics/flask/gas_exchange.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

BenchSpec alkali_in_the_flask() {
  BenchSpec spec = titration_bench();
  spec.indicator.fading = {2, 0.016, 12.0};
  spec.air = false;
  settle(spec);
  return spec;
}

BenchState flask_of(const BenchSpec& spec, double alkali_mol_dm3) {
  BenchState state = lay_out(spec);
  Parcel liquid = Parcel::solution(50.0, Component::titrant, alkali_mol_dm3);
  liquid.dissolve(Component::indicator, 1e-5);
  state.ledger.open(Account::flask_rest, liquid);
  return state;
}

double colour_left(const BenchState& state) {
  const Parcel& rest = state.ledger.balance(Account::flask_rest);
  const auto coloured = static_cast<double>(rest.amount(Component::indicator));
  return coloured / (coloured + static_cast<double>(rest.amount(Component::faded_indicator)));
}

}  // namespace

// Source: a student's experiment, docs.hackuarium.org 2019-04-10: first-order constants 0.2878, 0.1984 and
// 0.1217 (no unit printed; a minute assumed) in 0.300, 0.225 and 0.150 mol/dm3 of sodium hydroxide.
TEST_CASE("phenolphthalein fades in strong alkali as fast as was measured, within a fifth") {
  const double measured[][2] = {{0.300, 0.2878}, {0.225, 0.1984}, {0.150, 0.1217}};
  const BenchSpec spec = alkali_in_the_flask();
  for (const auto& [alkali_mol_dm3, per_minute] : measured) {
    CAPTURE(alkali_mol_dm3);
    BenchState state = flask_of(spec, alkali_mol_dm3);
    run(spec, state, at_rest(), 30.0);
    CHECK_NEAR(-std::log(colour_left(state)) / 0.5 / per_minute, 1.0, 0.2);
  }
}

TEST_CASE("at the pH of an endpoint an hour takes less than a thousandth of the colour") {
  const BenchSpec spec = alkali_in_the_flask();
  BenchState state = flask_of(spec, 1e-5);
  run(spec, state, at_rest(), 600.0);
  CHECK(colour_left(state) > 1.0 - 1e-3 / 6.0);
}

TEST_CASE("what faded comes back when the alkali is diluted, and none is lost") {
  const BenchSpec spec = alkali_in_the_flask();
  BenchState state = flask_of(spec, 0.3);
  run(spec, state, at_rest(), 600.0);
  const double faded = 1.0 - colour_left(state);
  REQUIRE(faded > 0.9);
  state.ledger.transfer(Account::flask_rest, Account::sink, volume_quanta(49.0));
  Parcel water;
  water.volume = volume_quanta(99.0);
  state.ledger.open(Account::flask_rest, water);
  const Parcel before = state.ledger.total();
  run(spec, state, at_rest(), 3600.0);
  CHECK(colour_left(state) > 1.0 - faded + 0.2);  // pH 11.5 now: some stays colourless
  CHECK(state.ledger.total() == before);
}

}  // namespace halfdrop

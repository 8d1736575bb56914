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
  spec.indicator.fading = {2, 0.00447, 12.0};
  spec.air = false;
  spec.temperature_c = 25.0;
  settle(spec);
  return spec;
}

BenchState flask_of(const BenchSpec& spec, double alkali_mol_dm3) {
  BenchState state = lay_out(spec);
  Parcel liquid = Parcel::solution(50.0, Component::titrant, alkali_mol_dm3);
  liquid.dissolve(Component::indicator, 1e-5);
  state.ledger.open(Account::flask, liquid);
  return state;
}

double colour_left(const BenchState& state) {
  const Parcel& rest = state.ledger.balance(Account::flask);
  const auto coloured = static_cast<double>(rest.amount(Component::indicator));
  return coloured / (coloured + static_cast<double>(rest.amount(Component::faded_indicator)));
}

}  // namespace

// Source: Broensted and Bjerrum's equation, log10 k = log10 k0 + 2 A zA zB f(I), Davies' f, with A 0.509: the
// same alkali at an ionic strength of 0.30 for 0.075 mol/dm3 fades 10^(2.036 (0.264 - 0.192)) = 1.40 times as
// fast.
TEST_CASE("salt makes two negative ions meet more often: the colour fades faster") {
  const auto per_minute = [](double salt_mol_dm3) {
    BenchSpec spec = alkali_in_the_flask();
    spec.sample.substance = {"sodium chloride", {{"Na+", 1}, {"Cl-", -1}}, {}};
    settle(spec);
    BenchState state = lay_out(spec);
    Parcel liquid = Parcel::solution(50.0, Component::titrant, 0.075);
    liquid.dissolve(Component::indicator, 1e-5);
    liquid.dissolve(Component::analyte, salt_mol_dm3);
    state.ledger.open(Account::flask, liquid);
    run(spec, state, at_rest(), 30.0);
    return -std::log(colour_left(state)) / 0.5;
  };
  CHECK_NEAR(per_minute(0.225) / per_minute(0.0), 1.40, 0.03);
}

TEST_CASE("at the pH of an endpoint an hour takes less than a thousandth of the colour") {
  const BenchSpec spec = alkali_in_the_flask();
  BenchState state = flask_of(spec, 1e-5);
  run(spec, state, at_rest(), 600.0);
  CHECK(colour_left(state) > 1.0 - 1e-3 / 6.0);
}

// Worked by hand from the constants: 0.003 mol/dm3 of alkali, so forward 0.00447 x 1.27 x 0.003 = 1.7e-5 s^-1
// and back 0.00447 x 10^(12 - 13.99) = 4.5e-5 s^-1; of 0.93 faded an hour brings back 0.13.
TEST_CASE("what faded comes back when the alkali is diluted, and none is lost") {
  const BenchSpec spec = alkali_in_the_flask();
  BenchState state = flask_of(spec, 0.3);
  run(spec, state, at_rest(), 600.0);
  const double faded = 1.0 - colour_left(state);
  REQUIRE(faded > 0.9);
  state.ledger.transfer(Account::flask, Account::sink, volume_quanta(49.0));
  Parcel water;
  water.volume = volume_quanta(99.0);
  state.ledger.open(Account::flask, water);
  const Parcel before = state.ledger.total();
  run(spec, state, at_rest(), 3600.0);
  CHECK_NEAR(colour_left(state), 1.0 - faded + 0.13, 0.01);
  CHECK(state.ledger.total() == before);
}

}  // namespace halfdrop

#include "physics/bench/bench.h"

#include <cassert>

#include "physics/bench/flight.h"
#include "physics/burette/filling.h"
#include "physics/burette/jet.h"
#include "physics/flask/mixing.h"

namespace halfdrop {

namespace {

/// Half the width of a tile: a flask further off stands on the bare bench.
constexpr double kTileHalf_cm = 7.5;
constexpr double kIndicatorBottle_cm3 = 30.0;
/// The bottle and the store of pure water that it is filled from; that filling is left out.
constexpr double kWashBottle_cm3 = 10000.0;

}  // namespace

BenchState lay_out(const BenchSpec& spec) {
  assert(spec.settled.full_drop_cm3 > 0.0);
  BenchState state;
  Ledger& ledger = state.ledger;
  ledger.open(Account::titrant_bottle,
              Parcel::solution(spec.titrant.volume_cm3, Component::titrant, spec.titrant.true_mol_dm3));
  ledger.open(Account::sample_bottle,
              Parcel::solution(spec.sample.volume_cm3, Component::analyte, spec.sample.true_mol_dm3));
  ledger.open(Account::indicator_bottle,
              Parcel::solution(kIndicatorBottle_cm3, Component::indicator, spec.indicator.stock_mol_dm3));
  Parcel water;
  water.volume = volume_quanta(kWashBottle_cm3);
  ledger.open(Account::wash_bottle, water);
  return state;
}

void step(const BenchSpec& spec, BenchState& state, const Hands& hands) {
  state.hands = hands;
  fill(spec, state, hands.pour);
  run_jet(spec, state, hands.tap);
  fall(spec, state);
  wash_down(spec, state, hands.wash);
  mix(spec, state, hands.swirl);
  ++state.tick;
}

bool flask_under_jet(const BenchSpec& spec, const Hands& hands) {
  return hands.flask_x_cm >= -spec.flask.neck_radius_cm && hands.flask_x_cm <= spec.flask.neck_radius_cm;
}

bool flask_on_tile(const BenchState& state) {
  return state.tile_laid && state.hands.flask_x_cm >= -kTileHalf_cm &&
         state.hands.flask_x_cm <= kTileHalf_cm && state.hands.flask_y_cm < 1.0;
}

}  // namespace halfdrop

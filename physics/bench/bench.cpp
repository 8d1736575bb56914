#include "physics/bench/bench.h"

#include <cassert>

#include "physics/bench/drill.h"
#include "physics/bench/flight.h"
#include "physics/bench/pipette_by_hand.h"
#include "physics/bench/preparation.h"
#include "physics/burette/filling.h"
#include "physics/burette/jet.h"
#include "physics/burette/plug.h"
#include "physics/burette/rinsing.h"
#include "physics/burette/wall_film.h"
#include "physics/flask/contents.h"
#include "physics/flask/fading.h"
#include "physics/flask/gas_exchange.h"
#include "physics/flask/sloshing.h"
#include "physics/flask/stirring.h"
#include "physics/flask/wall.h"
#include "physics/flask/washing.h"

namespace halfdrop {

namespace {

/// Half the width of a tile: a flask further off stands on the bare bench.
constexpr double kTileHalf_cm = 7.5;
constexpr double kIndicatorBottle_cm3 = 30.0;
/// The bottle and the store of pure water that it is filled from; that filling is left out.
constexpr double kWashBottle_cm3 = 10000.0;
/// More than any bench gives off or takes up.
constexpr double kCarbonDioxideInAir_mol = 1.0;

/// A bottle's liquid. An acid one has stood in air; an alkaline one was made without carbon dioxide, and
/// holds what it has taken up since.
Parcel bottled(const BenchSpec& spec, const BottleSpec& bottle, Component component) {
  Parcel liquid = Parcel::solution(bottle.volume_cm3, component, bottle.true_mol_dm3);
  liquid.dissolve(Component::carbonate,
                  bottle.carbonate_mol_dm3 + bottle.carbonate_per_mol * bottle.true_mol_dm3);
  if (equilibrium_of(spec, liquid).ph < 7.0)
    liquid.dissolve(Component::carbon_dioxide, spec.settled.saturated_co2_mol_dm3);
  return liquid;
}

}  // namespace

BenchState lay_out(const BenchSpec& spec) {
  assert(spec.settled.full_drop_cm3 > 0.0);
  BenchState state;
  Ledger& ledger = state.ledger;
  const auto stands_ready = [&](Account bottle) {
    return !spec.preparation.asked || bottle != standard_account(spec);
  };
  if (stands_ready(Account::titrant_bottle))
    ledger.open(Account::titrant_bottle, bottled(spec, spec.titrant, Component::titrant));
  if (stands_ready(Account::sample_bottle))
    ledger.open(Account::sample_bottle, bottled(spec, spec.sample, Component::analyte));
  if (spec.preparation.asked) lay_out_solid(spec, state);
  ledger.open(Account::indicator_bottle,
              Parcel::solution(kIndicatorBottle_cm3, Component::indicator, spec.indicator.stock_mol_dm3));
  if (spec.then)
    ledger.open(Account::second_indicator_bottle,
                Parcel::solution(kIndicatorBottle_cm3, Component::second_indicator,
                                 spec.then->indicator.stock_mol_dm3));
  ledger.open(Account::wash_bottle, Parcel::solution(kWashBottle_cm3, Component::carbon_dioxide,
                                                     spec.settled.saturated_co2_mol_dm3));
  ledger.open(Account::air,
              Parcel::amount_of(Component::carbon_dioxide, amount_quanta(kCarbonDioxideInAir_mol)));
  const Parcel water = Parcel::solution(spec.burette.wet_cm3 + spec.pipette.wet_cm3,
                                        Component::carbon_dioxide, spec.settled.saturated_co2_mol_dm3);
  wet_tube(spec, state, water);
  ledger.open(Account::pipette_wet, water.share(volume_quanta(spec.pipette.wet_cm3)));
  lay_out_drill(spec, state);
  return state;
}

void step(const BenchSpec& spec, BenchState& state, const Hands& hands) {
  state.hands = hands;
  const Quanta column_before = state.ledger.balance(Account::column).volume;
  work_preparation(spec, state);
  fill(spec, state, hands.pour);
  state.plug = plug_after(spec.tap, state.plug, hands.tap);
  if (held_aslant(state)) {
    roll(spec, state);
  } else {
    run_jet(spec, state);
    seep(spec, state);
    cling_and_run(spec, state, column_before);
  }
  work_pipette(spec, state);
  fall(spec, state);
  slosh(spec, state);
  wash_down(spec, state, hands.wash);
  run_down_wall(spec, state);
  stir(spec, state);
  exchange_gas(spec, state);
  fade(spec, state);
  ++state.tick;
}

bool flask_under_jet(const BenchSpec& spec, const BenchState& state) {
  const Hands& hands = state.hands;
  return !state.over_edge && hands.flask_x_cm >= -spec.flask.neck_radius_cm &&
         hands.flask_x_cm <= spec.flask.neck_radius_cm;
}

bool flask_on_tile(const BenchState& state) {
  return state.tile_laid && state.hands.flask_x_cm >= -kTileHalf_cm &&
         state.hands.flask_x_cm <= kTileHalf_cm && state.hands.flask_y_cm < 1.0;
}

}  // namespace halfdrop

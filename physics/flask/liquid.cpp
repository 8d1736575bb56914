#include "physics/flask/liquid.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_state.h"

namespace halfdrop {

namespace {

/// Joins what comes down at one place to what came down at another: where their middle is.
void join(Arrival& arrival, const Parcel& liquid, double x_cm, double momentum_g_cm_s) {
  const auto before = static_cast<double>(arrival.liquid.volume), more = static_cast<double>(liquid.volume);
  if (before + more > 0.0) arrival.x_cm = (arrival.x_cm * before + x_cm * more) / (before + more);
  arrival.liquid += liquid;
  arrival.momentum_g_cm_s += momentum_g_cm_s;
}

/// Before anything is spread, the liquid is laid out as it is without it. False in an empty flask: what comes
/// first is all there is.
bool let_in(BenchState& state, Account from, const Parcel& liquid) {
  if (state.flask.laid_out == 0) state.flask.laid_out = flask_liquid(state.ledger).volume;
  state.ledger.move(from, Account::flask, liquid);
  return state.flask.laid_out > 0;
}

void keep_share(Parcel& parcel, const CellField* const* fields, std::size_t count) {
  Quanta kept = 0;
  for (std::size_t i = 0; i < count; ++i) kept += total(*fields[i]);
  const Parcel before = parcel;
  parcel = before.share(kept);
}

}  // namespace

const Parcel& flask_liquid(const Ledger& ledger) { return ledger.balance(Account::flask); }

Parcel rest_of(const BenchState& state) {
  const FlaskLiquid& flask = state.flask;
  return flask_liquid(state.ledger) - flask.titrant - flask.water - flask.indicator - flask.second_indicator -
         flask.drops.liquid - flask.washings.liquid - flask.tint.liquid - flask.second_tint.liquid;
}

void let_drop_in(BenchState& state, Account from, const Parcel& liquid, double x_cm, double momentum_g_cm_s) {
  if (!let_in(state, from, liquid)) return;
  const double gram = liquid.volume_cm3();  // 1 g/cm3
  if (gram > 0.0) state.flask.impact_erg += kStirsUp * 0.5 * momentum_g_cm_s * momentum_g_cm_s / gram;
  join(state.flask.drops, liquid, x_cm, momentum_g_cm_s);
}

void let_water_in(BenchState& state, Account from, const Parcel& liquid) {
  if (let_in(state, from, liquid)) join(state.flask.washings, liquid, 0.0, 0.0);
}

void let_tint_in(BenchState& state, Account from, const Parcel& liquid) {
  if (let_in(state, from, liquid)) join(state.flask.tint, liquid, 0.0, 0.0);
}

void let_second_tint_in(BenchState& state, Account from, const Parcel& liquid) {
  if (let_in(state, from, liquid)) join(state.flask.second_tint, liquid, 0.0, 0.0);
}

void even_out(BenchState& state) {
  const FlaskLiquid before = std::move(state.flask);
  state.flask = FlaskLiquid{};
  state.flask.flow = before.flow;
  state.flask.spin_rad_s = before.spin_rad_s;
  state.flask.impact_erg = before.impact_erg;
}

void take_out(BenchState& state, Account to, Quanta volume) {
  FlaskLiquid& flask = state.flask;
  const Quanta all = flask_liquid(state.ledger).volume;
  if (volume <= 0 || all <= 0) return;
  const double stays = 1.0 - static_cast<double>(std::min(volume, all)) / static_cast<double>(all);
  state.ledger.transfer(Account::flask, to, volume);
  if (flask.even()) return;
  for (CellField& field : flask.field)
    for (double& cell : field) cell = std::floor(cell * stays);
  const std::array titrant{&flask.of(Source::fresh), &flask.of(Source::meeting), &flask.of(Source::titrant)};
  const std::array water{&flask.of(Source::water)}, indicator{&flask.of(Source::indicator)},
      second{&flask.of(Source::second_indicator)};
  keep_share(flask.titrant, titrant.data(), titrant.size());
  keep_share(flask.water, water.data(), 1);
  keep_share(flask.indicator, indicator.data(), 1);
  keep_share(flask.second_indicator, second.data(), 1);
  const auto shrink = [stays](Arrival& arrival) {
    const auto kept = static_cast<Quanta>(static_cast<double>(arrival.liquid.volume) * stays);
    arrival.liquid = arrival.liquid.share(kept);
  };
  shrink(flask.drops);
  shrink(flask.washings);
  shrink(flask.tint);
  shrink(flask.second_tint);
  flask.laid_out = std::max<Quanta>(static_cast<Quanta>(static_cast<double>(flask.laid_out) * stays), 1);
}

}  // namespace halfdrop

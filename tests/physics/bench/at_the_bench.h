#pragma once
// A bench for tests: 0.1 mol/dm3 alkali in the burette, 0.1 mol/dm3 ethanoic acid to be titrated with
// phenolphthalein.

#include "physics/bench/bench.h"
#include "physics/burette/column.h"

namespace halfdrop::test {

inline Substance sodium_hydroxide() { return {"sodium hydroxide", {{"Na+", 1}}, {}}; }
inline Substance ethanoic_acid() { return {"ethanoic acid", {}, {AcidSystem{1, {4.756, 0.0, 0.0}, 0}}}; }

inline Indicator phenolphthalein() {
  Indicator indicator;
  indicator.name = "phenolphthalein";
  indicator.system = AcidSystem{2, {9.05, 9.50, 0.0}, 0};
  indicator.bands = {AbsorptionBand{2, 552.0, 28.0, 30000.0}};
  indicator.stock_mol_dm3 = 0.00314;
  indicator.fading = {2, 0.00447, 12.0};
  return indicator;
}

inline BenchSpec titration_bench() {
  BenchSpec spec;
  spec.titrant.substance = sodium_hydroxide();
  spec.sample.substance = ethanoic_acid();
  spec.indicator = phenolphthalein();
  spec.flask.fineness = 0.25;  // quicker than a player's
  settle(spec);
  return spec;
}

/// Tap shut, nothing held, flask under the jet.
inline Hands at_rest() {
  Hands hands;
  hands.tap = 0.0;
  hands.flask_x_cm = 0.0;
  return hands;
}
inline Hands swirling(double swirl) {
  Hands hands = at_rest();
  hands.swirl = swirl;
  return hands;
}
inline Hands tap_at(double position) {
  Hands hands = at_rest();
  hands.tap = position;
  return hands;
}

inline void fill_column(const BenchSpec& spec, BenchState& state, double reading_cm3) {
  state.ledger.transfer(Account::titrant_bottle, Account::column,
                        volume_quanta(column_volume_cm3(spec.burette, reading_cm3)) -
                            state.ledger.balance(Account::column).volume);
}
inline void fill_jet(const BenchSpec& spec, BenchState& state) {
  state.ledger.transfer(Account::titrant_bottle, Account::jet,
                        volume_quanta(spec.burette.jet_cm3) - state.ledger.balance(Account::jet).volume);
}

/// Burette filled to a mark, jet full, nothing hanging.
inline BenchState filled_bench(const BenchSpec& spec, double reading_cm3 = 0.0) {
  BenchState state = lay_out(spec);
  fill_column(spec, state, reading_cm3);
  fill_jet(spec, state);
  return state;
}

/// An aliquot and drops of indicator in the flask.
inline void charge_flask(const BenchSpec& spec, BenchState& state, int indicator_drops = 3) {
  const Quanta aliquot = volume_quanta(spec.pipette.true_cm3);
  state.ledger.transfer(Account::sample_bottle, Account::flask, aliquot);
  for (int i = 0; i < indicator_drops; ++i) {
    state.ledger.transfer(Account::indicator_bottle, Account::flask, volume_quanta(spec.indicator_drop_cm3));
  }
}

inline void run(const BenchSpec& spec, BenchState& state, const Hands& hands, double for_s) {
  const auto ticks = static_cast<Tick>(for_s * kTicksPerSecond);
  for (Tick i = 0; i < ticks; ++i) step(spec, state, hands);
}

inline double cm3(const BenchState& state, Account account) {
  return state.ledger.balance(account).volume_cm3();
}
inline Quanta quanta(const BenchState& state, Account account) {
  return state.ledger.balance(account).volume;
}
inline double reading(const BenchSpec& spec, const BenchState& state) {
  return scale_reading_cm3(spec.burette, cm3(state, Account::column));
}

}  // namespace halfdrop::test

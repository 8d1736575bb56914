#include "physics/flask/washing.h"

#include "physics/flask/liquid.h"

namespace halfdrop {

void wash_down(const BenchSpec& spec, BenchState& state, double wash) {
  if (wash <= 0.0) return;
  const Parcel water = state.ledger.balance(Account::wash_bottle)
                           .share(volume_quanta(wash * spec.wash_cm3_s * kSecondsPerTick));
  if (!water.empty()) let_water_in(state, Account::wash_bottle, water);
  run_over(spec, state);
}

void run_over(const BenchSpec& spec, BenchState& state) {
  const Quanta over = flask_liquid(state.ledger).volume - volume_quanta(spec.flask.capacity_cm3);
  if (over > 0) take_out(state, Account::bench_top, over);
}

}  // namespace halfdrop

#include "physics/flask/washing.h"

#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

/// A squeezed wash bottle takes down this share of what clings to the wall each second (our own estimate).
constexpr double kWashedDownPerSecond = 3.0;
/// Less than this on the wall goes down whole.
constexpr double kLastTrace_cm3 = 1e-4;

}  // namespace

void wash_down(const BenchSpec& spec, BenchState& state, double wash) {
  if (wash <= 0.0) return;
  const Parcel water = state.ledger.balance(Account::wash_bottle)
                           .share(volume_quanta(wash * spec.wash_cm3_s * kSecondsPerTick));
  if (!water.empty()) let_water_in(state, Account::wash_bottle, water);
  const Parcel& wall = state.ledger.balance(Account::flask_wall);
  if (!wall.empty()) {
    const double share = wash * kWashedDownPerSecond * kSecondsPerTick;
    const Quanta part = wall.volume_cm3() < kLastTrace_cm3
                            ? wall.volume
                            : static_cast<Quanta>(share * static_cast<double>(wall.volume)) + 1;
    let_drop_in(state, Account::flask_wall, wall.share(part), -spec.flask.base_radius_cm, 0.0);
  }
  run_over(spec, state);
}

void run_over(const BenchSpec& spec, BenchState& state) {
  const Quanta over = flask_liquid(state.ledger).volume - volume_quanta(spec.flask.capacity_cm3);
  if (over > 0) take_out(state, Account::bench_top, over);
}

}  // namespace halfdrop

#include "physics/bench/flight.h"

#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/bench/rigid_world.h"
#include "physics/flask/liquid.h"
#include "physics/flask/washing.h"

namespace halfdrop {

namespace {

void land(const BenchSpec& spec, BenchState& state, const FallingDrop& drop, Account target) {
  if (target == Account::flask) {
    const double gram = drop.liquid.volume_cm3() * spec.settled.liquid.density_kg_m3 * 1e-3;
    let_drop_in(state, Account::in_flight, drop.liquid, drop.x_cm - state.hands.flask_x_cm,
                gram * drop.speed_cm_s);
    run_over(spec, state);
  } else {
    state.ledger.move(Account::in_flight, target, drop.liquid);
  }
}

}  // namespace

Account under_the_jet(const BenchSpec& spec, const BenchState& state) {
  if (state.beaker_under) return Account::beaker;
  const double off_axis_cm = std::fabs(state.hands.flask_x_cm);
  const double clear_cm = spec.flask.neck_radius_cm - drop_radius_cm(spec.settled.full_drop_cm3);
  if (off_axis_cm < clear_cm) return Account::flask;
  if (off_axis_cm <= spec.flask.neck_radius_cm) return Account::flask_wall;
  return Account::bench_top;
}

void let_go(const BenchSpec& spec, BenchState& state, Parcel drop, double speed_cm_s) {
  state.ledger.move(Account::pendant_drop, Account::in_flight, drop);
  const double speed_in_grains_cm_s = std::round(speed_cm_s / kFlightGrain) * kFlightGrain;
  const FallingDrop falling{true, drop, 0.0, 0.0, 0.0, speed_in_grains_cm_s};
  for (FallingDrop& place : state.falling) {
    if (place.flying) continue;
    place = falling;
    return;
  }
  // More drops in the air than there is room for: this one arrives at once.
  land(spec, state, falling, under_the_jet(spec, state));
}

void fall(const BenchSpec& spec, BenchState& state) {
  if (state.ledger.balance(Account::in_flight).empty()) return;
  const Landings landings = fly(spec, state);
  for (std::size_t i = 0; i < kMostFalling; ++i) {
    if (!landings[i]) continue;
    const FallingDrop drop = state.falling[i];
    state.falling[i] = FallingDrop{};
    land(spec, state, drop, *landings[i]);
  }
}

}  // namespace halfdrop

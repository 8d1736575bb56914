#include "physics/bench/flight.h"

#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/bench/rigid_world.h"
#include "physics/flask/mixing.h"

namespace halfdrop {

namespace {

void land(const BenchSpec& spec, BenchState& state, const Parcel& liquid, Account target) {
  state.ledger.move(Account::in_flight, target, liquid);
  if (target == Account::flask_landing) settle_zones(spec, state);
}

}  // namespace

Account under_the_jet(const BenchSpec& spec, const BenchState& state) {
  if (state.beaker_under) return Account::beaker;
  const double off_axis_cm = std::fabs(state.hands.flask_x_cm);
  const double clear_cm = spec.flask.neck_radius_cm - drop_radius_cm(spec.settled.full_drop_cm3);
  if (off_axis_cm < clear_cm) return Account::flask_landing;
  if (off_axis_cm <= spec.flask.neck_radius_cm) return Account::flask_wall;
  return Account::bench_top;
}

void let_go(const BenchSpec& spec, BenchState& state, Parcel drop, double speed_cm_s) {
  state.ledger.move(Account::pendant_drop, Account::in_flight, drop);
  const double speed_in_grains_cm_s = std::round(speed_cm_s / kFlightGrain) * kFlightGrain;
  for (FallingDrop& place : state.falling) {
    if (place.flying) continue;
    place = FallingDrop{true, drop, 0.0, 0.0, 0.0, speed_in_grains_cm_s};
    return;
  }
  // More drops in the air than there is room for: this one arrives at once.
  land(spec, state, drop, under_the_jet(spec, state));
}

void fall(const BenchSpec& spec, BenchState& state) {
  if (state.ledger.balance(Account::in_flight).empty()) return;
  const Landings landings = fly(spec, state);
  for (std::size_t i = 0; i < kMostFalling; ++i) {
    if (!landings[i]) continue;
    const Parcel liquid = state.falling[i].liquid;
    state.falling[i] = FallingDrop{};
    land(spec, state, liquid, *landings[i]);
  }
}

}  // namespace halfdrop

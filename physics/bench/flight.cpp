#include "physics/bench/flight.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/bench/rigid_world.h"
#include "physics/flask/liquid.h"
#include "physics/flask/wall.h"
#include "physics/flask/washing.h"

namespace halfdrop {

namespace {

/// Share of a sphere that lies beyond a plane at a distance from its middle: a cap of height r - distance.
double share_beyond(double distance_cm, double radius_cm) {
  const double height = std::clamp(1.0 - distance_cm / radius_cm, 0.0, 2.0);
  return height * height * (3.0 - height) / 4.0;
}

/// A jet that does not go into the neck lets its drops fall on the rim, which cuts them: what is outside
/// falls beside the flask.
void hit_wall(const BenchSpec& spec, BenchState& state, const FallingDrop& drop) {
  const double x_cm = drop.x_cm - state.hands.flask_x_cm;
  const double height_cm = spec.tip_above_bench_cm - drop.fallen_cm - state.hands.flask_y_cm;
  Parcel inside = drop.liquid;
  const double radius_cm = drop_radius_cm(drop.liquid.volume_cm3());
  const double clear_cm = spec.flask.neck_radius_cm - std::fabs(x_cm);
  if (drop.fallen_cm + 0.1 * state.hands.clamp_mm < radius_cm && clear_cm < 0.05 * spec.tap.tip_outer_mm) {
    const double outside = share_beyond(clear_cm, radius_cm);
    const Parcel lost =
        drop.liquid.share(static_cast<Quanta>(outside * static_cast<double>(drop.liquid.volume)));
    state.ledger.move(Account::in_flight, Account::bench_top, lost);
    inside -= lost;
  }
  cling(spec, state, Account::in_flight, inside, x_cm, height_cm);
}

void land(const BenchSpec& spec, BenchState& state, const FallingDrop& drop, Account target) {
  if (target == Account::flask) {
    const double gram = drop.liquid.volume_cm3() * spec.settled.liquid.density_kg_m3 * 1e-3;
    let_drop_in(state, Account::in_flight, drop.liquid, drop.x_cm - state.hands.flask_x_cm,
                gram * drop.speed_cm_s);
    run_over(spec, state);
  } else if (target == Account::flask_wall) {
    hit_wall(spec, state, drop);
  } else {
    state.ledger.move(Account::in_flight, target, drop.liquid);
  }
}

}  // namespace

Account under_the_jet(const BenchSpec& spec, const BenchState& state) {
  if (state.over_edge) return Account::bench_top;
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
  const double from_cm = std::round(-0.1 * state.hands.clamp_mm / kFlightGrain) * kFlightGrain;
  const FallingDrop falling{true, drop, 0.0, from_cm, 0.0, speed_in_grains_cm_s};
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

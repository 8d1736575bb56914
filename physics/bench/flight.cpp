#include "physics/bench/flight.h"

#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/flask/contents.h"
#include "physics/flask/mixing.h"

namespace halfdrop {

namespace {

constexpr double kGravity_cm_s2 = kGravity_m_s2 * 100.0;
/// A drop is about 5 mm across: nearer than its radius to the neck's wall it touches glass.
constexpr double kDropRadius_cm = 0.25;

double way_down_cm(const BenchSpec& spec, const BenchState& state, Account target) {
  if (target != Account::flask_landing) return spec.tip_above_bench_cm;
  const double surface_cm =
      liquid_depth_cm(spec.flask, flask_liquid(state.ledger).volume_cm3()) + state.hands.flask_y_cm;
  return spec.tip_above_bench_cm > surface_cm ? spec.tip_above_bench_cm - surface_cm : 0.0;
}

void land(const BenchSpec& spec, BenchState& state, const Parcel& liquid) {
  const Account target = under_the_jet(spec, state);
  state.ledger.move(Account::in_flight, target, liquid);
  if (target == Account::flask_landing) settle_zones(spec, state);
}

}  // namespace

Account under_the_jet(const BenchSpec& spec, const BenchState& state) {
  if (state.beaker_under) return Account::beaker;
  const double off_axis_cm = std::fabs(state.hands.flask_x_cm);
  if (off_axis_cm <= spec.flask.neck_radius_cm - kDropRadius_cm) return Account::flask_landing;
  if (off_axis_cm <= spec.flask.neck_radius_cm) return Account::flask_wall;
  return Account::bench_top;
}

void let_go(const BenchSpec& spec, BenchState& state, const Parcel& drop) {
  state.ledger.move(Account::pendant_drop, Account::in_flight, drop);
  for (FallingDrop& place : state.falling) {
    if (place.flying) continue;
    place = FallingDrop{true, drop, 0.0, 0.0};
    return;
  }
  land(spec, state, drop);  // More drops in the air than there is room for: this one arrives at once.
}

void fall(const BenchSpec& spec, BenchState& state) {
  if (state.ledger.balance(Account::in_flight).empty()) return;
  const double way = way_down_cm(spec, state, under_the_jet(spec, state));
  for (FallingDrop& drop : state.falling) {
    if (!drop.flying) continue;
    drop.speed_cm_s += kGravity_cm_s2 * kSecondsPerTick;
    drop.fallen_cm += drop.speed_cm_s * kSecondsPerTick;
    if (drop.fallen_cm < way) continue;
    const Parcel liquid = drop.liquid;
    drop = FallingDrop{};
    land(spec, state, liquid);
  }
}

}  // namespace halfdrop

#include "physics/flask/wall.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/elementary.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "physics/flask/outline.h"
#include "physics/flask/washing.h"

namespace halfdrop {

namespace {

/// Volume of a cap with the mean of both angles (40 degrees), over the cube of its foot's radius:
/// pi (2 - 3 cos + cos^3) / (3 sin^3).
constexpr double kCap = 0.5971;
/// Drag of a running drop's foot over viscosity, speed and its radius (our own estimate: 0.05 cm3 runs down
/// clean glass at 10 to 20 cm/s).
constexpr double kDrag = 400.0;
/// Of the film behind it (Landau and Levich 1942: 0.94 capillary lengths Ca^(2/3); from memory).
constexpr double kFilm = 0.94;
/// A squeezed wash bottle drives drops down so fast, and takes this share of a trail each second (our own
/// estimates).
constexpr double kWashDrives_cm_s = 12.0;
constexpr double kWashedDownPerSecond = 3.0;
/// Less than this left of trails goes down whole.
constexpr double kLastTrace_cm3 = 1e-4;

double foot_radius_cm(double volume_cm3) { return elementary::cube_root(volume_cm3 / kCap); }

/// Of the wall there: 1 is vertical.
double steepness(const FlaskSpec& flask, double height_cm) {
  const double cone_cm = flask.height_cm - flask.neck_length_cm;
  if (height_cm >= cone_cm) return 1.0;
  const double out_cm = flask.base_radius_cm - flask.neck_radius_cm;
  return cone_cm / std::sqrt(cone_cm * cone_cm + out_cm * out_cm);
}

std::size_t index_of(double side) { return side < 0.0 ? 0 : 1; }

/// One tick of the wall.
class RunningDown {
 public:
  RunningDown(const BenchSpec& spec, BenchState& state)
      : spec_(spec),
        state_(state),
        reached_cm_(liquid_depth_cm(spec.flask, flask_liquid(state.ledger).volume_cm3()) +
                    state.slosh.wave_cm) {}

  void take() {
    for (ClingingDrop& drop : state_.wall.drops) {
      if (!drop.liquid.empty()) run(drop);
    }
    take_in_trails();
    run_over(spec_, state_);
  }

 private:
  void run(ClingingDrop& drop) {
    const double volume_cm3 = drop.liquid.volume_cm3();
    const double by_itself_cm_s =
        runs_cm_s(spec_.settled.liquid, volume_cm3, steepness(spec_.flask, drop.height_cm));
    const double speed_cm_s = by_itself_cm_s + kWashDrives_cm_s * state_.hands.wash;
    if (speed_cm_s > 0.0) {
      const double way_cm = speed_cm_s * kSecondsPerTick;
      if (by_itself_cm_s > 0.0) leave_trail(drop, by_itself_cm_s, way_cm);
      drop.height_cm -= way_cm;
      meet_others(drop);
    }
    if (drop.height_cm > reached_cm_ || drop.liquid.empty()) return;
    sink_in(drop.liquid, drop.side);
    drop = ClingingDrop{};
  }

  void leave_trail(ClingingDrop& drop, double speed_cm_s, double way_cm) {
    const auto at = static_cast<std::size_t>(std::max(drop.height_cm, 0.0));
    if (at >= kTrailLengths) return;
    Parcel& trail = state_.wall.trail[index_of(drop.side)][at];
    const LiquidFlow& liquid = spec_.settled.liquid;
    const double ca = liquid.viscosity_pa_s * 0.01 * speed_cm_s / liquid.surface_tension_n_m;
    const double thick_cm = kFilm * 0.1 * spec_.settled.capillary_mm * elementary::cube_root(ca * ca);
    // Per cm of its way, half as wide as its foot (our own estimate).
    const double each_cm3 = thick_cm * foot_radius_cm(drop.liquid.volume_cm3());
    const double lacks_cm3 = each_cm3 - trail.volume_cm3();
    if (lacks_cm3 <= 0.0) return;
    const Parcel left = drop.liquid.share(volume_quanta(std::min(each_cm3 * way_cm, lacks_cm3)));
    drop.liquid -= left;
    trail += left;
  }

  /// Takes in a drop that it runs into.
  void meet_others(ClingingDrop& drop) {
    for (ClingingDrop& other : state_.wall.drops) {
      if (&other == &drop || other.liquid.empty() || other.side != drop.side) continue;
      const double apart_cm = foot_radius_cm(drop.liquid.volume_cm3());
      if (std::fabs(other.height_cm - drop.height_cm) > apart_cm) continue;
      drop.liquid += other.liquid;
      drop.height_cm = std::min(drop.height_cm, other.height_cm);
      other = ClingingDrop{};
    }
  }

  void take_in_trails() {
    const double wash = state_.hands.wash;
    for (std::size_t side = 0; side < 2; ++side) {
      for (std::size_t at = 0; at < kTrailLengths; ++at) {
        Parcel& trail = state_.wall.trail[side][at];
        if (trail.empty()) continue;
        const bool reached = static_cast<double>(at) + 0.5 < reached_cm_ ||
                             (wash > 0.0 && trail.volume_cm3() < kLastTrace_cm3);
        const double share = reached ? 1.0 : wash * kWashedDownPerSecond * kSecondsPerTick;
        if (share <= 0.0) continue;
        const auto part = static_cast<Quanta>(share * static_cast<double>(trail.volume));
        const Parcel gone = trail.share(part);
        if (gone.empty()) continue;
        trail -= gone;
        sink_in(gone, side == 0 ? -1.0 : 1.0);
      }
    }
  }

  void sink_in(const Parcel& liquid, double side) {
    let_drop_in(state_, Account::flask_wall, liquid, side * inside_radius_cm(spec_.flask, reached_cm_), 0.0);
  }

  const BenchSpec& spec_;
  BenchState& state_;
  double reached_cm_;
};

/// A place for one more: a free one, or the nearest drop's.
ClingingDrop& place_for(FlaskWall& wall, double side, double height_cm) {
  ClingingDrop* nearest = nullptr;
  for (ClingingDrop& drop : wall.drops) {
    if (drop.liquid.empty()) continue;
    const double apart_cm = std::fabs(drop.height_cm - height_cm);
    if (drop.side == side && apart_cm < foot_radius_cm(drop.liquid.volume_cm3())) return drop;
    const bool nearer = nearest == nullptr || apart_cm < std::fabs(nearest->height_cm - height_cm);
    if (nearest == nullptr || (drop.side == side && (nearest->side != side || nearer))) nearest = &drop;
  }
  for (ClingingDrop& drop : wall.drops) {
    if (!drop.liquid.empty()) continue;
    drop.side = side;
    drop.height_cm = height_cm;
    return drop;
  }
  return *nearest;
}

}  // namespace

double clings_at_most_cm3(const LiquidFlow& liquid) {
  const double weight_n_m3 = liquid.density_kg_m3 * kGravity_m_s2;
  const double foot2_m2 =
      2.0 * liquid.surface_tension_n_m * (kRecedingCosine - kAdvancingCosine) / (weight_n_m3 * kCap);
  return kCap * foot2_m2 * std::sqrt(foot2_m2) * 1e6;
}

double runs_cm_s(const LiquidFlow& liquid, double volume_cm3, double steepness) {
  if (volume_cm3 <= 0.0) return 0.0;
  const double foot_m = 0.01 * foot_radius_cm(volume_cm3);
  const double pulls_n = liquid.density_kg_m3 * kGravity_m_s2 * volume_cm3 * 1e-6 * steepness;
  const double holds_n = 2.0 * foot_m * liquid.surface_tension_n_m * (kRecedingCosine - kAdvancingCosine);
  return std::max(pulls_n - holds_n, 0.0) / (kDrag * liquid.viscosity_pa_s * foot_m) * 100.0;
}

void cling(const BenchSpec& spec, BenchState& state, Account from, const Parcel& liquid, double x_cm,
           double height_cm) {
  if (liquid.empty()) return;
  state.ledger.move(from, Account::flask_wall, liquid);
  const double height = std::clamp(height_cm, 0.0, spec.flask.height_cm);
  place_for(state.wall, x_cm < 0.0 ? -1.0 : 1.0, height).liquid += liquid;
}

void run_down_wall(const BenchSpec& spec, BenchState& state) {
  if (state.ledger.balance(Account::flask_wall).empty()) return;
  RunningDown(spec, state).take();
}

void clear_wall(BenchState& state) {
  state.wall = FlaskWall{};
  state.ledger.transfer(Account::flask_wall, Account::flask,
                        state.ledger.balance(Account::flask_wall).volume);
}

}  // namespace halfdrop

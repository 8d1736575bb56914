#include "physics/bench/clamp.h"

#include <algorithm>
#include <cmath>

#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "physics/flask/outline.h"

namespace halfdrop {

namespace {

/// The jet stays so far above the tile, and above a liquid.
constexpr double kAboveBench_cm = 1.0, kAboveLiquid_cm = 0.3;

double beaker_depth_cm(const BenchState& state) {
  const double volume_cm3 = state.ledger.balance(Account::beaker).volume_cm3();
  return std::min(kBeakerHeight_cm, volume_cm3 / (kPi * kBeakerRadius_cm * kBeakerRadius_cm));
}

/// The jet, at a height above the bench, is not clear of the flask from outside.
bool meets_flask(const BenchSpec& spec, const BenchState& state, double tip_cm) {
  const double above_foot_cm = tip_cm - state.hands.flask_y_cm;
  if (above_foot_cm >= spec.flask.height_cm) return false;
  const double jet_cm = 0.05 * spec.tap.tip_outer_mm;
  return std::fabs(state.hands.flask_x_cm) <
         inside_radius_cm(spec.flask, std::max(above_foot_cm, 0.0)) + jet_cm;
}

/// What a jet over the bench, lowered straight down, meets.
std::optional<Refusal> meets_below(const BenchSpec& spec, const BenchState& state, double tip_cm) {
  if (tip_cm < kAboveBench_cm) return Refusal::bench_in_the_way;
  if (state.beaker_under) {
    if (tip_cm < beaker_depth_cm(state) + kAboveLiquid_cm) return Refusal::jet_would_dip_down;
    return std::nullopt;
  }
  if (!meets_flask(spec, state, tip_cm)) return std::nullopt;
  if (std::fabs(state.hands.flask_x_cm) > spec.flask.neck_radius_cm) return Refusal::flask_in_the_way;
  const double depth_cm = liquid_depth_cm(spec.flask, flask_liquid(state.ledger).volume_cm3());
  const double above_foot_cm = tip_cm - state.hands.flask_y_cm;
  if (above_foot_cm < depth_cm + kAboveLiquid_cm) return Refusal::jet_would_dip_down;
  return std::nullopt;
}

}  // namespace

double tip_height_cm(const BenchSpec& spec, const Hands& hands) {
  return spec.tip_above_bench_cm + 0.1 * hands.clamp_mm;
}

double top_above_bench_mm(const BenchSpec& spec, const Hands& hands) {
  const BuretteSpec& burette = spec.burette;
  const double above_zero_mm = burette.above_zero_cm3 * burette.scale_length_mm / burette.nominal_cm3;
  return 10.0 * tip_height_cm(spec, hands) + burette.jet_length_mm + burette.below_scale_mm +
         burette.scale_length_mm + above_zero_mm;
}

bool top_below_eye(const BenchSpec& spec, const Hands& hands) {
  return top_above_bench_mm(spec, hands) < kStandingEye_mm;
}

std::optional<Refusal> in_the_way_of_clamp(const BenchSpec& spec, const BenchState& state, double clamp_mm) {
  if (state.hands.tilt_degrees > 0.0) return Refusal::burette_in_hand;
  if (state.over_edge || clamp_mm >= state.hands.clamp_mm) return std::nullopt;
  return meets_below(spec, state, spec.tip_above_bench_cm + 0.1 * clamp_mm);
}

std::optional<Refusal> check_swing(const BenchSpec& spec, const BenchState& state, Deed deed) {
  if (state.over_edge == (deed == Deed::swing_over_edge)) return Refusal::already_done;
  if (state.hands.tilt_degrees > 0.0) return Refusal::burette_in_hand;
  if (!state.ledger.balance(Account::in_flight).empty()) return Refusal::still_falls;
  const double tip_cm = tip_height_cm(spec, state.hands);
  if (deed == Deed::swing_back && tip_cm < kAboveBench_cm) return Refusal::jet_too_low;
  if (state.beaker_under && tip_cm < kBeakerHeight_cm) return Refusal::beaker_in_the_way;
  if (meets_flask(spec, state, tip_cm)) return Refusal::flask_in_the_way;
  return std::nullopt;
}

}  // namespace halfdrop

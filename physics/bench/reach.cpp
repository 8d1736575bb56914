#include "physics/bench/reach.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench.h"
#include "physics/bench/clamp.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "physics/flask/outline.h"

namespace halfdrop {

namespace {

/// The jet stays so far above the liquid.
constexpr double kAboveLiquid_cm = 0.3;

std::optional<Refusal> no_room_at(const BenchSpec& spec, const BenchState& state, double x_cm, double y_cm) {
  const double aside_cm = std::fabs(x_cm);
  if (state.beaker_under && aside_cm < kBeakerKeeps_cm) return Refusal::beaker_in_the_way;
  if (state.over_edge) return std::nullopt;
  const double tip_cm = tip_height_cm(spec, state.hands) - y_cm;  // above the flask's foot
  if (tip_cm >= spec.flask.height_cm) return std::nullopt;
  const double jet_cm = 0.05 * spec.tap.tip_outer_mm;
  if (aside_cm <= spec.flask.neck_radius_cm) {
    const double depth_cm = liquid_depth_cm(spec.flask, flask_liquid(state.ledger).volume_cm3());
    if (tip_cm < depth_cm + kAboveLiquid_cm) return Refusal::jet_would_dip;
    return std::nullopt;
  }
  // Beside the neck, the tip may be lower than the shoulder only where the flask is not.
  if (tip_cm >= spec.flask.height_cm - spec.flask.neck_length_cm) return std::nullopt;
  if (aside_cm >= inside_radius_cm(spec.flask, std::max(tip_cm, 0.0)) + jet_cm) return std::nullopt;
  return state.hands.clamp_mm < 0.0 ? Refusal::jet_too_low : Refusal::jet_in_the_way;
}

}  // namespace

std::optional<Refusal> in_the_way_of_flask(const BenchSpec& spec, const BenchState& state, double x_cm,
                                           double y_cm) {
  constexpr double kStep_cm = 0.25;
  const Hands& from = state.hands;
  const double far_cm = std::max(std::fabs(x_cm - from.flask_x_cm), std::fabs(y_cm - from.flask_y_cm));
  const int steps = 1 + static_cast<int>(far_cm / kStep_cm);
  for (int i = 1; i <= steps; ++i) {
    const double share = static_cast<double>(i) / steps;
    const double x = from.flask_x_cm + share * (x_cm - from.flask_x_cm),
                 y = from.flask_y_cm + share * (y_cm - from.flask_y_cm);
    const auto refusal = no_room_at(spec, state, x, y);
    const bool lets_go =
        refusal != Refusal::beaker_in_the_way && y_cm < from.flask_y_cm && x_cm == from.flask_x_cm;
    if (refusal && !lets_go) return refusal;
  }
  return std::nullopt;
}

}  // namespace halfdrop

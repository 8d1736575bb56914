#include "game/scenes/bench_layout.h"

#include <algorithm>
#include <cmath>

namespace halfdrop::layout {

namespace {

constexpr double kTrueReach_cm = 8.0;  ///< drawn to scale up to here
constexpr double kBeyond = 0.1;        ///< of the scale from there on

constexpr float kFarFoot = 604.0F;
constexpr float kFarTop = 54.0F;  ///< rim of the burette; room for the funnel above

}  // namespace

Point near_point(double x_cm, double height_cm) {
  return {kJetX + static_cast<float>(x_cm) * kNearUnits_cm,
          kFootY - static_cast<float>(height_cm) * kNearUnits_cm};
}

float tip_y(const BenchSpec& spec, double clamp_mm) {
  return near_point(0, spec.tip_above_bench_cm + clamp_mm / 10).y;
}

float tap_y(const BenchSpec& spec, double clamp_mm) {
  return near_point(0, spec.tip_above_bench_cm + (clamp_mm + spec.burette.jet_length_mm) / 10).y;
}

float flask_x(double flask_x_cm) {
  const double size = std::abs(flask_x_cm);
  const double drawn = std::min(size, kTrueReach_cm) + std::max(0.0, size - kTrueReach_cm) * kBeyond;
  return near_point(std::copysign(drawn, flask_x_cm), 0).x;
}

double flask_x_cm_at(float x) {
  const double drawn = static_cast<double>((x - kJetX) / kNearUnits_cm);
  const double size = std::abs(drawn);
  const double real = std::min(size, kTrueReach_cm) + std::max(0.0, size - kTrueReach_cm) / kBeyond;
  return std::clamp(std::copysign(real, drawn), -kFlaskReach_cm, kFlaskReach_cm);
}

FarScale::FarScale(const BenchSpec& spec, double clamp_mm) {
  const BuretteSpec& b = spec.burette;
  const double above_mm = b.above_zero_cm3 * b.scale_length_mm / b.nominal_cm3;
  const double total_mm =
      spec.tip_above_bench_cm * 10 + b.jet_length_mm + b.below_scale_mm + b.scale_length_mm + above_mm;
  foot_y = kFarFoot;
  units_mm = (kFarFoot - kFarTop) / static_cast<float>(total_mm);
  rim_y = kFarTop - static_cast<float>(clamp_mm) * units_mm;
  zero_y = rim_y + static_cast<float>(above_mm) * units_mm;
  last_y = y_of_mm(-b.scale_length_mm);
  tap_y = y_of_mm(-b.scale_length_mm - b.below_scale_mm);
  tip_y = tap_y + static_cast<float>(b.jet_length_mm) * units_mm;
  half_width = static_cast<float>(b.outer_half_width_mm) * units_mm;
}

float FarScale::y_of_reading(const BenchSpec& spec, double reading_cm3) const {
  const BuretteSpec& b = spec.burette;
  if (reading_cm3 <= b.nominal_cm3) return y_of_mm(-reading_cm3 / b.nominal_cm3 * b.scale_length_mm);
  const double share = std::min(1.0, (reading_cm3 - b.nominal_cm3) / b.below_scale_cm3);
  return last_y + (tap_y - last_y) * static_cast<float>(share);
}

}  // namespace halfdrop::layout

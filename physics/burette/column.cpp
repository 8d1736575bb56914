#include "physics/burette/column.h"

#include <algorithm>

#include "physics/bench/bench_spec.h"
#include "physics/burette/wall_film.h"

namespace halfdrop {

namespace {

double mm_per_cm3(const BuretteSpec& burette) { return burette.scale_length_mm / burette.nominal_cm3; }

}  // namespace

double true_volume_cm3(const BuretteSpec& burette, double reading_cm3) {
  const double u = std::clamp(reading_cm3 / burette.nominal_cm3, 0.0, 1.0);
  return reading_cm3 + burette.scale_linear_cm3 * u + burette.scale_bow_cm3 * 4.0 * u * (1.0 - u);
}

double tube_volume_cm3(const BuretteSpec& burette, double reading_cm3) {
  return true_volume_cm3(burette, reading_cm3) + film_allowed_cm3(burette, reading_cm3);
}

double column_volume_cm3(const BuretteSpec& burette, double reading_cm3) {
  return burette.below_scale_cm3 + tube_volume_cm3(burette, burette.nominal_cm3) -
         tube_volume_cm3(burette, reading_cm3);
}

double scale_reading_cm3(const BuretteSpec& burette, double column_cm3) {
  const double below_zero_cm3 =
      burette.below_scale_cm3 + tube_volume_cm3(burette, burette.nominal_cm3) - column_cm3;
  // volume = reading + something small and smooth: a fixed number of substitutions converges far below a
  // quantum.
  double reading = below_zero_cm3;
  for (int i = 0; i < 8; ++i) reading += below_zero_cm3 - tube_volume_cm3(burette, reading);
  return reading;
}

double head_mm(const BuretteSpec& burette, double column_cm3) {
  if (column_cm3 <= 0.0) return burette.jet_length_mm;
  const double reading = scale_reading_cm3(burette, column_cm3);
  const double above_tap_mm =
      reading <= burette.nominal_cm3
          ? burette.below_scale_mm + (burette.nominal_cm3 - reading) * mm_per_cm3(burette)
          : burette.below_scale_mm * std::min(1.0, column_cm3 / burette.below_scale_cm3);
  return burette.jet_length_mm + above_tap_mm;
}

double column_capacity_cm3(const BuretteSpec& burette) {
  return column_volume_cm3(burette, 0.0) + burette.above_zero_cm3;
}

}  // namespace halfdrop

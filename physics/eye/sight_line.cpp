#include "physics/eye/sight_line.h"

namespace halfdrop {

double eye_above_mark_mm(const SightGeometry& sight, double eye_mm, double mark_cm3) {
  return eye_mm + sight.mm_per_cm3 * mark_cm3;
}

double apparent_reading_cm3(const SightGeometry& sight, double eye_mm, double true_cm3) {
  const double shift_mm =
      eye_above_mark_mm(sight, eye_mm, true_cm3) * sight.depth_mm / (sight.eye_distance_mm + sight.depth_mm);
  return true_cm3 - shift_mm / sight.mm_per_cm3;
}

}  // namespace halfdrop

#include "physics/eye/sight_line.h"

#include <cassert>
#include <cmath>

#include "physics/eye/sight_path.h"

namespace halfdrop {

namespace {

constexpr double kClose_mm = 1e-11;
constexpr int kMostTries = 60;

/// Where `left` falls through nought between two heights (regula falsi, Illinois); none where it cannot be
/// asked.
template <typename Left>
std::optional<double> height_where(double low_mm, double high_mm, const Left& left) {
  auto at_low = left(low_mm), at_high = left(high_mm);
  if (!at_low || !at_high) return std::nullopt;
  int side = 0;
  for (int i = 0; i < kMostTries && high_mm - low_mm > kClose_mm; ++i) {
    const double next_mm = (low_mm * *at_high - high_mm * *at_low) / (*at_high - *at_low);
    const auto at_next = left(next_mm);
    if (!at_next) return std::nullopt;
    if (std::fabs(*at_next) < kClose_mm) return next_mm;
    if (*at_next > 0.0) {
      low_mm = next_mm;
      at_low = at_next;
      if (side > 0) *at_high *= 0.5;
      side = 1;
    } else {
      high_mm = next_mm;
      at_high = at_next;
      if (side < 0) *at_low *= 0.5;
      side = -1;
    }
  }
  return 0.5 * (low_mm + high_mm);
}

/// No refraction displaces a height by more than this.
double reach_mm(const SightGeometry& sight) { return 4.0 * sight.outer_mm + sight.meniscus.rise_mm(); }

}  // namespace

std::optional<double> lower_edge_mm(const SightGeometry& sight, const EyeLook& look, double x_mm) {
  return height_where(look.bottom_mm - reach_mm(sight), look.bottom_mm + reach_mm(sight),
                      [&](double y_mm) -> std::optional<double> {
                        const SightRay from_eye = sight_ray(sight, look.eye_mm, x_mm, y_mm);
                        const auto ray = ray_in_bore(sight, from_eye, sight.liquid_index);
                        if (!ray) return std::nullopt;
                        return least_depth_mm(sight, look, *ray);
                      });
}

std::optional<double> upper_edge_mm(const SightGeometry& sight, const EyeLook& look, double x_mm) {
  const double contact_mm = look.bottom_mm + look.climb * sight.meniscus.rise_mm();
  return height_where(contact_mm - reach_mm(sight), contact_mm + reach_mm(sight),
                      [&](double y_mm) -> std::optional<double> {
                        const SightRay from_eye = sight_ray(sight, look.eye_mm, x_mm, y_mm);
                        const auto ray = ray_in_bore(sight, from_eye, sight.liquid_index);
                        if (!ray) return std::nullopt;
                        return contact_mm - ray->from.y;
                      });
}

double apparent_reading_cm3(const SightGeometry& sight, double eye_mm, double true_cm3) {
  const auto edge_mm = lower_edge_mm(sight, look_at(sight, eye_mm, true_cm3), 0.0);
  assert(edge_mm);  // the middle of the tube is filled
  return -*edge_mm / sight.mm_per_cm3;
}

double apparent_edge_cm3(const SightGeometry& sight, double eye_mm, double true_cm3) {
  const auto edge_mm = upper_edge_mm(sight, look_at(sight, eye_mm, true_cm3), 0.0);
  assert(edge_mm);
  return -*edge_mm / sight.mm_per_cm3;
}

Vector seen_in_air(const SightGeometry& sight, double eye_mm, const Vector& point) {
  const double nearer = sight.eye_distance_mm / (sight.eye_distance_mm + sight.outer_mm + point.z);
  return {point.x * nearer, eye_mm + (point.y - eye_mm) * nearer, -sight.outer_mm};
}

double eye_above_mark_mm(const SightGeometry& sight, double eye_mm, double mark_cm3) {
  return eye_mm + sight.mm_per_cm3 * mark_cm3;
}

}  // namespace halfdrop

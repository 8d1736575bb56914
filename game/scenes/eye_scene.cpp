#include "game/scenes/eye_scene.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "physics/eye/sight_line.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

constexpr double kNeckTurns_mm = 150.0;  ///< eye off level up to which the gaze follows (about 27 degrees)
constexpr double kDrift_mm = 3.6;        ///< most that the meniscus drifts from the picture's middle
constexpr double kDriftOver_mm = 60.0;   ///< eye off level at which most of the drift is reached
constexpr double kBelowRim_mm = 4.0;     ///< the tube's end stays in the picture
constexpr double kCardBehind_mm = 4.0;   ///< card behind the tube's back
constexpr double kCapillary_mm = 2.73;   ///< sqrt(72.8e-3 / (998 * 9.81)) m
constexpr int kSections = 48;            ///< points from the axis to the wall

/// Climbs the meniscus from its bottom, curvature `apex` per mm, until the wall stands upright or `reach` is
/// passed.
struct Climb {
  std::vector<double> r, z;
};
Climb climb(double apex, double reach_mm) {
  constexpr double kStep_mm = 0.004;
  Climb path{{0.0}, {0.0}};
  double r = 0.0, z = 0.0, slope = 0.0;
  while (slope < kPi / 2 && r < reach_mm) {
    const double round = r < 1e-9 ? apex : std::sin(slope) / r;
    const double bend = 2.0 * apex + z / (kCapillary_mm * kCapillary_mm) - round;
    const double middle = slope + 0.5 * kStep_mm * bend;
    r += kStep_mm * std::cos(middle);
    z += kStep_mm * std::sin(middle);
    slope += kStep_mm * bend;
    path.r.push_back(r);
    path.z.push_back(z);
  }
  return path;
}

/// The climb that stands upright just at the wall.
Climb climb_to_wall(double bore_mm) {
  double flat = 1e-6, sharp = 2.0 / bore_mm;
  for (int i = 0; i < 60; ++i) {
    const double apex = 0.5 * (flat + sharp);
    (climb(apex, bore_mm).r.back() >= bore_mm ? flat : sharp) = apex;
  }
  return climb(sharp, bore_mm);
}

}  // namespace

MeniscusShape meniscus_shape(double bore_mm) {
  const Climb path = climb_to_wall(bore_mm);
  MeniscusShape shape;
  shape.rise_mm = path.z.back();
  std::size_t at = 0;
  for (int i = 0; i <= kSections; ++i) {
    // Points crowd towards the wall, where the surface is steep.
    const double share = std::sin(0.5 * kPi * i / kSections);
    while (at + 1 < path.r.size() && path.r[at] < share * path.r.back()) ++at;
    shape.radius.push_back(path.r[at] / path.r.back());
    shape.height.push_back(path.z[at] / path.z.back());
  }
  return shape;
}

EyeScene::EyeScene(const View& view, const BenchSpec& spec)
    : eye_mm_(view.hands.eye_mm),
      distance_mm_(spec.eye_distance_mm),
      outer_mm_(spec.burette.outer_half_width_mm),
      // ISO 385 fixes length and content of the scale, and so the bore.
      bore_mm_(std::sqrt(spec.burette.nominal_cm3 * 1000.0 / (kPi * spec.burette.scale_length_mm))),
      mm_per_cm3_(spec.burette.scale_length_mm / spec.burette.nominal_cm3),
      rim_mm_(spec.burette.above_zero_cm3 * mm_per_cm3_),
      foot_mm_(-spec.burette.scale_length_mm - spec.burette.below_scale_mm),
      nominal_cm3_(spec.burette.nominal_cm3),
      meniscus_mm_(std::min(rim_mm_, -mm_per_cm3_ * view.meniscus_cm3)),
      // Liquid cannot climb where there is no wall: at the rim the surface is flat.
      rise_mm_(std::min(spec.burette.meniscus_height_mm, rim_mm_ - meniscus_mm_)),
      card_mm_(view.hands.card_mm),
      has_liquid_(!view.column_empty) {}

PointOnScale EyeScene::seen(double x_mm, double height_mm, double depth_mm) const {
  const SightGeometry sight{distance_mm_, depth_mm, mm_per_cm3_};
  return {x_mm * distance_mm_ / (distance_mm_ + depth_mm),
          -mm_per_cm3_ * apparent_reading_cm3(sight, eye_mm_, -height_mm / mm_per_cm3_)};
}

std::vector<PointOnScale> EyeScene::ring(double radius_mm, double height_mm, double from_degrees,
                                         double to_degrees) const {
  const int pieces = std::max(2, static_cast<int>(std::ceil(std::abs(to_degrees - from_degrees) / 6.0)));
  std::vector<PointOnScale> points;
  for (int i = 0; i <= pieces; ++i) {
    const double angle = (from_degrees + (to_degrees - from_degrees) * i / pieces) * kPi / 180.0;
    points.push_back(seen(radius_mm * std::sin(angle), height_mm, outer_mm_ - radius_mm * std::cos(angle)));
  }
  return points;
}

std::vector<PointOnScale> EyeScene::mark_ring(const EyeMark& mark, double from_degrees,
                                              double to_degrees) const {
  return ring(outer_mm_, -mm_per_cm3_ * 0.1 * mark.tenths, from_degrees, to_degrees);
}

std::vector<EyeMark> EyeScene::marks_between(double low_mm, double high_mm) const {
  const int last = static_cast<int>(std::lround(nominal_cm3_ * 10.0));
  const int from = std::max(0, static_cast<int>(std::ceil(-high_mm / mm_per_cm3_ * 10.0)));
  const int to = std::min(last, static_cast<int>(std::floor(-low_mm / mm_per_cm3_ * 10.0)));
  std::vector<EyeMark> marks;
  for (int tenths = from; tenths <= to; ++tenths) {
    const auto length = tenths % 10 == 0  ? EyeMark::Length::longest
                        : tenths % 5 == 0 ? EyeMark::Length::middle
                                          : EyeMark::Length::shortest;
    marks.push_back({tenths, length});
  }
  return marks;
}

std::vector<PointOnScale> EyeScene::meniscus() const {
  static std::map<double, MeniscusShape> shapes;  // a few milliseconds each, and drawn every frame
  if (!shapes.contains(bore_mm_)) shapes.emplace(bore_mm_, meniscus_shape(bore_mm_));
  const MeniscusShape& shape = shapes.at(bore_mm_);
  std::vector<PointOnScale> points;
  const std::size_t n = shape.radius.size();
  for (std::size_t i = n; i-- > 1;)
    points.push_back(seen(-shape.radius[i] * bore_mm_, meniscus_mm_ + shape.height[i] * rise_mm_, outer_mm_));
  for (std::size_t i = 0; i < n; ++i)
    points.push_back(seen(shape.radius[i] * bore_mm_, meniscus_mm_ + shape.height[i] * rise_mm_, outer_mm_));
  return points;
}

double EyeScene::gaze_mm() const {
  if (!has_liquid_) {
    // Level, or at the nearest of the tube's ends.
    const double target_mm = seen(0.0, std::clamp(eye_mm_, foot_mm_, rim_mm_ - kBelowRim_mm), outer_mm_).y_mm;
    return eye_mm_ + std::clamp(target_mm - eye_mm_, -kNeckTurns_mm, kNeckTurns_mm);
  }
  const double above_mm = eye_mm_ - seen(0.0, meniscus_mm_, outer_mm_).y_mm;
  return eye_mm_ - std::clamp(above_mm, -kNeckTurns_mm, kNeckTurns_mm) +
         kDrift_mm * std::tanh(above_mm / kDriftOver_mm);
}

double EyeScene::card_edge_mm() const { return seen(0.0, card_mm_, 2.0 * outer_mm_ + kCardBehind_mm).y_mm; }

double EyeScene::look_down() const { return (eye_mm_ - meniscus_mm_) / (distance_mm_ + outer_mm_); }

double read_off_cm3(const EyeScene& scene, double y_mm) {
  const auto front = [&](int tenths) { return scene.mark_ring({tenths, {}}, -1.0, 1.0)[1].y_mm; };
  // The scale is even: two graduations fix every other, above zero and below the last mark too.
  const double top = front(0), pitch = (front(0) - front(10)) / 10.0;
  const int above = static_cast<int>(std::floor((top - y_mm) / pitch));
  const double upper = front(above), lower = front(above + 1);
  return 0.1 * (above + (upper - y_mm) / (upper - lower));
}

}  // namespace halfdrop

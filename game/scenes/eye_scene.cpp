#include "game/scenes/eye_scene.h"

#include <algorithm>
#include <cmath>

#include "physics/eye/sight_line.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

constexpr double kNeckTurns_mm = 150.0;  ///< eye off level up to which the gaze follows (about 27 degrees)
constexpr double kDrift_mm = 3.6;        ///< most that the meniscus drifts from the picture's middle
constexpr double kDriftOver_mm = 60.0;   ///< eye off level at which most of the drift is reached
constexpr double kBelowRim_mm = 4.0;     ///< the tube's end stays in the picture

}  // namespace

EyeScene::EyeScene(const View& view, const BenchSpec& spec)
    : sight_(sight_geometry(spec)),
      look_(view.column_empty ? look_at_empty(eye_above_zero_mm(view.hands))
                              : look_at(sight_, eye_above_zero_mm(view.hands), view.meniscus_cm3)),
      foot_mm_(-spec.burette.scale_length_mm - spec.burette.below_scale_mm),
      nominal_cm3_(spec.burette.nominal_cm3),
      card_mm_(view.hands.card_mm),
      has_liquid_(!view.column_empty) {}

PointOnScale EyeScene::seen(double x_mm, double height_mm, double depth_mm) const {
  const Vector at = seen_in_air(sight_, look_.eye_mm, {x_mm, height_mm, depth_mm - sight_.outer_mm});
  return {at.x, at.y};
}

std::vector<PointOnScale> EyeScene::ring(double radius_mm, double height_mm, double from_degrees,
                                         double to_degrees) const {
  const int pieces = std::max(2, static_cast<int>(std::ceil(std::abs(to_degrees - from_degrees) / 6.0)));
  std::vector<PointOnScale> points;
  for (int i = 0; i <= pieces; ++i) {
    const double angle = (from_degrees + (to_degrees - from_degrees) * i / pieces) * kPi / 180.0;
    points.push_back(
        seen(radius_mm * std::sin(angle), height_mm, sight_.outer_mm - radius_mm * std::cos(angle)));
  }
  return points;
}

std::vector<PointOnScale> EyeScene::mark_ring(const EyeMark& mark, double from_degrees,
                                              double to_degrees) const {
  return ring(sight_.outer_mm, -sight_.mm_per_cm3 * 0.1 * mark.tenths, from_degrees, to_degrees);
}

std::vector<EyeMark> EyeScene::marks_between(double low_mm, double high_mm) const {
  const int last = static_cast<int>(std::lround(nominal_cm3_ * 10.0));
  const int from = std::max(0, static_cast<int>(std::ceil(-high_mm / sight_.mm_per_cm3 * 10.0)));
  const int to = std::min(last, static_cast<int>(std::floor(-low_mm / sight_.mm_per_cm3 * 10.0)));
  std::vector<EyeMark> marks;
  for (int tenths = from; tenths <= to; ++tenths) {
    const auto length = tenths % 10 == 0  ? EyeMark::Length::longest
                        : tenths % 5 == 0 ? EyeMark::Length::middle
                                          : EyeMark::Length::shortest;
    marks.push_back({tenths, length});
  }
  return marks;
}

double EyeScene::lower_edge_mm(double x_mm) const {
  return halfdrop::lower_edge_mm(sight_, look_, x_mm).value_or(look_.bottom_mm);
}

double EyeScene::upper_edge_mm(double x_mm) const {
  return halfdrop::upper_edge_mm(sight_, look_, x_mm).value_or(look_.bottom_mm);
}

SightEnd EyeScene::look_through(double x_mm, double y_mm) const { return follow(sight_, look_, x_mm, y_mm); }

double EyeScene::outline_mm() const {
  const double d = sight_.eye_distance_mm, r = sight_.outer_mm;
  return r * d / std::sqrt(d * (d + 2.0 * r));
}

double EyeScene::gaze_mm() const {
  const double eye_mm = look_.eye_mm;
  if (!has_liquid_) {
    // Level, or at the nearest of the tube's ends.
    const double target_mm =
        seen(0.0, std::clamp(eye_mm, foot_mm_, rim_mm() - kBelowRim_mm), sight_.outer_mm).y_mm;
    return eye_mm + std::clamp(target_mm - eye_mm, -kNeckTurns_mm, kNeckTurns_mm);
  }
  const double above_mm = eye_mm - lower_edge_mm(0.0);
  return eye_mm - std::clamp(above_mm, -kNeckTurns_mm, kNeckTurns_mm) +
         kDrift_mm * std::tanh(above_mm / kDriftOver_mm);
}

double EyeScene::look_down() const {
  return (look_.eye_mm - look_.bottom_mm) / (sight_.eye_distance_mm + sight_.outer_mm);
}

double read_off_cm3(const EyeScene& scene, double y_mm) {
  const auto front = [&](int tenths) { return scene.mark_ring({tenths, {}}, -1.0, 1.0)[1].y_mm; };
  // The scale is even: two graduations fix every other, above zero and below the last mark too.
  const double top = front(0), pitch = (front(0) - front(10)) / 10.0;
  const int above = static_cast<int>(std::floor((top - y_mm) / pitch));
  const double upper = front(above), lower = front(above + 1);
  return 0.1 * (above + (upper - y_mm) / (upper - lower));
}

}  // namespace halfdrop

#pragma once
// What the eye sees at the meniscus, as points on the plane of the printed scale's front: a true projection
// through the eye, with the sight line of physics/eye/sight_line.h (straight: refraction is left out). Pure;
// no window.

#include <vector>

#include "game/session/view.h"
#include "physics/bench/bench_spec.h"

namespace halfdrop {

/// On the plane of the scale: mm to the right of the tube's axis, mm above the zero mark.
struct PointOnScale {
  double x_mm = 0.0, y_mm = 0.0;
};

/// A graduation as the trade cuts it: longest each 1 cm3 (numbered), middle each 0.5, short each 0.1.
struct EyeMark {
  enum class Length { longest, middle, shortest };
  int tenths = 0;  ///< of a cm3 below zero
  Length length = Length::shortest;
};

class EyeScene {
 public:
  EyeScene(const View& view, const BenchSpec& spec);

  /// A point of the bench (height above the zero mark, depth behind the scale's front) as the eye sees it.
  [[nodiscard]] PointOnScale seen(double x_mm, double height_mm, double depth_mm) const;
  /// Part of a ring round the tube at a height, by angle from the front (negative to the left).
  [[nodiscard]] std::vector<PointOnScale> ring(double radius_mm, double height_mm, double from_degrees,
                                               double to_degrees) const;
  /// The same at a graduation, on the printed scale.
  [[nodiscard]] std::vector<PointOnScale> mark_ring(const EyeMark& mark, double from_degrees,
                                                    double to_degrees) const;
  /// Graduations whose front lies between two heights of the picture, from the top.
  [[nodiscard]] std::vector<EyeMark> marks_between(double low_mm, double high_mm) const;
  /// Section of the meniscus through the tube's axis, from its left edge through its bottom to its right
  /// edge.
  [[nodiscard]] std::vector<PointOnScale> meniscus() const;
  /// Height of the middle of the picture: the gaze follows the meniscus as far as a neck turns, and the
  /// meniscus drifts from the middle the more the eye is off its level.
  [[nodiscard]] double gaze_mm() const;
  /// Upper edge of the card's dark half.
  [[nodiscard]] double card_edge_mm() const;
  /// Slope of the sight line at the meniscus: positive when one looks down on it.
  [[nodiscard]] double look_down() const;

  [[nodiscard]] bool has_liquid() const { return has_liquid_; }
  [[nodiscard]] double outer_mm() const { return outer_mm_; }
  [[nodiscard]] double bore_mm() const { return bore_mm_; }  ///< radius
  [[nodiscard]] double rim_mm() const { return rim_mm_; }    ///< top of the tube above zero
  [[nodiscard]] double foot_mm() const { return foot_mm_; }  ///< where the tube narrows to the tap
  [[nodiscard]] double eye_mm() const { return eye_mm_; }
  [[nodiscard]] double meniscus_mm() const { return meniscus_mm_; }
  [[nodiscard]] double meniscus_rise_mm() const { return rise_mm_; }

 private:
  double eye_mm_, distance_mm_, outer_mm_, bore_mm_, mm_per_cm3_, rim_mm_, foot_mm_, nominal_cm3_;
  double meniscus_mm_, rise_mm_, card_mm_;
  bool has_liquid_;
};

/// Where on the scale a height of the picture reads, cm3: between the fronts of the neighbouring graduations.
[[nodiscard]] double read_off_cm3(const EyeScene& scene, double y_mm);

/// Shape of the meniscus in a round tube, from axis to wall: radius and height as shares of bore and rise.
/// Young-Laplace with contact angle 0, water at 20 C (capillary length 2.73 mm: 72.8 mN/m, 998 kg/m3).
struct MeniscusShape {
  std::vector<double> radius, height;
  double rise_mm = 0.0;  ///< contact line above the lowest point
};
[[nodiscard]] MeniscusShape meniscus_shape(double bore_mm);

}  // namespace halfdrop

#pragma once
// What the eye sees at the meniscus, as points on the plane that touches the front of the printed scale: the
// sight lines of physics/eye, by which readings are computed too. Pure; no window.

#include <vector>

#include "game/session/view.h"
#include "physics/bench/bench_spec.h"
#include "physics/eye/sight_path.h"

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

  /// A point in plain air (height above the zero mark, depth behind the scale's front) as the eye sees it.
  [[nodiscard]] PointOnScale seen(double x_mm, double height_mm, double depth_mm) const;
  /// Part of a ring round the tube at a height, in plain air, by angle from the front (negative to the left).
  [[nodiscard]] std::vector<PointOnScale> ring(double radius_mm, double height_mm, double from_degrees,
                                               double to_degrees) const;
  /// The front of a graduation, on the printed scale.
  [[nodiscard]] std::vector<PointOnScale> mark_ring(const EyeMark& mark, double from_degrees,
                                                    double to_degrees) const;
  /// Graduations whose front lies between two heights of the picture, from the top.
  [[nodiscard]] std::vector<EyeMark> marks_between(double low_mm, double high_mm) const;
  /// Lower and upper edge of the meniscus' dark curve, at a place across the tube.
  [[nodiscard]] double lower_edge_mm(double x_mm) const;
  [[nodiscard]] double upper_edge_mm(double x_mm) const;
  /// What a point of the tube's picture shows.
  [[nodiscard]] SightEnd look_through(double x_mm, double y_mm) const;
  /// Height of the middle of the picture: the gaze follows the meniscus as far as a neck turns, and the
  /// meniscus drifts from the middle the more the eye is off its level.
  [[nodiscard]] double gaze_mm() const;
  /// Slope of the sight line at the meniscus: positive when one looks down on it.
  [[nodiscard]] double look_down() const;

  [[nodiscard]] bool has_liquid() const { return has_liquid_; }
  [[nodiscard]] double outer_mm() const { return sight_.outer_mm; }
  [[nodiscard]] double bore_mm() const { return sight_.bore_mm; }  ///< radius
  [[nodiscard]] double rim_mm() const { return sight_.rim_mm; }    ///< top of the tube above zero
  [[nodiscard]] double foot_mm() const { return foot_mm_; }        ///< where the tube narrows to the tap
  /// Half the width at which the tube shows.
  [[nodiscard]] double outline_mm() const;
  [[nodiscard]] double eye_mm() const { return look_.eye_mm; }
  [[nodiscard]] double card_mm() const { return card_mm_; }  ///< upper edge of the card's dark half
  [[nodiscard]] const EyeLook& look() const { return look_; }
  [[nodiscard]] const SightGeometry& sight() const { return sight_; }

 private:
  const SightGeometry& sight_;
  EyeLook look_;
  double foot_mm_, nominal_cm3_, card_mm_;
  bool has_liquid_;
};

/// Where on the scale a height of the picture reads, cm3: between the fronts of the neighbouring graduations.
[[nodiscard]] double read_off_cm3(const EyeScene& scene, double y_mm);

}  // namespace halfdrop

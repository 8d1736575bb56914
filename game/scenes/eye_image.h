#pragma once
// The tube's picture as a grid of sight lines: what each point of it shows. Pure; no window.

#include <optional>
#include <vector>

#include "game/scenes/eye_scene.h"

namespace halfdrop {

/// The part of the picture to follow sight lines through.
struct EyeWindow {
  double low_mm = 0.0, high_mm = 0.0;
  double row_mm = 0.2;            ///< from one sight line to the next
  double feather_mm = 0.05;       ///< over which one side of an edge passes into the other
  std::size_t half_columns = 26;  ///< sight lines from the middle to the tube's edge

  friend bool operator==(const EyeWindow&, const EyeWindow&) = default;
};

struct EyePoint {
  PointOnScale at;
  SightEnd end;
};

/// Row by row from the lowest, each from left to right. The rows follow the meniscus' edges, so that each
/// lies wholly under, in or over the dark curve.
class EyeImage {
 public:
  EyeImage(const EyeScene& scene, const EyeWindow& window);

  [[nodiscard]] std::size_t columns() const { return columns_; }
  [[nodiscard]] std::size_t rows() const { return points_.size() / columns_; }
  [[nodiscard]] const EyePoint& point(std::size_t row, std::size_t column) const {
    return points_[row * columns_ + column];
  }
  /// The lowest row that lies over the dark curve from side to side.
  [[nodiscard]] std::size_t first_row_over() const { return first_row_over_; }
  [[nodiscard]] const std::vector<EyePoint>& points() const { return points_; }

  /// A ring of the scale on the tube's back, from one angle to another (180 degrees is the middle of the
  /// back), where it shows through liquid or air; in pieces.
  [[nodiscard]] std::vector<std::vector<PointOnScale>> back_of_ring(double height_mm, double from_degrees,
                                                                    double to_degrees) const;

 private:
  [[nodiscard]] std::optional<double> seen_at(SightMeets through, double height_mm, std::size_t column,
                                              double* side_mm) const;

  std::size_t columns_ = 0, first_row_over_ = 0;
  double outer_mm_ = 0.0;
  std::vector<EyePoint> points_;
};

}  // namespace halfdrop

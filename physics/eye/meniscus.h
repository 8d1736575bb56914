#pragma once
// The liquid's surface in the tube, ready for sight lines to meet it.

#include <array>
#include <vector>

#include "physics/burette/meniscus_shape.h"

namespace halfdrop {

class Meniscus {
 public:
  Meniscus() = default;
  /// An outline from the axis to the wall (meniscus_shape.h): convex, at least two points.
  explicit Meniscus(const std::vector<MeniscusPoint>& outline);

  /// Above the lowest point, at a distance from the axis from 0 to the bore.
  [[nodiscard]] double height_mm(double radius_mm) const { return at(heights_, radius_mm); }
  /// Sine of the surface's slope there.
  [[nodiscard]] double sine(double radius_mm) const { return at(sines_, radius_mm); }
  /// Contact line above the lowest point.
  [[nodiscard]] double rise_mm() const { return heights_.front(); }

  friend bool operator==(const Meniscus&, const Meniscus&) = default;

 private:
  static constexpr std::size_t kPieces = 256;
  /// Even in the root of the distance from the wall, where the surface is steep.
  using Table = std::array<double, kPieces + 1>;
  [[nodiscard]] double at(const Table& table, double radius_mm) const;

  double bore_mm_ = 1.0;
  Table heights_{}, sines_{};
};

}  // namespace halfdrop

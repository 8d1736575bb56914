#pragma once
// The flask's liquid cut into cells for flow and transport: columns at fixed shares of the width, rows of
// equal height, so that the grid fits the liquid however full the flask is. Each cell is as deep as the
// flask's chord there, so that all cells together hold just what the flask holds.

#include <cstddef>
#include <vector>

#include "physics/bench/bench_spec.h"

namespace halfdrop {

/// The place of a row's first cell, of a cell among all: row by row from the bottom, columns from the left.
struct GridSize {
  std::size_t columns = 96, rows = 72;

  [[nodiscard]] std::size_t cells() const { return columns * rows; }
  friend bool operator==(const GridSize&, const GridSize&) = default;
};

/// Shares of a round vessel's cross-section between columns of equal width: they add up to 1. (u sqrt(1 -
/// u^2) + arcsin u) / pi, u from -1 to 1.
[[nodiscard]] std::vector<double> column_shares(std::size_t columns);
/// Half the chord over the radius at a share u (-1 to 1) of the radius.
[[nodiscard]] double half_chord(double u);

/// Liquid of one volume in one flask. Precondition: the volume is above 0.
class LiquidShape {
 public:
  LiquidShape(const FlaskSpec& flask, double volume_cm3);

  [[nodiscard]] double volume_cm3() const { return volume_cm3_; }
  [[nodiscard]] double depth_cm() const { return depth_cm_; }
  [[nodiscard]] double row_height_cm() const { return depth_cm_ / static_cast<double>(row_cm3_.size()); }
  /// Of the cylinder of the same depth and volume.
  [[nodiscard]] double mean_radius_cm() const { return mean_radius_cm_; }
  /// At a height above the flask's foot.
  [[nodiscard]] double radius_cm(double height_cm) const;
  [[nodiscard]] const std::vector<double>& row_cm3() const { return row_cm3_; }

 private:
  FlaskSpec flask_;
  double volume_cm3_, depth_cm_, mean_radius_cm_;
  std::vector<double> row_cm3_;
};

}  // namespace halfdrop

#include "game/scenes/eye_image.h"

#include <algorithm>
#include <cmath>

#include "physics/units.h"

namespace halfdrop {

namespace {

/// A row lies under, within or over the dark curve: level under and over it, cut off at the curve's edge, and
/// within it at a share of the way from edge to edge.
struct Row {
  enum class Part { under, within, over } part;
  double share;     ///< within
  double level_mm;  ///< under and over
};

/// The dark curve's edges in one column.
struct Edges {
  double lower_mm, upper_mm;

  [[nodiscard]] double at(const Row& row) const {
    if (row.part == Row::Part::under) return std::min(row.level_mm, lower_mm);
    if (row.part == Row::Part::over) return std::max(row.level_mm, upper_mm);
    return lower_mm + row.share * (upper_mm - lower_mm);
  }
  /// A sight line at an edge is taken a little within its side.
  [[nodiscard]] double inside(const Row& row) const {
    constexpr double kInside_mm = 1e-5;
    if (row.part == Row::Part::under) return std::min(row.level_mm, lower_mm - kInside_mm);
    if (row.part == Row::Part::over) return std::max(row.level_mm, upper_mm + kInside_mm);
    return std::clamp(at(row), lower_mm + kInside_mm, std::max(lower_mm + kInside_mm, upper_mm - kInside_mm));
  }
  /// Where it is drawn: the two sides of an edge a feather's breadth apart.
  [[nodiscard]] double drawn(const Row& row, double feather_mm) const {
    const double half = 0.5 * feather_mm;
    if (row.part == Row::Part::under) return std::min(row.level_mm, lower_mm - half);
    if (row.part == Row::Part::over) return std::max(row.level_mm, upper_mm + half);
    return std::clamp(at(row), lower_mm + half, std::max(lower_mm + half, upper_mm - half));
  }
};

Edges edges(const EyeScene& scene, const EyeWindow& window, double x_mm) {
  if (!scene.has_liquid()) return {window.low_mm, window.low_mm};
  const auto in_window = [&](double y_mm) { return std::clamp(y_mm, window.low_mm, window.high_mm); };
  const double lower_mm = in_window(scene.lower_edge_mm(x_mm));
  return {lower_mm, std::max(lower_mm, in_window(scene.upper_edge_mm(x_mm)))};
}

void add_level(std::vector<Row>& rows, Row::Part part, double from_mm, double to_mm, double row_mm) {
  if (to_mm <= from_mm) return;
  const int pieces = std::max(1, static_cast<int>(std::ceil((to_mm - from_mm) / row_mm)));
  for (int i = 0; i <= pieces; ++i) rows.push_back({part, 0.0, from_mm + (to_mm - from_mm) * i / pieces});
}

std::vector<Row> rows_of(const std::vector<Edges>& all, const EyeWindow& window) {
  const auto [low, high] = std::minmax_element(
      all.begin(), all.end(), [](const Edges& a, const Edges& b) { return a.lower_mm < b.lower_mm; });
  double lowest_upper_mm = window.high_mm, thickest_mm = 0.0;
  for (const Edges& at : all) {
    lowest_upper_mm = std::min(lowest_upper_mm, at.upper_mm);
    thickest_mm = std::max(thickest_mm, at.upper_mm - at.lower_mm);
  }
  std::vector<Row> rows;
  if (low->lower_mm > window.low_mm || high->lower_mm > window.low_mm)
    add_level(rows, Row::Part::under, window.low_mm, high->lower_mm, window.row_mm);
  const int within = thickest_mm > 0.0 ? static_cast<int>(std::ceil(2.0 * thickest_mm / window.row_mm)) : -1;
  for (int i = 0; i <= within; ++i) rows.push_back({Row::Part::within, static_cast<double>(i) / within, 0.0});
  add_level(rows, Row::Part::over, lowest_upper_mm, window.high_mm, window.row_mm);
  return rows;
}

SightEnd other_side(SightEnd end) {
  end.out.from.x = -end.out.from.x;
  end.out.towards.x = -end.out.towards.x;
  return end;
}

}  // namespace

EyeImage::EyeImage(const EyeScene& scene, const EyeWindow& window)
    : columns_(2 * window.half_columns + 1), outer_mm_(scene.outer_mm()) {
  const std::size_t half = window.half_columns;
  std::vector<double> across;
  std::vector<Edges> all;
  for (std::size_t i = 0; i <= half; ++i) {
    // Columns crowd towards the tube's edge, where it bends light most.
    const double share = std::sin(0.5 * kPi * static_cast<double>(i) / static_cast<double>(half));
    across.push_back(scene.outline_mm() * std::min(share, 1.0 - 1e-7));
    all.push_back(edges(scene, window, across.back()));
  }
  const std::vector<Row> rows = rows_of(all, window);
  points_.resize(rows.size() * columns_);
  while (first_row_over_ < rows.size() && rows[first_row_over_].part != Row::Part::over) ++first_row_over_;
  for (std::size_t row = 0; row < rows.size(); ++row) {
    for (std::size_t i = 0; i <= half; ++i) {
      const SightEnd end = scene.look_through(across[i], all[i].inside(rows[row]));
      const double y_mm = all[i].drawn(rows[row], window.feather_mm);
      points_[row * columns_ + half + i] = {{across[i], y_mm}, end};
      points_[row * columns_ + half - i] = {{-across[i], y_mm}, other_side(end)};
    }
  }
}

std::optional<double> EyeImage::seen_at(SightMeets through, double height_mm, std::size_t column,
                                        double* side_mm) const {
  const auto sees = [&](const SightEnd& end) {
    return end.meets == through && !end.turned && !end.lost && end.out.from.z > 0.0;
  };
  for (std::size_t row = 0; row + 1 < rows(); ++row) {
    const EyePoint& a = point(row, column);
    const EyePoint& b = point(row + 1, column);
    if (!sees(a.end) || !sees(b.end)) continue;
    const double from = a.end.out.from.y, to = b.end.out.from.y;
    if (from > height_mm || to < height_mm || to <= from) continue;
    const double share = (height_mm - from) / (to - from);
    *side_mm = a.end.out.from.x + share * (b.end.out.from.x - a.end.out.from.x);
    return a.at.y_mm + share * (b.at.y_mm - a.at.y_mm);
  }
  return std::nullopt;
}

std::vector<std::vector<PointOnScale>> EyeImage::back_of_ring(double height_mm, double from_degrees,
                                                              double to_degrees) const {
  std::vector<std::vector<PointOnScale>> pieces;
  for (const SightMeets through : {SightMeets::liquid, SightMeets::air}) {
    std::vector<PointOnScale> piece;
    const auto cut = [&] {
      if (piece.size() > 1) pieces.push_back(piece);
      piece.clear();
    };
    for (std::size_t column = 0; column < columns_; ++column) {
      double side_mm = 0.0;
      const auto y_mm = seen_at(through, height_mm, column, &side_mm);
      // Left of the tube is -90 degrees or 270, right is 90, the middle of the back 180.
      const double degrees = 180.0 - std::asin(std::clamp(side_mm / outer_mm_, -1.0, 1.0)) * 180.0 / kPi;
      if (y_mm && degrees >= from_degrees && degrees <= to_degrees)
        piece.push_back({point(0, column).at.x_mm, *y_mm});
      else
        cut();
    }
    cut();
  }
  return pieces;
}

}  // namespace halfdrop

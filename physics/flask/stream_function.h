#pragma once
// The stream function of a flow through the depth of a vessel, from its vorticity: -div((1/d) grad psi) =
// omega, d the depth (cm) at each place across, psi = 0 on all four sides. Solved directly: sine waves in
// height, elimination across. Exact to rounding in single precision, so that nothing has to be kept from step
// to step.

#include <cstddef>
#include <span>
#include <vector>

namespace halfdrop {

/// A box of fluid, width by height, with nodes at its corners and between its cells. Node (i, j) is at
/// j * stride + i, i from the left, j from the bottom.
struct FlowBox {
  std::size_t columns = 96, rows = 72;  ///< cells; rows even
  double width_cm = 1.0, height_cm = 1.0;
  /// Depth across, cm, above 0: at the nodes (columns + 1) and in the middle between them (columns).
  std::vector<float> depth_at_node, depth_between;

  [[nodiscard]] std::size_t stride() const { return (columns + 8) / 8 * 8; }
  [[nodiscard]] std::size_t nodes() const { return stride() * (rows + 1); }
  [[nodiscard]] double dx_cm() const { return width_cm / static_cast<double>(columns); }
  [[nodiscard]] double dz_cm() const { return height_cm / static_cast<double>(rows); }
};

/// A box of the same depth everywhere.
[[nodiscard]] FlowBox even_box(std::size_t columns, std::size_t rows, double width_cm, double height_cm);

class StreamFunction {
 public:
  /// Precondition: rows is even and at least 4.
  explicit StreamFunction(std::size_t rows);

  /// psi (cm3/s) at the nodes from omega (1/s) there; only inner nodes are looked at. Spans of box.nodes().
  void solve(const FlowBox& box, std::span<const float> omega, std::span<float> psi) const;

 private:
  /// Adds up sine waves over the rows: out[k] = scale * sum over j of sin(pi k j / rows) in[j], for each
  /// column.
  void transform(std::size_t stride, std::span<const float> in, std::span<float> out, float scale) const;
  /// Those of kDeep waves from one on, every other.
  void add_up(std::size_t stride, std::size_t first, const float* rows, std::span<float> out) const;
  /// Solves each wave across the box, in place.
  void eliminate(const FlowBox& box, std::span<float> waves) const;

  std::size_t rows_;
  std::vector<float> sine_;     ///< sin(pi k j / rows), [k - 1][j - 1], j up to rows / 2
  std::vector<double> square_;  ///< (2 sin(pi k / 2 rows))^2, [k]
};

}  // namespace halfdrop

#include "physics/flask/grid.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "physics/elementary.h"
#include "physics/flask/contents.h"

namespace halfdrop {

namespace {

/// Volume from the foot up to a height.
double below_cm3(const FlaskSpec& flask, double height_cm) {
  const double cone_cm = flask.height_cm - flask.neck_length_cm;
  const double base = flask.base_radius_cm;
  const double in_cone_cm = std::min(height_cm, cone_cm);
  const double radius = base - (base - flask.neck_radius_cm) / cone_cm * in_cone_cm;
  const double in_neck_cm = std::max(height_cm - cone_cm, 0.0);
  return kPi / 3.0 * in_cone_cm * (base * base + base * radius + radius * radius) +
         kPi * flask.neck_radius_cm * flask.neck_radius_cm * in_neck_cm;
}

/// Share of a disc beyond u >= 0 (of the radius).
double disc_beyond(double u) { return (elementary::acos(u) - u * half_chord(u)) / kPi; }

}  // namespace

double half_chord(double u) { return std::sqrt(std::max(1.0 - u * u, 0.0)); }

std::vector<double> column_shares(std::size_t columns) {
  std::vector<double> shares(columns);
  const auto edge = [&](std::size_t i) {
    return 2.0 * static_cast<double>(i) / static_cast<double>(columns) - 1.0;
  };
  double sum = 0.0;
  for (std::size_t i = 0; i < columns; ++i) {
    const std::size_t twin = std::max(i, columns - 1 - i);  // on the right, so that both halves are the same
    const double left = edge(twin), right = edge(twin + 1);
    shares[i] = left < 0.0 ? 1.0 - 2.0 * disc_beyond(right) : disc_beyond(left) - disc_beyond(right);
    sum += shares[i];
  }
  for (double& share : shares) share /= sum;
  return shares;
}

LiquidShape::LiquidShape(const FlaskSpec& flask, double volume_cm3)
    : flask_(flask),
      volume_cm3_(volume_cm3),
      depth_cm_(liquid_depth_cm(flask, volume_cm3)),
      mean_radius_cm_(std::sqrt(volume_cm3 / (kPi * depth_cm_))),
      row_cm3_(flask.rows()) {
  assert(volume_cm3 > 0.0);
  const auto rows = static_cast<double>(row_cm3_.size());
  const double whole_cm3 = below_cm3(flask, depth_cm_);
  double below = 0.0;
  for (std::size_t j = 0; j < row_cm3_.size(); ++j) {
    const double upto =
        below_cm3(flask, depth_cm_ * static_cast<double>(j + 1) / rows) * (volume_cm3 / whole_cm3);
    row_cm3_[j] = upto - below;
    below = upto;
  }
}

double LiquidShape::radius_cm(double height_cm) const {
  const double cone_cm = flask_.height_cm - flask_.neck_length_cm;
  const double share = std::clamp(height_cm / cone_cm, 0.0, 1.0);
  return flask_.base_radius_cm - (flask_.base_radius_cm - flask_.neck_radius_cm) * share;
}

}  // namespace halfdrop

#include "physics/flask/landing.h"

#include <algorithm>
#include <cmath>

#include "physics/elementary.h"
#include "physics/flask/stirring.h"

namespace halfdrop {

namespace {

/// What a drop's dive takes up, in its radii (our own estimate: a drop of 0.05 cm3 that falls 10 cm makes a
/// hollow about that large).
constexpr double kHollowHalfWidth = 1.0, kHollowDepth = 2.0;

double radius_of_cm(double volume_cm3) { return elementary::cube_root(3.0 * volume_cm3 / (4.0 * kPi)); }

}  // namespace

Landing::Landing(const GridSize& grid, std::span<const double> volume, FlaskLiquid& flask)
    : grid_(grid), volume_(volume), flask_(flask) {}

std::vector<double> Landing::take(const BenchSpec& spec, const LiquidShape& shape) {
  if (flask_.drops.liquid.volume > 0) lay_drops(spec, shape);
  if (flask_.washings.liquid.volume > 0) lay_washings();
  const double drop_cm3 = spec.indicator_drop_cm3;
  lay_tint(shape, drop_cm3, flask_.tint, Source::indicator, flask_.indicator);
  lay_tint(shape, drop_cm3, flask_.second_tint, Source::second_indicator, flask_.second_indicator);
  flask_.drops = flask_.washings = flask_.tint = flask_.second_tint = Arrival{};
  return std::move(came_);
}

void Landing::Weights::add(std::size_t cell, double more) {
  cells.push_back(cell);
  weight.push_back(more);
  sum += more;
  if (more > weight[heaviest]) heaviest = weight.size() - 1;
}

void Landing::lay(const Weights& weights, Quanta volume, CellField& field) {
  if (field.empty()) field.assign(grid_.cells(), 0.0);
  if (came_.empty()) came_.assign(grid_.cells(), 0.0);
  const double each = static_cast<double>(volume) / weights.sum;
  double left = static_cast<double>(volume);
  const auto give = [&](std::size_t place, double part) {
    field[weights.cells[place]] += part;
    came_[weights.cells[place]] += part;
    left -= part;
  };
  for (std::size_t i = 0; i < weights.cells.size(); ++i) give(i, std::floor(each * weights.weight[i]));
  give(weights.heaviest, left);
}

/// Weights of the cells that a drop dives into: most under its middle, least at the hollow's edge.
Landing::Weights Landing::hollow(const LiquidShape& shape, double x_cm, double radius_cm) const {
  Weights weights;
  const double dz = shape.row_height_cm(), surface_cm = shape.radius_cm(shape.depth_cm());
  const double dx = 2.0 * surface_cm / static_cast<double>(grid_.columns);
  const double half_width = std::max(kHollowHalfWidth * radius_cm, 1.5 * dx);
  const double deep = std::clamp(kHollowDepth * radius_cm, 1.5 * dz, shape.depth_cm());
  const double x = std::clamp(x_cm, half_width - surface_cm, surface_cm - half_width);
  for (std::size_t j = 0; j < grid_.rows; ++j) {
    const double below_cm = shape.depth_cm() - (static_cast<double>(j) + 0.5) * dz;
    if (below_cm > deep) continue;
    for (std::size_t i = 0; i < grid_.columns; ++i) {
      const double off = ((static_cast<double>(i) + 0.5) * dx - surface_cm - x) / half_width;
      const std::size_t cell = j * grid_.columns + i;
      if (off * off < 1.0) weights.add(cell, (1.0 - off * off) * (1.0 - below_cm / deep) * volume_[cell]);
    }
  }
  return weights;
}

void Landing::lay_drops(const BenchSpec& spec, const LiquidShape& shape) {
  const Arrival& drops = flask_.drops;
  const double each_cm3 = std::min(drops.liquid.volume_cm3(), spec.settled.full_drop_cm3);
  const Weights weights = hollow(shape, drops.x_cm, radius_of_cm(each_cm3));
  const Quanta all = drops.liquid.volume;
  const auto meets = static_cast<Quanta>(kMeetsAtOnce * static_cast<double>(all)),
             mixes = static_cast<Quanta>(kMixesAtOnce * static_cast<double>(all));
  lay(weights, all - meets - mixes, flask_.of(Source::fresh));
  lay(weights, meets, flask_.of(Source::meeting));
  lay(weights, mixes, flask_.of(Source::titrant));
  flask_.titrant += drops.liquid;
  if (flask_.flow.at_rest()) flask_.flow.vorticity.assign(flow_box(spec.flask, 1.0).nodes(), 0.0F);
  pushed_.resize(grid_.cells());
  const double push = kGoesOn * drops.momentum_g_cm_s / weights.sum;  // 1 g/cm3
  for (std::size_t i = 0; i < weights.cells.size(); ++i) {
    const std::size_t cell = weights.cells[i];
    pushed_[cell] = push * weights.weight[i] / (volume_[cell] * kVolumeQuantum_cm3);
  }
}

/// Down both walls: into the outermost columns.
void Landing::lay_washings() {
  Weights weights;
  const std::size_t wide = std::max<std::size_t>(grid_.columns / 12, 1);
  for (std::size_t j = 0; j < grid_.rows; ++j) {
    for (std::size_t i = 0; i < wide; ++i) {
      for (const std::size_t column : {i, grid_.columns - 1 - i})
        weights.add(j * grid_.columns + column, volume_[j * grid_.columns + column]);
    }
  }
  lay(weights, flask_.washings.liquid.volume, flask_.of(Source::water));
  flask_.water += flask_.washings.liquid;
}

void Landing::lay_tint(const LiquidShape& shape, double drop_cm3, const Arrival& tint, Source source,
                       Parcel& held) {
  if (tint.liquid.volume <= 0) return;
  lay(hollow(shape, tint.x_cm, radius_of_cm(drop_cm3)), tint.liquid.volume, flask_.of(source));
  held += tint.liquid;
}

}  // namespace halfdrop

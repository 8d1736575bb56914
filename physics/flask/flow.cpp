#include "physics/flask/flow.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "physics/flask/vorticity.h"
#include "physics/flask/wide.h"

namespace halfdrop {

namespace {

/// Laminar flow through a gap is braked by 12 nu / d^2 times its mean speed.
constexpr double kGap = 12.0;

float larger(float a, float b) { return a > b ? a : b; }

/// Solves (1 + number) x - number neighbours = x along one line of a grid, many lines side by side.
struct Line {
  std::size_t count;             ///< unknowns along it
  std::size_t apart;             ///< from one to the next
  double first_wall, last_wall;  ///< 2: a wall half a step off holds; 1: a wall one step off holds; 0: slips
};

HALFDROP_WIDER void relax(const Line& line, double number, std::span<float> values, std::size_t lines) {
  std::vector<float> next(line.count), inverse(line.count);
  double before = 0.0;
  for (std::size_t j = 0; j < line.count; ++j) {
    const double below = j == 0 ? line.first_wall : 1.0, above = j + 1 == line.count ? line.last_wall : 1.0;
    const double pivot = 1.0 + number * (below + above) - (j == 0 ? 0.0 : number * before);
    before = number / pivot;
    next[j] = static_cast<float>(before);
    inverse[j] = static_cast<float>(1.0 / pivot);
  }
  const auto n = static_cast<float>(number);
  for (std::size_t i = 0; i < lines; ++i) values[i] *= inverse[0];
  for (std::size_t j = 1; j < line.count; ++j) {
    float* const row = &values[j * line.apart];
    for (std::size_t i = 0; i < lines; ++i) row[i] = (row[i] + n * (row - line.apart)[i]) * inverse[j];
  }
  for (std::size_t j = line.count - 1; j > 0; --j) {
    float* const row = &values[(j - 1) * line.apart];
    for (std::size_t i = 0; i < lines; ++i) row[i] += next[j - 1] * (row + line.apart)[i];
  }
}

/// What lies beyond the ends of a row: the mirror image of what is next to them, or values that stay.
enum class Ends { mirrored, given };

/// Explicit steps along a row of values. `given`: those before and behind it belong to it as they are.
/// `work`: room for two such rows.
HALFDROP_WIDER void spread_row(float* row, std::size_t count, Ends ends, float number, int parts,
                               float* work) {
  float* from = work + 1;
  float* to = from + count + 2;
  std::copy_n(row, count, from);
  if (ends == Ends::given) {
    from[-1] = to[-1] = row[-1];
    from[count] = to[count] = row[count];
  }
  for (int part = 0; part < parts; ++part) {
    if (ends == Ends::mirrored) {
      from[-1] = -from[0];
      from[count] = -from[count - 1];
    }
    const float* const before = from - 1;
    for (std::size_t i = 0; i < count; ++i)
      to[i] = from[i] + number * (before[i] - 2.0F * from[i] + from[i + 1]);
    std::swap(from, to);
  }
  std::copy_n(from, count, row);
}

}  // namespace

Flow::Flow(FlowBox box, const StreamFunction& solver)
    : box_(std::move(box)),
      solver_(solver),
      stream_(box_.nodes()),
      across_(box_.nodes()),
      up_(box_.nodes()) {}

float Flow::across_cm_s(std::size_t i, std::size_t j) const { return across_[j * box_.stride() + i]; }
float Flow::up_cm_s(std::size_t i, std::size_t j) const { return up_[j * box_.stride() + i]; }

float Flow::fastest_cm_s() const {
  float most = 0.0F;
  for (const float u : across_) most = larger(most, std::fabs(u));
  for (const float w : up_) most = larger(most, std::fabs(w));
  return most;
}

void Flow::find_stream(const FlowState& state) {
  if (state.at_rest()) {
    std::fill(stream_.begin(), stream_.end(), 0.0F);
  } else {
    solver_.solve(box_, state.vorticity, stream_);
  }
  take_speeds();
}

HALFDROP_WIDER void Flow::take_speeds() {
  const std::size_t stride = box_.stride(), n = box_.columns, m = box_.rows;
  const auto dx = static_cast<float>(box_.dx_cm()), dz = static_cast<float>(box_.dz_cm());
  std::vector<float> per_height(n + 1), per_width(n);
  for (std::size_t i = 0; i <= n; ++i) per_height[i] = 1.0F / (box_.depth_at_node[i] * dz);
  for (std::size_t i = 0; i < n; ++i) per_width[i] = 1.0F / (box_.depth_between[i] * dx);
  for (std::size_t j = 0; j < m; ++j) {
    const float* const psi = &stream_[j * stride];
    float* const u = &across_[j * stride];
    for (std::size_t i = 0; i <= n; ++i) u[i] = (psi[i + stride] - psi[i]) * per_height[i];
  }
  for (std::size_t j = 0; j <= m; ++j) {
    const float* const psi = &stream_[j * stride];
    float* const w = &up_[j * stride];
    for (std::size_t i = 0; i < n; ++i) w[i] = (psi[i] - psi[i + 1]) * per_width[i];
  }
}

HALFDROP_WIDER static void add_strain2_of_row(std::size_t columns, std::size_t up, std::size_t down,
                                              std::size_t stride, const float* u, const float* w,
                                              float per_dx, float per_dz, float* cells) {
  const float* const high = u + up;
  const float* const low = u - down;
  const auto turn = [&](std::size_t i, float rises) {
    const float along = (u[i + 1] - u[i]) * per_dx;
    const float sheared = 0.5F * ((high[i] - low[i]) + (high[i + 1] - low[i + 1])) * per_dz + rises * per_dx;
    cells[i] += 4.0F * along * along + sheared * sheared;
  };
  turn(0, w[1] - w[0]);
  for (std::size_t i = 1; i + 1 < columns; ++i)
    turn(i, 0.25F * ((w[i + 1] - w[i - 1]) + (w[i + 1 + stride] - w[i - 1 + stride])));
  turn(columns - 1, w[columns - 1] - w[columns - 2]);
}

void Flow::add_strain2(std::span<float> cells) const {
  const std::size_t stride = box_.stride(), n = box_.columns, m = box_.rows;
  const auto per_dx = static_cast<float>(1.0 / box_.dx_cm()), per_dz = static_cast<float>(1.0 / box_.dz_cm());
  for (std::size_t j = 0; j < m; ++j) {
    const bool inner = j > 0 && j + 1 < m;
    add_strain2_of_row(n, j + 1 < m ? stride : 0, j > 0 ? stride : 0, stride, &across_[j * stride],
                       &up_[j * stride], per_dx, inner ? 0.5F * per_dz : per_dz, &cells[j * n]);
  }
}

HALFDROP_WIDER double Flow::courant_per_s(std::span<const float> stream) const {
  const std::size_t stride = box_.stride(), n = box_.columns, m = box_.rows;
  std::vector<float> most(stride);
  for (std::size_t j = 0; j < m; ++j) {
    const float* const psi = &stream[j * stride];
    for (std::size_t i = 0; i < n; ++i) {
      const float through = larger(std::fabs(psi[i + stride] - psi[i]), std::fabs(psi[i + 1] - psi[i]));
      most[i] = larger(most[i], through);
    }
  }
  float share = 0.0F;
  for (std::size_t i = 0; i < n; ++i) share = larger(share, most[i] / box_.depth_between[i]);
  return static_cast<double>(share) / (box_.dx_cm() * box_.dz_cm());
}

void Flow::step(const FlowStep& step, FlowState& state) {
  if (state.at_rest()) state.vorticity.assign(box_.nodes(), 0.0F);
  const double per_dx2 = 1.0 / (box_.dx_cm() * box_.dx_cm()), per_dz2 = 1.0 / (box_.dz_cm() * box_.dz_cm());
  const double spread = step.viscosity_cm2_s * step.duration_s;
  push(step);
  hold_back_across(step, static_cast<float>(spread));
  spread_across(static_cast<float>(spread * per_dx2));
  spread_up(step, spread * per_dz2);
  curl(step, state.vorticity);
  carry(step, state.vorticity);
}

HALFDROP_WIDER void Flow::push(const FlowStep& step) {
  if (step.upward_cm_s2.empty()) return;
  const std::size_t stride = box_.stride(), n = box_.columns;
  const auto half = static_cast<float>(0.5 * step.duration_s);
  for (std::size_t j = 1; j < box_.rows; ++j) {
    const float* const above = &step.upward_cm_s2[j * n];
    float* const w = &up_[j * stride];
    for (std::size_t i = 0; i < n; ++i) w[i] += half * (above[i] + (above - n)[i]);
  }
}

/// Front and back wall.
HALFDROP_WIDER void Flow::hold_back_across(const FlowStep& step, float number) {
  if (!step.gap_brakes) return;
  const std::size_t stride = box_.stride(), n = box_.columns;
  const auto slower = [&](float depth) {
    return 1.0F / (1.0F + static_cast<float>(kGap) * number / (depth * depth));
  };
  std::vector<float> at_node(n + 1), between(n);
  std::transform(box_.depth_at_node.begin(), box_.depth_at_node.end(), at_node.begin(), slower);
  std::transform(box_.depth_between.begin(), box_.depth_between.end(), between.begin(), slower);
  for (std::size_t j = 0; j <= box_.rows; ++j) {
    for (std::size_t i = 0; i <= n; ++i) across_[j * stride + i] *= at_node[i];
    for (std::size_t i = 0; i < n; ++i) up_[j * stride + i] *= between[i];
  }
}

// Explicit, in as many parts as that takes.
void Flow::spread_across(float number) {
  constexpr float kStable = 0.25F;
  const std::size_t stride = box_.stride(), n = box_.columns;
  const int parts = 1 + static_cast<int>(number / kStable);
  const float each = number / static_cast<float>(parts);
  std::vector<float> work(2 * (n + 2));
  for (std::size_t j = 0; j < box_.rows; ++j)
    spread_row(&across_[j * stride + 1], n - 1, Ends::given, each, parts, work.data());
  for (std::size_t j = 1; j < box_.rows; ++j)  // the walls stand between the last speed and its mirror image
    spread_row(&up_[j * stride], n, Ends::mirrored, each, parts, work.data());
}

void Flow::spread_up(const FlowStep& step, double number) {
  const std::size_t stride = box_.stride(), m = box_.rows;
  if (step.lid_holds) {
    const auto drawn = static_cast<float>(2.0 * number * step.lid_cm_s);
    for (std::size_t i = 1; i < box_.columns; ++i) across_[(m - 1) * stride + i] += drawn;
  }
  relax({m, stride, 2.0, step.lid_holds ? 2.0 : 0.0}, number, across_, stride);
  relax({m - 1, stride, 1.0, 1.0}, number, std::span(up_).subspan(stride), stride);
}

HALFDROP_WIDER void Flow::curl(const FlowStep& step, std::span<float> vorticity) const {
  const std::size_t stride = box_.stride(), n = box_.columns, m = box_.rows;
  const auto per_dx = static_cast<float>(1.0 / box_.dx_cm()), per_dz = static_cast<float>(1.0 / box_.dz_cm());
  for (std::size_t j = 1; j < m; ++j) {
    const float* const u = &across_[j * stride];
    const float* const w = &up_[j * stride];
    float* const omega = &vorticity[j * stride];
    for (std::size_t i = 1; i < n; ++i)
      omega[i] = (w[i] - w[i - 1]) * per_dx - (u[i] - (u - stride)[i]) * per_dz;
    omega[0] = 2.0F * w[0] * per_dx;
    omega[n] = -2.0F * w[n - 1] * per_dx;
  }
  const float* const lowest = across_.data();
  const float* const highest = &across_[(m - 1) * stride];
  const auto lid = static_cast<float>(step.lid_cm_s);
  for (std::size_t i = 0; i <= n; ++i) {
    vorticity[i] = -2.0F * lowest[i] * per_dz;
    vorticity[m * stride + i] = step.lid_holds ? -2.0F * (lid - highest[i]) * per_dz : 0.0F;
  }
}

// omega / d goes along unchanged; between the cells' middles flows what the mean of four nodes' psi says.
HALFDROP_WIDER void Flow::carry(const FlowStep& step, std::span<float> vorticity) const {
  const std::size_t stride = box_.stride(), n = box_.columns;
  thread_local std::vector<float> mid;  // memory for the work alone: written before it is read
  mid.resize(stride * box_.rows);
  const auto quarter = static_cast<float>(0.25 * step.duration_s);
  for (std::size_t j = 0; j < box_.rows; ++j) {
    for (std::size_t at = j * stride; at < j * stride + n; ++at) {
      mid[at] =
          quarter * ((stream_[at] + stream_[at + 1]) + (stream_[at + stride] + stream_[at + stride + 1]));
    }
  }
  carry_vorticity(box_, mid, vorticity);
}

}  // namespace halfdrop

#include "physics/flask/stream_function.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "physics/flask/wide.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

/// Taylor's series; for x from 0 to 1, to 1e-16.
double sine(double x) {
  double term = x, sum = 0.0;
  for (int n = 1; n < 24; n += 2) {
    sum += term;
    term *= -x * x / static_cast<double>((n + 1) * (n + 2));
  }
  return sum;
}

constexpr std::size_t kDeep = 4;  ///< waves that are added up at once

constexpr std::size_t kBroad = 2;  ///< WideFloats of columns at once

/// The same for kBlocks WideFloats of columns from `i` on.
template <std::size_t kBlocks>
HALFDROP_INLINE void add_columns(std::size_t i, std::size_t stride, std::size_t count, const float* rows,
                                 const std::array<const float*, kDeep>& wave,
                                 const std::array<float*, kDeep>& sum) {
  WideFloat all[kDeep][kBlocks] = {};
  const float* row = rows + i;
  for (std::size_t j = 0; j < count; ++j, row += stride) {
    WideFloat here[kBlocks];
    for (std::size_t b = 0; b < kBlocks; ++b) here[b] = wide_at<WideFloat>(row + b * kWideFloat);
    for (std::size_t n = 0; n < kDeep; ++n)
      for (std::size_t b = 0; b < kBlocks; ++b) all[n][b] += wave[n][j] * here[b];
  }
  for (std::size_t n = 0; n < kDeep; ++n)
    for (std::size_t b = 0; b < kBlocks; ++b) put(all[n][b], sum[n] + i + b * kWideFloat);
}

/// sum[n][i] = sum over j of wave[n][j] rows[j][i], for all columns i: a multiple of kWideFloat.
HALFDROP_WIDER void add_waves(std::size_t stride, std::size_t count, const float* rows,
                              const std::array<const float*, kDeep>& wave,
                              const std::array<float*, kDeep>& sum) {
  std::size_t i = 0;
  for (; i + kBroad * kWideFloat <= stride; i += kBroad * kWideFloat)
    add_columns<kBroad>(i, stride, count, rows, wave, sum);
  if (i < stride) add_columns<1>(i, stride, count, rows, wave, sum);
}

/// What Gauss needs of a box: 1 / (d dx2) between the nodes, 1 / (d dz2) at them.
struct Across {
  const float *across, *upward;
  std::size_t columns;
};
/// On the way through a line of nodes: what is left of the next one, and the value.
struct Reached {
  std::array<float, kWideFloat> next{}, value{};
};

/// Gauss for kWideFloat waves side by side, in place: one alone would wait for its own divisions.
HALFDROP_WIDER void eliminate_waves(const Across& box, const std::array<float*, kWideFloat>& wave,
                                    const std::array<float, kWideFloat>& square, Reached* reached) {
  const std::size_t n = box.columns;
  const auto squares = wide_at<WideFloat>(square.data());
  WideFloat next{}, value{};
  for (std::size_t i = 1; i < n; ++i) {
    const WideFloat own{wave[0][i], wave[1][i], wave[2][i], wave[3][i],
                        wave[4][i], wave[5][i], wave[6][i], wave[7][i]};
    const WideFloat pivot = box.across[i - 1] * (1.0F - next) + (box.across[i] + squares * box.upward[i]);
    const WideFloat inverse = 1.0F / pivot;
    next = box.across[i] * inverse;
    value = (own + box.across[i - 1] * value) * inverse;
    put(next, reached[i].next.data());
    put(value, reached[i].value.data());
  }
  WideFloat right{};
  for (std::size_t i = n - 1; i > 0; --i) {
    right = wide_at<WideFloat>(reached[i].value.data()) + wide_at<WideFloat>(reached[i].next.data()) * right;
    for (std::size_t m = 0; m < kWideFloat; ++m) wave[m][i] = right[m];
  }
}

}  // namespace

FlowBox even_box(std::size_t columns, std::size_t rows, double width_cm, double height_cm) {
  return {columns,
          rows,
          width_cm,
          height_cm,
          std::vector<float>(columns + 1, 1.0F),
          std::vector<float>(columns, 1.0F)};
}

StreamFunction::StreamFunction(std::size_t rows)
    : rows_(rows), sine_((rows - 1) * (rows / 2)), square_(rows) {
  assert(rows >= 4 && rows % 2 == 0);
  // Table of a quarter turn; all other sines are among it.
  std::vector<double> quarter(rows / 2 + 1);
  for (std::size_t t = 0; t < quarter.size(); ++t) {
    const double half_angle = kPi * static_cast<double>(t) / static_cast<double>(2 * rows);
    const double s = sine(half_angle);
    quarter[t] = t * 2 == rows ? 1.0 : 2.0 * s * std::sqrt(1.0 - s * s);
    if (t > 0) square_[t] = 4.0 * s * s;
  }
  for (std::size_t k = rows / 2 + 1; k < rows; ++k) square_[k] = 4.0 - square_[rows - k];
  for (std::size_t k = 1; k < rows; ++k) {
    for (std::size_t j = 1; j <= rows / 2; ++j) {
      const std::size_t turn = k * j % (2 * rows);  // in parts of half a turn over rows
      const std::size_t folded = turn % rows;
      const double value = quarter[folded <= rows / 2 ? folded : rows - folded];
      sine_[(k - 1) * (rows / 2) + j - 1] = static_cast<float>(turn < rows ? value : -value);
    }
  }
}

// Waves with odd k are the same from both ends, those with even k change sign: half the rows are enough.
void StreamFunction::transform(std::size_t stride, std::span<const float> in, std::span<float> out,
                               float scale) const {
  const std::size_t half = rows_ / 2;
  thread_local std::vector<float> folded;  // [odd or even k][j - 1][column]; written before it is read
  folded.resize(2 * half * stride);
  for (std::size_t j = 1; j <= half; ++j) {
    const float* const low = &in[j * stride];
    const float* const high = &in[(rows_ - j) * stride];
    float* const odd = &folded[(j - 1) * stride];
    float* const even = odd + half * stride;
    const float share = j == half ? 0.5F * scale : scale;  // the middle row meets itself
    for (std::size_t i = 0; i < stride; ++i) {
      odd[i] = (low[i] + high[i]) * share;
      even[i] = (low[i] - high[i]) * share;
    }
  }
  for (std::size_t k = 1; k < rows_; k += 2 * kDeep) {
    for (std::size_t parity = 0; parity < 2; ++parity)
      add_up(stride, k + parity, &folded[parity * half * stride], out);
  }
}

void StreamFunction::add_up(std::size_t stride, std::size_t first, const float* rows,
                            std::span<float> out) const {
  const std::size_t half = rows_ / 2;
  std::array<const float*, kDeep> wave{};
  std::array<float*, kDeep> sum{};
  for (std::size_t n = 0; n < kDeep; ++n) {  // past the last wave, that one again
    const std::size_t k = std::min(first + 2 * n, rows_ - 1 - (rows_ - 1 - first) % 2);
    wave[n] = &sine_[(k - 1) * half];
    sum[n] = &out[k * stride];
  }
  add_waves(stride, half, rows, wave, sum);
}

void StreamFunction::eliminate(const FlowBox& box, std::span<float> waves) const {
  const std::size_t stride = box.stride(), n = box.columns;
  const auto per_dx2 = static_cast<float>(1.0 / (box.dx_cm() * box.dx_cm()));
  std::vector<float> across(n), upward(n + 1);
  for (std::size_t i = 0; i < n; ++i) across[i] = per_dx2 / box.depth_between[i];
  for (std::size_t i = 1; i < n; ++i)
    upward[i] = static_cast<float>(1.0 / (box.dz_cm() * box.dz_cm())) / box.depth_at_node[i];
  std::vector<Reached> reached(n);
  for (std::size_t first = 1; first < rows_; first += kWideFloat) {
    std::array<float*, kWideFloat> wave{};
    std::array<float, kWideFloat> square{};
    for (std::size_t m = 0; m < kWideFloat; ++m) {  // past the last wave, that one again
      const std::size_t k = std::min(first + m, rows_ - 1);
      wave[m] = &waves[k * stride];
      square[m] = static_cast<float>(square_[k]);
    }
    eliminate_waves({across.data(), upward.data(), n}, wave, square, reached.data());
  }
}

void StreamFunction::solve(const FlowBox& box, std::span<const float> omega, std::span<float> psi) const {
  assert(box.rows == rows_ && omega.size() == box.nodes() && psi.size() == box.nodes());
  thread_local std::vector<float> waves;  // memory for the work alone: written before it is read
  waves.resize(box.nodes());
  transform(box.stride(), omega, waves, 1.0F);
  eliminate(box, waves);
  transform(box.stride(), waves, psi, 2.0F / static_cast<float>(rows_));
  const std::size_t stride = box.stride();
  std::fill_n(psi.begin(), stride, 0.0F);
  std::fill_n(psi.end() - static_cast<std::ptrdiff_t>(stride), stride, 0.0F);
  for (std::size_t j = 1; j < rows_; ++j) {
    psi[j * stride] = 0.0F;
    std::fill_n(&psi[j * stride + box.columns], stride - box.columns, 0.0F);
  }
}

}  // namespace halfdrop

#include "physics/flask/vorticity.h"

#include <array>
#include <cassert>
#include <vector>

#include "physics/flask/sweby.h"

namespace halfdrop {

namespace {

constexpr std::size_t kPad = kWideFloat;
constexpr std::size_t kMostNodes = 320;
using Row = std::array<float, kMostNodes>;

/// One over depth, and over the volume of a node's own cell; 0 beyond the last node.
struct Inverse {
  Row depth{}, volume{};
};

/// omega / d of a row of nodes, its ends repeated.
void load(const FlowBox& box, const Inverse& inverse, const float* omega, Row& row) {
  const std::size_t last = kPad + box.columns;
  for (std::size_t i = 0; i <= box.columns; ++i) row[kPad + i] = omega[i] * inverse.depth[i];
  for (std::size_t i = 0; i < kPad; ++i) {
    row[i] = row[kPad];
    row[last + 1 + i] = row[last];
  }
}

/// Rows, each from its first node on, of which low and high are either side of the faces.
struct Around {
  const float *before, *low, *high, *after;
};

/// What passes faces of which `inverse` is one over the volumes beside them.
HALFDROP_INLINE WideFloat passing(const Around& around, const WideFloat& through, const WideFloat& inverse) {
  constexpr float kTiny = 1e-30F;
  const WideFloat none{};
  const auto rises = through > none;
  const auto low = wide_at<WideFloat>(around.low), high = wide_at<WideFloat>(around.high);
  const WideFloat across = high - low;
  const WideFloat upstream =
      rises ? low - wide_at<WideFloat>(around.before) : wide_at<WideFloat>(around.after) - high;
  const WideFloat ratio = sweby_ratio(upstream, across, kTiny);
  // Of third order where it is smooth (Koren 1993, from memory): (1 + 2 r) / 3.
  const WideFloat smooth = (1.0F / 3.0F) * (ratio + 1.0F);
  const WideFloat limit = larger_of(none, smaller_of(smaller_of(ratio, smooth), none + 2.0F));
  const WideFloat share = (rises ? through : -through) * inverse;
  const WideFloat half = 0.5F * limit * (1.0F - share);
  return through * (low + (rises ? half : 1.0F - half) * across);
}

}  // namespace

HALFDROP_WIDER static void carry_rows(const FlowBox& box, const Inverse& inverse, const float* passes,
                                      float* vorticity) {
  const std::size_t stride = box.stride(), n = box.columns, m = box.rows;
  std::array<Row, 4> ring;
  for (std::size_t j = 0; j < 3; ++j) load(box, inverse, vorticity + j * stride, ring[j]);
  Row up[2] = {}, across{};
  Row psi[2] = {};  // below and above a row of nodes; from i - 1 on
  const auto load_psi = [&](std::size_t j) {
    for (std::size_t i = 0; i < n; ++i) psi[j % 2][1 + i] = passes[j * stride + i];
  };
  load_psi(0);
  for (std::size_t j = 0; j < m; ++j) {  // the faces above node row j, then row j is complete
    if (j >= 1 && j + 2 <= m) load(box, inverse, vorticity + (j + 2) * stride, ring[(j + 2) % 4]);
    const Row& low = ring[j % 4];
    const Row& high = ring[(j + 1) % 4];
    const Row& before = ring[(j >= 1 ? j - 1 : j) % 4];
    const Row& after = ring[(j + 2 <= m ? j + 2 : j + 1) % 4];
    if (j > 0) load_psi(j);
    const Row& here = psi[j % 2];
    for (std::size_t i = 0; i <= n; i += kWideFloat) {
      const WideFloat through = wide_at<WideFloat>(&here[i]) - wide_at<WideFloat>(&here[i + 1]);
      put(passing({&before[kPad + i], &low[kPad + i], &high[kPad + i], &after[kPad + i]}, through,
                  wide_at<WideFloat>(&inverse.volume[i])),
          &up[j % 2][i]);
    }
    if (j == 0) continue;
    const Row& below = psi[(j + 1) % 2];
    for (std::size_t i = 0; i < n; i += kWideFloat) {  // between nodes i and i + 1
      const WideFloat through = wide_at<WideFloat>(&here[i + 1]) - wide_at<WideFloat>(&below[i + 1]);
      const float* const row = &low[kPad + i];
      put(passing({row - 1, row, row + 1, row + 2}, through, wide_at<WideFloat>(&inverse.volume[i])),
          &across[1 + i]);
    }
    float* const omega = vorticity + j * stride;
    for (std::size_t i = 1; i < n; ++i) {
      const float gain = (across[i] - across[i + 1]) + (up[(j + 1) % 2][i] - up[j % 2][i]);
      omega[i] += gain * inverse.volume[i] / inverse.depth[i];
    }
  }
}

void carry_vorticity(const FlowBox& box, std::span<const float> passes, std::span<float> vorticity) {
  assert(box.columns + 2 * kPad + 3 < kMostNodes && box.rows >= 3);
  Inverse inverse;
  const auto area = static_cast<float>(box.dx_cm() * box.dz_cm());
  for (std::size_t i = 0; i <= box.columns; ++i) {
    inverse.depth[i] = 1.0F / box.depth_at_node[i];
    inverse.volume[i] = inverse.depth[i] / area;
  }
  carry_rows(box, inverse, passes.data(), vorticity.data());
}

}  // namespace halfdrop

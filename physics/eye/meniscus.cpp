#include "physics/eye/meniscus.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace halfdrop {

namespace {

double sine_of(const MeniscusPoint& from, const MeniscusPoint& to) {
  const double along = to.radius_mm - from.radius_mm, up = to.height_mm - from.height_mm;
  return up / std::sqrt(along * along + up * up);
}

/// Between a point and the next one; the slope of each piece is that of its middle.
double sine_at(const std::vector<MeniscusPoint>& outline, std::size_t next, double share) {
  const std::size_t last = outline.size() - 1;
  if (last < 2) return sine_of(outline[0], outline[1]);
  const std::size_t first = std::clamp<std::size_t>(share < 0.5 ? next - 1 : next, 1, last - 1);
  const double here = static_cast<double>(next - 1) + share;
  const double from_middle = here - (static_cast<double>(first) - 0.5);
  const double low = sine_of(outline[first - 1], outline[first]);
  const double high = sine_of(outline[first], outline[first + 1]);
  return std::clamp(low + from_middle * (high - low), 0.0, 1.0);
}

}  // namespace

Meniscus::Meniscus(const std::vector<MeniscusPoint>& outline) : bore_mm_(outline.back().radius_mm) {
  assert(outline.size() >= 2);
  std::size_t next = outline.size() - 1;
  for (std::size_t i = 0; i <= kPieces; ++i) {
    const double root = static_cast<double>(i) / kPieces;
    const double radius_mm = bore_mm_ * (1.0 - root * root);
    while (next > 1 && outline[next - 1].radius_mm > radius_mm) --next;
    const MeniscusPoint& inner = outline[next - 1];
    const MeniscusPoint& outer = outline[next];
    const double share = (radius_mm - inner.radius_mm) / (outer.radius_mm - inner.radius_mm);
    heights_[i] = inner.height_mm + share * (outer.height_mm - inner.height_mm);
    sines_[i] = sine_at(outline, next, share);
  }
}

double Meniscus::at(const Table& table, double radius_mm) const {
  const double from_wall = std::clamp(1.0 - radius_mm / bore_mm_, 0.0, 1.0);
  const double place = std::sqrt(from_wall) * kPieces;
  const std::size_t piece = std::min(static_cast<std::size_t>(place), kPieces - 1);
  const double share = place - static_cast<double>(piece);
  return table[piece] + share * (table[piece + 1] - table[piece]);
}

}  // namespace halfdrop

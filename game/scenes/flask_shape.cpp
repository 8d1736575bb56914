#include <algorithm>
#include <cmath>

#include "game/scenes/bench_layout.h"
#include "game/scenes/flask_parts.h"

namespace halfdrop {

using layout::kNearUnits_cm;

FlaskShape::FlaskShape(const FlaskSpec& flask) {
  const float base = static_cast<float>(flask.base_radius_cm) * kNearUnits_cm;
  neck_ = static_cast<float>(flask.neck_radius_cm) * kNearUnits_cm;
  height_ = static_cast<float>(flask.height_cm) * kNearUnits_cm;
  const float shoulder = -height_ + static_cast<float>(flask.neck_length_cm) * kNearUnits_cm;
  const Point slope{-(base - neck_), -shoulder};
  const float length = std::hypot(slope.x, slope.y);
  const Point down = slope / length;
  left_ = Path({-neck_ - 6, -height_ + 2})
              .cubic({-neck_ - 5, -height_ + 8}, {-neck_, -height_ + 6}, {-neck_, -height_ + 16})
              .line({-neck_, shoulder - 26})
              .quad({-neck_, shoulder}, Point{-neck_, shoulder} + down * 30.0F)
              .line(Point{-base, 0} - down * 22.0F)
              .quad({-base - 1, 0}, {-base + 20, 0})
              .points();
}

float FlaskShape::half_at(float y) const {
  for (std::size_t i = 1; i < left_.size(); ++i) {
    if (left_[i].y >= y && left_[i].y > left_[i - 1].y) {
      const float share = (y - left_[i - 1].y) / (left_[i].y - left_[i - 1].y);
      return -(left_[i - 1].x + (left_[i].x - left_[i - 1].x) * std::clamp(share, 0.0F, 1.0F));
    }
  }
  return -left_.back().x;
}

float FlaskShape::sag(float x) const {
  constexpr float kDeepest = 4.0F;
  const float share = x / left_.back().x;
  return kDeepest * std::max(0.0F, 1 - share * share);
}

Points FlaskShape::line(Point foot, float wall, float floor) const {
  Points half;
  for (std::size_t i = 0; i < left_.size(); ++i) {
    const Point along = left_[std::min(i + 1, left_.size() - 1)] - left_[i > 0 ? i - 1 : 0];
    const float length = std::hypot(along.x, along.y);
    half.push_back(left_[i] + Point{wall * along.y, -floor * along.x} / length);
  }
  constexpr int kAcross = 24;
  const Point corner = half.back();
  for (int i = 1; i <= kAcross / 2; ++i) {
    const float x = corner.x * (1 - 2 * static_cast<float>(i) / kAcross);
    half.push_back({x, corner.y + sag(x) - sag(corner.x)});
  }
  Points all;
  for (const Point& p : half) all.push_back(foot + p);
  for (auto p = half.rbegin() + 1; p != half.rend(); ++p) all.push_back(foot + Point{-p->x, p->y});
  return all;
}

}  // namespace halfdrop

// The volumetric flask: a round body, a long neck with its line, a stopper once it has been turned over.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/glassware.h"
#include "game/scenes/making_up_panel.h"
#include "game/scenes/palette.h"
#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

constexpr float kBody = 0.50F, kNeckHalf = 0.075F, kLine = 0.22F;  ///< shares of the height

/// Half widths from the top down, so that the body holds what it should by eye.
Points half_outline(const Rect& r) {
  const float body_top = r.bottom() - r.h * kBody, neck = r.h * kNeckHalf, half = r.w / 2, cx = r.centre().x;
  return Path({cx - neck - 3, r.y})
      .line({cx - neck, r.y + 5})
      .line({cx - neck, body_top})
      .cubic({cx - neck - 4, body_top + r.h * 0.08F}, {cx - half, body_top + r.h * 0.10F},
             {cx - half, r.bottom() - r.h * 0.20F})
      .cubic({cx - half, r.bottom() - 2}, {cx - half + 10, r.bottom()}, {cx - half + 16, r.bottom()})
      .points();
}

float half_at(const Points& left, float cx, float y) {
  for (std::size_t i = 1; i < left.size(); ++i) {
    if (left[i].y < y || left[i].y <= left[i - 1].y) continue;
    const float share = (y - left[i - 1].y) / (left[i].y - left[i - 1].y);
    return cx - (left[i - 1].x + (left[i].x - left[i - 1].x) * std::clamp(share, 0.0F, 1.0F));
  }
  return cx - left.back().x;
}

/// Where the surface stands: in the body by the root of what is in it, in the neck by length.
float surface_y(const Rect& r, const PreparationView& work, const BenchSpec& spec) {
  const float body_top = r.bottom() - r.h * kBody, line = r.y + r.h * kLine;
  if (work.in_neck) {
    const auto share = static_cast<float>(1.0 + work.level_mm / kNeckBelowLine_mm);
    return std::max(r.y + 6, body_top + (line - body_top) * share);
  }
  const double full = spec.preparation.flask_cm3 - kNeck_cm3_mm * kNeckBelowLine_mm;
  return r.bottom() - 3 - (r.h * kBody - 3) * static_cast<float>(std::clamp(work.flask_cm3 / full, 0.0, 1.0));
}

void draw_contents(Canvas& canvas, const Rect& r, const Points& left, float surface) {
  const float cx = r.centre().x;
  Points liquid = {{cx - half_at(left, cx, surface) + 2, surface}};
  for (const Point& p : left) {
    if (p.y > surface) liquid.push_back({p.x + 2, p.y - 2});
  }
  const Points right = mirrored_in_x(liquid, cx);
  liquid.insert(liquid.end(), right.begin(), right.end());
  canvas.polygon(liquid, water_shading(r.x, r.right(), 0.9));
}

}  // namespace

void draw_volumetric(Canvas& canvas, const Rect& r, const PreparationView& work, const BenchSpec& spec,
                     const std::string& label) {
  const float cx = r.centre().x, neck = r.h * kNeckHalf, line = r.y + r.h * kLine;
  const Points left = half_outline(r);
  draw_foot_shadow(canvas, {cx, r.bottom() - 1}, r.w * 0.4F, 0.4);
  if (work.flask_cm3 > 0.5) draw_contents(canvas, r, left, surface_y(r, work, spec));
  Points glass = left;
  const Points right = mirrored_in_x(left, cx);
  glass.insert(glass.end(), right.begin(), right.end());
  canvas.polygon(glass, glass_shading(r.x, r.right(), 0.7));
  canvas.stroke(glass, {1.4F, true}, faded(palette::glass_edge, 0.95));
  canvas.line({cx - neck - 3, line}, {cx + neck + 3, line}, 1.6F, palette::scale_print);
  if (work.inversions > 0) canvas.rounded_rect({cx - neck, r.y - 7, 2 * neck, 12}, 3, palette::rubber);
  canvas.flush();
  if (label.empty()) return;
  const Rect paper{r.x + 8, r.bottom() - r.h * 0.34F, r.w - 16, r.h * 0.26F};
  canvas.rounded_rect(paper, 3, palette::paper);
  TextStyle style{11.5F, palette::good, Face::semibold, Align::centre};
  const auto lines = canvas.wrapped(label, paper.w - 4, style);
  float y = paper.centre().y - 6.5F * static_cast<float>(lines.size() - 1);
  for (const std::string& words : lines) {
    canvas.text_middle(words, {cx, y}, style);
    y += 13;
  }
}

}  // namespace halfdrop

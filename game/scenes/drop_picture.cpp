#include "game/scenes/drop_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "game/scenes/bench_layout.h"
#include "game/scenes/palette.h"
#include "physics/burette/drop_shape.h"

namespace halfdrop {

namespace {

using layout::kJetX;
using layout::kNearUnits_cm;

/// The plug's front end: where its rim is lowest, seepage gathers; a little aside, clear of the jet.
constexpr float kRim = 17.0F, kLeakAside = -10.5F;
/// Before the flask, under jet and plug: on the bare bench, or on the laid tile's front.
constexpr float kSpiltY = layout::kFootY + 14, kOnTileY = layout::kTileLaid.y + 26;

/// The true outlines of the drops that hang at one tip, in steps of volume; each worked out when first drawn.
class DropOutlines {
 public:
  /// From the lowest point up; null when nothing is to be seen.
  const std::vector<DropPoint>* of(const BenchSpec& spec, double volume_cm3) {
    const double share = volume_cm3 / spec.settled.largest_drop_cm3;
    const auto step = static_cast<std::size_t>(std::lround(std::clamp(share, 0.0, 1.0) * kSteps));
    if (step == 0) return nullptr;
    const DropTip tip{0.5 * spec.tap.tip_outer_mm, spec.settled.capillary_mm};
    if (tip.radius_mm != tip_.radius_mm || tip.capillary_mm != tip_.capillary_mm) outlines_ = {};
    tip_ = tip;
    std::vector<DropPoint>& outline = outlines_.at(step);
    if (outline.empty())
      outline = drop_outline(tip, spec.settled.largest_drop_cm3 * static_cast<double>(step) / kSteps);
    return &outline;
  }

 private:
  static constexpr std::size_t kSteps = 64;
  DropTip tip_{0.0, 0.0};
  std::array<std::vector<DropPoint>, kSteps + 1> outlines_;
};

}  // namespace

void draw_hanging_drop(Canvas& canvas, const BenchSpec& spec, Point hangs_from, double volume_cm3) {
  static DropOutlines outlines;
  const std::vector<DropPoint>* outline = outlines.of(spec, volume_cm3);
  if (outline == nullptr) return;
  const float h = static_cast<float>(outline->back().height_mm) * kNearUnits_cm / 10;
  float wide = 0.0F;
  Points drop;
  for (const DropPoint& point : *outline) {
    const float x = static_cast<float>(point.radius_mm) * kNearUnits_cm / 10;
    wide = std::max(wide, x);
    drop.push_back(hangs_from + Point{-x, h - static_cast<float>(point.height_mm) * kNearUnits_cm / 10});
  }
  const Points right = mirrored_in_x(drop, hangs_from.x);
  drop.insert(drop.end(), right.begin(), right.end());
  canvas.polygon(drop, Paint::horizontal(hangs_from.x - wide, hangs_from.x + wide,
                                         {{0, rgb(0x6f929d)},
                                          {0.22F, rgb(0xcfe0e4)},
                                          {0.55F, rgb(0xf1f7f8)},
                                          {0.8F, rgb(0xbcd2d8)},
                                          {1, rgb(0x668a95)}}));
  canvas.stroke(drop, {0.9F, true}, faded(palette::glass_dark, 0.75));
  if (h > 4)
    canvas.ellipse(hangs_from + Point{-wide * 0.36F, h - wide * 1.05F}, wide * 0.16F, h * 0.15F,
                   sf::Color::White);
}

void draw_falling_drop(Canvas& canvas, Point centre, double volume_cm3) {
  const float r = static_cast<float>(std::cbrt(volume_cm3 * 3 / (4 * kPi))) * kNearUnits_cm;
  canvas.ellipse(centre - Point{0, r * 1.4F}, r * 0.45F, r * 1.6F, faded(palette::water_edge, 0.25));
  canvas.ellipse(centre, r * 0.96F, r * 1.06F,
                 Paint::horizontal(centre.x - r, centre.x + r,
                                   {{0, rgb(0x6f929d)}, {0.4F, rgb(0xe6f0f2)}, {1, rgb(0x668a95)}}));
  canvas.stroke(ellipse_points(centre, r * 0.96F, r * 1.06F, 24), {0.8F, true},
                faded(palette::glass_dark, 0.7));
  canvas.ellipse(centre - Point{r * 0.35F, r * 0.3F}, r * 0.18F, r * 0.28F, sf::Color::White);
}

void draw_leak(Canvas& canvas, const BenchPicture& picture) {
  const View& view = picture.view;
  if (picture.spec.tap.leak_cm3_min <= 0.0 || view.plug_drop_cm3 <= 0.0) return;
  const Point axis{kJetX, layout::tap_y(picture.spec, view.hands.clamp_mm)};
  Points wet;
  for (int i = 0; i <= 12; ++i) {
    const float angle = 1.65F + 0.13F * static_cast<float>(i);  // from under the axis round to the left
    wet.push_back(axis + Point{std::cos(angle) * kRim, std::sin(angle) * kRim});
  }
  canvas.stroke(wet, {3.2F, false, true}, faded(palette::water_edge, 0.95));
  canvas.stroke(wet, {1.2F, false, true}, faded(sf::Color::White, 0.85));
  const Point hangs = axis + Point{kLeakAside, std::sqrt(kRim * kRim - kLeakAside * kLeakAside)};
  draw_hanging_drop(canvas, picture.spec, hangs, view.plug_drop_cm3);
  if (!view.plug_drop_fallen_cm) return;
  const float y = hangs.y + 6 + static_cast<float>(*view.plug_drop_fallen_cm) * kNearUnits_cm;
  if (y < (view.tile_laid ? kOnTileY : kSpiltY)) draw_falling_drop(canvas, {hangs.x, y}, view.full_drop_cm3);
}

float touching(const View& view) {
  if (!view.touched_off_s) return 0.0F;
  constexpr double kThere_s = 0.12, kLeaves_s = 0.35;
  const double s = *view.touched_off_s;
  const double share =
      s < kThere_s ? s / kThere_s : 1.0 - std::max(0.0, s - kLeaves_s) / (kTouchShows_s - kLeaves_s);
  return static_cast<float>(share * share * (3.0 - 2.0 * share));
}

void draw_spilt(Canvas& canvas, const View& view) {
  if (view.spilt_cm3 < 0.01) return;
  const auto wide = static_cast<float>(14 + 26 * std::sqrt(std::min(4.0, view.spilt_cm3)));
  const float deep = wide * 0.17F + 1;
  const Point at{kJetX - 4, view.tile_laid ? kOnTileY : kSpiltY};
  // Dark under its front edge, the window's light in it: a flat drop seen from above.
  const sf::Color ground = view.tile_laid ? rgb(0x8fa0a4) : palette::bench_deep;
  canvas.soft_ellipse(at + Point{1.5F, 1.5F}, wide + 1, deep + 1, 3, faded(ground, 0.55));
  canvas.ellipse(at, wide, deep,
                 Paint::vertical(at.y - deep, at.y + deep,
                                 {{0, faded(ground, 0.55)},
                                  {0.5F, faded(palette::water, view.tile_laid ? 0.8 : 0.4)},
                                  {1, faded(sf::Color::White, view.tile_laid ? 0.9 : 0.45)}}));
  canvas.stroke(ellipse_points(at, wide, deep), {1.2F, true}, faded(palette::glass_dark, 0.8));
  canvas.ellipse(at + Point{-wide * 0.34F, -deep * 0.3F}, wide * 0.26F, deep * 0.22F,
                 faded(sf::Color::White, 0.95));
}

}  // namespace halfdrop

#include <algorithm>
#include <cmath>
#include <vector>

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/bench_picture.h"
#include "game/scenes/drop_picture.h"
#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

using layout::kJetX;
using layout::kNearUnits_cm;

struct TapPlaces {
  float tap, tip, tube_half, tip_half;
  TapPlaces(const BenchSpec& spec, double clamp_mm)
      : tap(layout::tap_y(spec, clamp_mm)),
        tip(layout::tip_y(spec, clamp_mm)),
        tube_half(static_cast<float>(spec.burette.outer_half_width_mm) / 10 * kNearUnits_cm),
        tip_half(static_cast<float>(spec.tap.tip_outer_mm) / 20 * kNearUnits_cm) {}
};

Points both_sides(const Points& left) {
  Points all = left;
  const Points right = mirrored_in_x(left, kJetX);
  all.insert(all.end(), right.begin(), right.end());
  return all;
}

Points tube_outline(const TapPlaces& at, float inset) {
  return both_sides(Path({kJetX - at.tube_half + inset, -20})
                        .line({kJetX - at.tube_half + inset, at.tap - 52})
                        .cubic({kJetX - at.tube_half + inset, at.tap - 34},
                               {kJetX - 6 + inset * 0.6F, at.tap - 36},
                               {kJetX - 6 + inset * 0.6F, at.tap - 18})
                        .points());
}

Points jet_outline(const TapPlaces& at, float inset) {
  const float upper = 6.0F - inset * 1.1F, lower = at.tip_half - inset * 0.75F;
  const float waist = at.tap + (at.tip - at.tap) * 0.45F;
  return both_sides(
      Path({kJetX - upper, at.tap + 16})
          .line({kJetX - upper, waist})
          .cubic({kJetX - upper, waist + 30}, {kJetX - lower, at.tip - 60}, {kJetX - lower, at.tip})
          .points());
}

float last_mark_y(const BuretteSpec& b, const TapPlaces& at) {
  return at.tap - static_cast<float>(b.below_scale_mm) / 10 * kNearUnits_cm;
}

float mark_y(const BuretteSpec& b, const TapPlaces& at, double reading_cm3) {
  const double above_mm = (b.nominal_cm3 - reading_cm3) / b.nominal_cm3 * b.scale_length_mm;
  return last_mark_y(b, at) - static_cast<float>(above_mm) / 10 * kNearUnits_cm;
}

/// Whole cubic centimetres, where the tube hangs so low that they come into the picture.
void near_marks(Canvas& canvas, const BuretteSpec& b, const TapPlaces& at) {
  const double mm_per_cm3 = b.scale_length_mm / b.nominal_cm3;
  const double first = b.nominal_cm3 - (last_mark_y(b, at) + 20) / kNearUnits_cm * 10 / mm_per_cm3;
  for (int mark = std::max(0, static_cast<int>(std::ceil(first))); mark <= std::lround(b.nominal_cm3);
       ++mark) {
    const float y = mark_y(b, at, mark);
    if (y > 740) return;
    canvas.line({kJetX - at.tube_half, y}, {kJetX + at.tube_half * 0.7F, y}, 1.1F,
                faded(palette::scale_print, 0.8));
    canvas.text_middle(
        std::to_string(mark), {kJetX + at.tube_half + 5, y},
        {13, y > layout::kHorizon ? palette::pill_text : palette::scale_print, Face::semibold});
  }
}

void tube(Canvas& canvas, const BenchPicture& picture, const TapPlaces& at) {
  const float l = kJetX - at.tube_half, r = kJetX + at.tube_half;
  const Points outer = tube_outline(at, 0);
  canvas.polygon(outer, faded(sf::Color::White, 0.35));
  const View& view = picture.view;
  const BuretteSpec& b = picture.spec.burette;
  if (!view.column_empty) {
    const double below = std::clamp((view.meniscus_cm3 - b.nominal_cm3) / b.below_scale_cm3, 0.0, 1.0);
    const float last = last_mark_y(b, at);
    const float level = view.meniscus_cm3 <= b.nominal_cm3
                            ? std::max(-20.0F, mark_y(b, at, view.meniscus_cm3))
                            : last + (at.tap - 18 - last) * static_cast<float>(below);
    Points liquid;
    for (const Point& p : tube_outline(at, 3)) liquid.emplace_back(p.x, std::max(p.y, level));
    canvas.polygon(liquid, water_shading(l + 3, r - 3, 0.9));
  }
  canvas.polygon(outer, glass_shading(l, r, 1.1));
  const Points left(outer.begin(), outer.begin() + static_cast<std::ptrdiff_t>(outer.size() / 2));
  canvas.stroke(left, {1.5F}, palette::glass_edge);
  canvas.stroke(mirrored_in_x(left, kJetX), {1.5F}, palette::glass_edge);
  canvas.rounded_rect({l + 6, -10, 4, at.tap - 44}, 2, faded(sf::Color::White, 0.75));
  if (last_mark_y(b, at) > -20) near_marks(canvas, b, at);
}

/// Heights in the jet by what its bore holds above the tip.
class JetHeights {
 public:
  JetHeights(const BenchSpec& spec, const TapPlaces& at)
      : top_(at.tap + 16),
        tip_(at.tip),
        waist_(top_ +
               (tip_ - top_) * static_cast<float>(1.0 - spec.tap.jet_narrow_mm / spec.burette.jet_length_mm)),
        narrow_(static_cast<float>(spec.settled.jet.narrow_cm3 / spec.burette.jet_cm3)) {}

  [[nodiscard]] float top() const { return top_; }
  /// Where a share of the jet's room above the tip ends.
  [[nodiscard]] float above_tip(double share) const {
    const float s = std::clamp(static_cast<float>(share), 0.0F, 1.0F);
    if (s < narrow_) return tip_ - (tip_ - waist_) * s / narrow_;
    return waist_ - (waist_ - top_) * (s - narrow_) / (1.0F - narrow_);
  }

 private:
  float top_, tip_, waist_, narrow_;
};

void liquid_in_bore(Canvas& canvas, const Points& inner, float top, float bottom) {
  if (bottom - top < 0.5F) return;
  Points liquid;
  for (const Point& p : inner) liquid.emplace_back(p.x, std::clamp(p.y, top, bottom));
  canvas.polygon(
      liquid, Paint::horizontal(
                  kJetX - 4, kJetX + 4,
                  {{0, rgb(0x7f9ea8)}, {0.45F, rgb(0xbfd6dc)}, {0.6F, rgb(0xd5e5e9)}, {1, rgb(0x7b9aa4)}}));
}

/// Liquid in the bore, and the slug of air in it while there is one.
void bore(Canvas& canvas, const BenchPicture& picture, const TapPlaces& at) {
  const View& view = picture.view;
  const Points inner = jet_outline(at, 3.0F);
  canvas.polygon(inner, Paint::horizontal(kJetX - 4, kJetX + 4,
                                          {{0, rgb(0xdfe5e4)}, {0.5F, rgb(0xfbfaf4)}, {1, rgb(0xd5dcdb)}}));
  const JetHeights heights(picture.spec, at);
  const double air = std::max(0.0, 1.0 - view.jet_fill);
  const float air_bottom = heights.above_tip(view.jet_below);
  const float air_top = heights.above_tip(view.jet_below + air);
  liquid_in_bore(canvas, inner, heights.top(), air_top);
  liquid_in_bore(canvas, inner, air_bottom, at.tip);
  if (air < 0.002 || view.jet_fill < 0.02) return;
  // The bubble's rounded ends stand out dark, as they do against a light wall.
  const Rect bubble{kJetX - 3.1F, air_top + 1, 6.2F, std::max(5.0F, air_bottom - air_top)};
  canvas.stroke(rounded_rect_points(bubble, 3.1F), {1.3F, true}, faded(palette::glass_dark, 0.95));
  canvas.line({bubble.x + 2, bubble.y + 3}, {bubble.x + 2, bubble.bottom() - 3}, 1.2F, sf::Color::White);
}

void jet(Canvas& canvas, const BenchPicture& picture, const TapPlaces& at) {
  const Points outer = jet_outline(at, 0);
  canvas.polygon(outer, faded(sf::Color::White, 0.55));
  bore(canvas, picture, at);
  canvas.polygon(outer, glass_shading(kJetX - 6, kJetX + 6, 0.75));
  const Points left(outer.begin(), outer.begin() + static_cast<std::ptrdiff_t>(outer.size() / 2));
  canvas.stroke(left, {1.3F}, palette::glass_edge);
  canvas.stroke(mirrored_in_x(left, kJetX), {1.3F}, palette::glass_edge);
  canvas.line({kJetX - at.tip_half, at.tip}, {kJetX + at.tip_half, at.tip}, 1.1F, palette::glass_edge);
}

void tap_body(Canvas& canvas, const TapPlaces& at) {
  const Rect barrel{kJetX - 20, at.tap - 17, 40, 34};
  canvas.polygon(
      both_sides(Path({kJetX - 6, at.tap - 20})
                     .cubic({kJetX - 7, at.tap - 14}, {kJetX - 18, at.tap - 14}, {kJetX - 19, at.tap - 8})
                     .line({kJetX - 19, at.tap + 8})
                     .cubic({kJetX - 18, at.tap + 14}, {kJetX - 7, at.tap + 14}, {kJetX - 6, at.tap + 20})
                     .points()),
      Paint::horizontal(barrel.x, barrel.right(),
                        {{0, palette::glass_edge},
                         {0.2F, rgb(0xe8f0f0)},
                         {0.5F, rgb(0xc9d9dc)},
                         {0.85F, rgb(0xb4c8cd)},
                         {1, palette::glass_edge}}));
  canvas.circle({kJetX + 1, at.tap + 2}, 17, faded(palette::shadow, 0.22));
  canvas.circle({kJetX, at.tap}, 16,
                Paint::along({kJetX - 12, at.tap - 12}, {kJetX + 12, at.tap + 12},
                             {{0, sf::Color::White}, {0.5F, palette::ptfe}, {1, rgb(0xc4c0b5)}}));
  canvas.stroke(ellipse_points({kJetX, at.tap}, 16, 16), {1, true}, faded(palette::glass_edge, 0.8));
}

float landing_y(const BenchPicture& picture) {
  const View& view = picture.view;
  if (view.over_edge) return 740;  // the floor is below the picture
  if (view.beaker_under) return layout::kBeakerUnder.bottom() - 30;
  if (view.flask_under_jet)
    return flask_foot(picture).y - static_cast<float>(std::max(0.15, view.flask_depth_cm)) * kNearUnits_cm;
  return layout::kFootY;
}

void on_the_way(Canvas& canvas, const BenchPicture& picture, const TapPlaces& at) {
  const View& view = picture.view;
  const float end = landing_y(picture);
  if (view.streams) {
    const float wide = 1.2F + 0.5F * static_cast<float>(std::sqrt(view.flow_cm3_s));
    const Points thread = both_sides(
        {{kJetX - wide, at.tip}, {kJetX - wide * 0.72F, at.tip + 40}, {kJetX - wide * 0.55F, end}});
    canvas.polygon(thread,
                   Paint::horizontal(kJetX - wide, kJetX + wide,
                                     {{0, rgb(0x7a9ba5)}, {0.45F, rgb(0xeef5f6)}, {1, rgb(0x7a9ba5)}}));
    return;
  }
  for (const double fallen : view.drops_fallen_cm) {
    const float y = at.tip + 4 + static_cast<float>(fallen) * kNearUnits_cm;
    if (y < end) draw_falling_drop(canvas, {kJetX, y}, view.full_drop_cm3);
  }
}

/// A tap that hangs below the picture says how it stands.
void tap_below(Canvas& canvas, double plug) {
  const Rect pill{kJetX + 44, 586, 112, 26};
  canvas.rounded_rect(pill, 13, palette::pill);
  canvas.text_middle(plug > 0.0 ? say("eye.tap_open") : say("eye.tap_shut"), pill.centre(),
                     {15, palette::pill_text, Face::semibold, Align::centre});
}

}  // namespace

void draw_tap_and_jet(Canvas& canvas, const BenchPicture& picture) {
  const TapPlaces at(picture.spec, picture.view.hands.clamp_mm);
  tube(canvas, picture, at);
  jet(canvas, picture, at);
  on_the_way(canvas, picture, at);
  draw_hanging_drop(canvas, picture.spec, {kJetX, at.tip}, picture.view.hanging_cm3);
}

void draw_tap_handle(Canvas& canvas, const BenchPicture& picture) {
  constexpr float kHidden = 640.0F;  // by what is said at the foot
  const TapPlaces at(picture.spec, picture.view.hands.clamp_mm);
  if (at.tap > kHidden) return tap_below(canvas, picture.view.plug);
  tap_body(canvas, at);
  const double degrees = -90 * std::clamp(picture.view.plug, 0.0, 1.0);
  const Point axis{kJetX, at.tap};
  const auto turn = [&](Points points) { return turned(std::move(points), axis, degrees); };
  const Points lever =
      Path({kJetX - 9, at.tap - 9})
          .line({kJetX + 12, at.tap - 9})
          .cubic({kJetX + 34, at.tap - 7}, {kJetX + 46, at.tap - 6}, {kJetX + 60, at.tap - 9})
          .cubic({kJetX + 72, at.tap - 12}, {kJetX + 88, at.tap - 10}, {kJetX + 88, at.tap})
          .cubic({kJetX + 88, at.tap + 10}, {kJetX + 72, at.tap + 12}, {kJetX + 60, at.tap + 9})
          .cubic({kJetX + 46, at.tap + 6}, {kJetX + 34, at.tap + 7}, {kJetX + 12, at.tap + 9})
          .line({kJetX - 9, at.tap + 9})
          .cubic({kJetX - 14, at.tap + 6}, {kJetX - 14, at.tap - 6}, {kJetX - 9, at.tap - 9})
          .points();
  Points shadow = turn(lever);
  for (Point& p : shadow) p += Point{4, 6};
  canvas.polygon(shadow, faded(palette::shadow, 0.14));
  const Points shape = turn(lever);
  const Points across = turn({{kJetX, at.tap - 11}, {kJetX, at.tap + 11}});
  canvas.polygon(shape, Paint::along(across[0], across[1],
                                     {{0, palette::tap_handle_light},
                                      {0.35F, palette::tap_handle},
                                      {0.75F, palette::tap_handle},
                                      {1, palette::tap_handle_dark}}));
  canvas.stroke(shape, {1.1F, true}, palette::tap_handle_dark);
  canvas.stroke(turn({{kJetX + 16, at.tap - 4}, {kJetX + 40, at.tap - 3}, {kJetX + 62, at.tap - 5}}),
                {2, false, true}, faded(sf::Color::White, 0.45));
  for (const float x : {66.0F, 72.0F, 78.0F})
    canvas.stroke(turn({{kJetX + x, at.tap - 5}, {kJetX + x, at.tap + 5}}), {1.4F, false, true},
                  faded(palette::tap_handle_dark, 0.8));
  canvas.circle(axis, 6,
                Paint::along(axis - Point{5, 5}, axis + Point{5, 5},
                             {{0, rgb(0xf7c8a8)}, {1, palette::tap_handle_dark}}));
  canvas.circle(axis, 2.4F, faded(palette::tap_handle_dark, 0.9));
}

}  // namespace halfdrop

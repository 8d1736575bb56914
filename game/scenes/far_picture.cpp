#include <algorithm>
#include <cmath>
#include <string>

#include "game/scenes/bench_layout.h"
#include "game/scenes/bench_picture.h"
#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

using layout::FarScale;

Paint rod(float left, float right) {
  return Paint::horizontal(left, right,
                           {{0, palette::steel_dark},
                            {0.35F, palette::steel_light},
                            {0.6F, palette::steel},
                            {1, palette::steel_dark}});
}

void stand(Canvas& canvas, const FarScale& far) {
  constexpr float x = 44;
  draw_foot_shadow(canvas, {96, far.foot_y + 8}, 86, 0.5);
  canvas.soft_rect({x + 8, 34, 8, far.foot_y - 40}, 4, 9, faded(palette::shadow, 0.13));
  canvas.polygon(
      {{22, far.foot_y - 6}, {164, far.foot_y - 6}, {172, far.foot_y + 4}, {14, far.foot_y + 4}},
      Paint::vertical(far.foot_y - 6, far.foot_y + 4, {{0, rgb(0x5b6468)}, {1, palette::cast_iron}}));
  canvas.rounded_rect(
      {14, far.foot_y + 3, 158, 8}, 3,
      Paint::vertical(far.foot_y + 3, far.foot_y + 11, {{0, palette::cast_iron}, {1, rgb(0x24292b)}}));
  canvas.rounded_rect({x - 4, 20, 8, far.foot_y - 20}, 3, rod(x - 4, x + 4));
}

/// Where the two clamps hold the tube.
float clamp_y(const FarScale& far, bool upper) {
  return far.zero_y + (far.last_y - far.zero_y) * (upper ? 0.345F : 0.745F);
}

/// The bench's front edge, which the burette hangs over, and the floor far below.
void edge_of_bench(Canvas& canvas, const FarScale& far) {
  const float y = 676;
  canvas.polygon({{far.tube_x - 74, y}, {far.tube_x + 62, y}, {far.tube_x + 78, 724}, {far.tube_x - 92, 724}},
                 Paint::vertical(y, 724, {{0, rgb(0x17120d)}, {1, rgb(0x2b241c)}}));
  canvas.line({far.tube_x - 74, y}, {far.tube_x + 62, y}, 3, palette::bench_edge);
}

void clamp(Canvas& canvas, const FarScale& far, float y) {
  constexpr float x = 44;
  const float tube = far.tube_x;
  canvas.soft_rect({x, y + 6, tube - x + 8, 7}, 3, 6, faded(palette::shadow, 0.2));
  canvas.rounded_rect({x + 8, y - 3, tube - x - 14, 6}, 2.5F,
                      Paint::vertical(y - 3, y + 3, {{0, palette::steel_light}, {1, palette::steel_dark}}));
  canvas.rounded_rect({x - 10, y - 8, 22, 16}, 4,
                      Paint::vertical(y - 8, y + 8, {{0, rgb(0x667074)}, {1, palette::cast_iron}}));
  canvas.rounded_rect({x - 18, y - 4, 9, 8}, 3, palette::cast_iron);
  const float w = far.half_width + 5;
  canvas.rounded_rect({tube - w, y - 8, 2 * w, 16}, 4,
                      Paint::horizontal(tube - w, tube + w,
                                        {{0, palette::rubber},
                                         {0.35F, palette::rubber_light},
                                         {1, mixed(palette::rubber, palette::shadow, 0.35)}}));
}

void graduations(Canvas& canvas, const FarScale& far, const BenchSpec& spec) {
  const int last = static_cast<int>(std::lround(spec.burette.nominal_cm3));
  const int numbered = last > 25 ? 10 : (last > 10 ? 5 : 1);
  for (int mark = 0; mark <= last; ++mark) {
    const float y = far.y_of_reading(spec, mark);
    const bool long_mark = mark % numbered == 0;
    const float left = far.tube_x - far.half_width;
    canvas.line({left, y}, {left + far.half_width * (long_mark ? 2.0F : 1.1F), y}, long_mark ? 1.0F : 0.55F,
                faded(palette::scale_print, 0.9));
    if (long_mark)
      canvas.text_middle(
          std::to_string(mark), {far.tube_x + far.half_width + 6, y},
          {13, y > layout::kHorizon ? palette::pill_text : palette::scale_print, Face::semibold});
  }
}

void tube(Canvas& canvas, const FarScale& far, const BenchPicture& picture) {
  const float l = far.tube_x - far.half_width, r = far.tube_x + far.half_width;
  const float shoulder = far.tap_y - 11;
  canvas.rect({l, far.rim_y, r - l, shoulder - far.rim_y}, faded(sf::Color::White, 0.5));
  const View& view = picture.view;
  if (!view.column_empty) {
    const float level = std::max(far.rim_y, far.y_of_reading(picture.spec, view.meniscus_cm3));
    canvas.rect({l + 1, level, r - l - 2, std::max(0.0F, shoulder - level)}, water_shading(l, r));
    canvas.rect({l + 0.5F, level - 0.8F, r - l - 1, 1.8F}, faded(palette::glass_dark, 0.85));
  }
  canvas.rect({l, far.rim_y, r - l, shoulder - far.rim_y}, glass_shading(l, r));
  const Points neck{
      {l, shoulder}, {r, shoulder}, {far.tube_x + 2.4F, far.tap_y - 3}, {far.tube_x - 2.4F, far.tap_y - 3}};
  canvas.polygon(neck, view.column_empty ? glass_shading(l, r) : water_shading(l, r));
  for (const float side : {-1.0F, 1.0F}) {
    const float x = far.tube_x + side * far.half_width;
    canvas.stroke({{x, far.rim_y}, {x, shoulder}, {far.tube_x + side * 2.4F, far.tap_y - 3}}, {0.8F},
                  faded(palette::glass_edge, 0.9));
  }
  canvas.stroke(ellipse_points({far.tube_x, far.rim_y}, far.half_width + 0.6F, 1.4F), {0.9F, true},
                palette::glass_edge);
  const Points jet{{far.tube_x - 2.2F, far.tap_y},
                   {far.tube_x + 2.2F, far.tap_y},
                   {far.tube_x + 0.9F, far.tip_y},
                   {far.tube_x - 0.9F, far.tip_y}};
  canvas.polygon(jet, faded(view.jet_fill > 0.9 ? palette::water_edge : sf::Color::White, 0.8));
  canvas.stroke(jet, {0.7F, true}, palette::glass_edge);
  const Rect body{far.tube_x - 5, far.tap_y - 4.5F, 10, 9};
  canvas.rounded_rect(body, 3,
                      Paint::horizontal(body.x, body.right(),
                                        {{0, rgb(0xb9c4c7)}, {0.4F, palette::ptfe}, {1, rgb(0xa9b6ba)}}));
  canvas.stroke(rounded_rect_points(body, 3), {0.8F, true}, palette::glass_edge);
  const Points handle = turned(rounded_rect_points({far.tube_x - 2, far.tap_y - 2, 24, 4}, 2),
                               {far.tube_x, far.tap_y}, -90 * view.plug);
  canvas.polygon(handle, palette::tap_handle);
}

void receiver(Canvas& canvas, const FarScale& far, const BenchPicture& picture) {
  const View& view = picture.view;
  const FlaskSpec& flask = picture.spec.flask;
  const float cm = far.units_mm * 10;
  const auto h = static_cast<float>(flask.height_cm) * cm,
             base = static_cast<float>(flask.base_radius_cm) * cm;
  const auto neck = static_cast<float>(flask.neck_radius_cm) * cm,
             neck_length = static_cast<float>(flask.neck_length_cm) * cm;
  const float foot = far.foot_y - 5;
  if (view.beaker_under) {
    canvas.rect({far.tube_x - 14, foot - 36, 28, 36}, glass_shading(far.tube_x - 14, far.tube_x + 14));
    canvas.stroke({{far.tube_x - 14, foot - 36},
                   {far.tube_x - 14, foot},
                   {far.tube_x + 14, foot},
                   {far.tube_x + 14, foot - 36}},
                  {1.1F}, palette::glass_edge);
  }
  if (!view.flask_under_jet) return;
  const float x = far.tube_x;
  const Points outline{{x - neck, foot - h}, {x - neck, foot - h + neck_length}, {x - base, foot},
                       {x + base, foot},     {x + neck, foot - h + neck_length}, {x + neck, foot - h}};
  canvas.polygon(outline, Paint::horizontal(x - base, x + base,
                                            {{0, faded(palette::glass_edge, 0.35)},
                                             {0.3F, faded(sf::Color::White, 0.30)},
                                             {0.6F, faded(palette::glass_tint, 0.12)},
                                             {1, faded(palette::glass_edge, 0.40)}}));
  const auto depth = static_cast<float>(view.flask_depth_cm) * cm;
  if (depth > 0.3F) {
    const float share = std::min(1.0F, depth / (h - neck_length)), top = base + (neck - base) * share;
    canvas.polygon({{x - top, foot - depth},
                    {x + top, foot - depth},
                    {x + base - 1, foot - 0.5F},
                    {x - base + 1, foot - 0.5F}},
                   screen_colour(view.flask_colour));
  }
  canvas.stroke(outline, {1.1F}, mixed(palette::glass_edge, sf::Color::White, 0.25));
  canvas.line({x - neck - 1.2F, foot - h}, {x + neck + 1.2F, foot - h}, 1.4F, palette::glass_edge);
}

void eye_marker(Canvas& canvas, const FarScale& far, const BenchPicture& picture) {
  const Rect place = far_eye(picture.spec, picture.view.hands.eye_mm);
  const Point c = place.centre();
  canvas.dashed({{far.tube_x + far.half_width + 2, c.y}, {place.x - 2, c.y}}, 1.3F, 4, 3,
                faded(palette::accent, 0.75));
  canvas.line({c.x, 14}, {c.x, far.foot_y - 16}, 2, faded(palette::accent, 0.16));
  const Points lid = Path({c.x - 15, c.y})
                         .quad({c.x, c.y - 14}, {c.x + 15, c.y})
                         .quad({c.x, c.y + 14}, {c.x - 15, c.y})
                         .points();
  canvas.soft_ellipse({c.x + 1, c.y + 3}, 14, 8, 5, faded(palette::shadow, 0.25));
  canvas.polygon(lid, palette::paper);
  canvas.stroke(lid, {1.8F, true}, palette::accent);
  canvas.circle(c, 5, palette::accent);
  canvas.circle({c.x - 1.6F, c.y - 1.8F}, 1.5F, sf::Color::White);
}

void frame(Canvas& canvas, const Rect& r) {
  Points outline = rounded_rect_points(r, 8);
  outline.push_back(outline.front());
  canvas.dashed(outline, 1.2F, 5, 4, faded(palette::accent, 0.65));
}

sf::Color ink_of(Bottle bottle) {
  if (bottle == Bottle::sample) return palette::good;
  return bottle == Bottle::water ? palette::water_edge : palette::accent;
}

void bottle_pouring(Canvas& canvas, const FarScale& far, const View& view) {
  const Point lip{far.tube_x + 3, far.rim_y - (view.funnel_in ? 25.0F : 8.0F)};
  const Rect bottle{lip.x - 19, lip.y - 7, 38, 72};
  canvas.stroke(
      Path({lip.x + 2, lip.y}).quad({far.tube_x - 1, lip.y + 1}, {far.tube_x, far.rim_y + 6}).points(),
      {1.4F + 1.6F * static_cast<float>(view.hands.pour)}, palette::water_edge);
  draw_bottle(canvas,
              {bottle, "", palette::paper, ink_of(view.in_hand), 0.7F, false, -78 - 25 * view.hands.pour});
}

}  // namespace

FarScale far_scale(const BenchPicture& picture) {
  constexpr float kSwungOut = 20.0F;
  FarScale far(picture.spec, picture.view.hands.clamp_mm);
  if (picture.view.over_edge) far.tube_x += kSwungOut;
  return far;
}

Rect far_clamp(const BenchPicture& picture) {
  const FarScale far = far_scale(picture);
  const float left = 24, y = clamp_y(far, true);
  return {left, y - 13, far.tube_x + 12 - left, 26};
}

Rect far_eye(const BenchSpec& spec, double eye_mm) {
  const FarScale far(spec);
  const float y = std::clamp(far.y_of_mm(eye_mm), 16.0F, far.foot_y - 20);
  return {150, y - 14, 34, 28};
}

void draw_far_stand(Canvas& canvas, const BenchPicture& picture) { stand(canvas, FarScale(picture.spec)); }

void draw_far(Canvas& canvas, const BenchPicture& picture) {
  const FarScale far = far_scale(picture), stood(picture.spec);
  const View& view = picture.view;
  if (view.tile_laid) canvas.rect({stood.tube_x - 40, far.foot_y - 8, 80, 4}, palette::tile);
  if (view.over_edge) edge_of_bench(canvas, far);
  if (!view.held_aslant) {
    tube(canvas, far, picture);
    canvas.flush();
    graduations(canvas, far, picture.spec);
  }
  for (const bool upper : {true, false}) clamp(canvas, far, clamp_y(far, upper));
  receiver(canvas, stood, picture);
  if (view.funnel_in) draw_funnel(canvas, {far.tube_x, far.rim_y - 21}, 17, 15, 22, false);
  if (picture.outfit.liquid && !view.over_edge)
    frame(canvas, {stood.tube_x - 42, stood.tap_y - 18, 84, stood.foot_y - stood.tap_y + 20});
  eye_marker(canvas, far, picture);
  if (view.hands.pour > 0 && !view.held_aslant) bottle_pouring(canvas, far, view);
}

}  // namespace halfdrop

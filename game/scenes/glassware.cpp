#include "game/scenes/glassware.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/palette.h"

namespace halfdrop {

sf::Color screen_colour(const Rgb& light) { return {encode(light.r), encode(light.g), encode(light.b)}; }

Rgb mixed_light(const Rgb& one, const Rgb& other, double share) {
  return {one.r + (other.r - one.r) * share, one.g + (other.g - one.g) * share,
          one.b + (other.b - one.b) * share};
}

Rgb dimmed(const Rgb& light, double by) { return {light.r * by, light.g * by, light.b * by}; }

void draw_foot_shadow(Canvas& canvas, Point foot, float half_width, double strength) {
  canvas.soft_ellipse({foot.x + half_width * 0.10F, foot.y + 1}, half_width * 1.12F, half_width * 0.13F + 2,
                      half_width * 0.3F, faded(palette::shadow, strength * 0.55));
  canvas.soft_ellipse(foot, half_width * 0.96F, half_width * 0.06F + 1.5F, half_width * 0.12F,
                      faded(palette::shadow, strength));
}

Paint glass_shading(float left, float right, double strength) {
  return Paint::horizontal(left, right,
                           {{0, faded(palette::glass_edge, 0.62 * strength)},
                            {0.10F, faded(palette::glass_tint, 0.42 * strength)},
                            {0.24F, faded(sf::Color::White, 0.50 * strength)},
                            {0.38F, faded(palette::glass_tint, 0.12 * strength)},
                            {0.80F, faded(palette::glass_tint, 0.22 * strength)},
                            {0.92F, faded(palette::glass_edge, 0.26 * strength)},
                            {1, faded(palette::glass_edge, 0.70 * strength)}});
}

Paint water_shading(float left, float right, double strength) {
  return Paint::horizontal(left, right,
                           {{0, faded(palette::water_edge, strength)},
                            {0.25F, faded(palette::water, 0.80 * strength)},
                            {0.55F, faded(mixed(palette::water, sf::Color::White, 0.55), 0.75 * strength)},
                            {0.85F, faded(palette::water, 0.85 * strength)},
                            {1, faded(palette::water_edge, strength)}});
}

Point bottle_mouth(const Rect& rect) { return {rect.x + rect.w / 2, rect.y + rect.h * 0.10F}; }

namespace {

Points bottle_outline(const Rect& r, float inset) {
  const float l = r.x + inset, rr = r.right() - inset, b = r.bottom() - inset, cx = r.x + r.w / 2;
  const float neck = r.w * 0.20F - inset, shoulder = r.y + r.h * 0.36F, neck_base = r.y + r.h * 0.20F;
  const Points left = Path({cx - neck, r.y + r.h * 0.10F})
                          .line({cx - neck, neck_base})
                          .cubic({cx - neck, neck_base + r.h * 0.07F}, {l, shoulder - r.h * 0.10F},
                                 {l, shoulder + r.h * 0.03F})
                          .line({l, b - 9})
                          .quad({l, b}, {l + 9, b})
                          .points();
  Points all = left;
  const Points right = mirrored_in_x(left, cx);
  all.insert(all.end(), right.begin(), right.end());
  (void)rr;
  return all;
}

void bottle_label(Canvas& canvas, const BottleLook& look) {
  const Rect& r = look.rect;
  const Rect paper{r.x + 5, r.y + r.h * 0.46F, r.w - 10, r.h * 0.42F};
  canvas.rect(paper, Paint::horizontal(paper.x, paper.right(),
                                       {{0, mixed(look.paper, palette::shadow, 0.16)},
                                        {0.3F, look.paper},
                                        {0.75F, look.paper},
                                        {1, mixed(look.paper, palette::shadow, 0.2)}}));
  canvas.rect({paper.x, paper.y + 4, paper.w, 2.5F}, faded(look.ink, 0.85));
  canvas.rect({paper.x, paper.bottom() - 6.5F, paper.w, 2.5F}, faded(look.ink, 0.85));
  TextStyle style{12.5F, look.ink, Face::semibold, Align::centre};
  auto lines = canvas.wrapped(look.label, paper.w - 6, style);
  if (lines.size() > 4) {
    style.size = 11.5F;
    lines = canvas.wrapped(look.label, paper.w - 4, style);
  }
  const float step = style.size + 1.5F;
  float y = paper.y + paper.h / 2 - step * static_cast<float>(lines.size()) / 2 + step / 2;
  for (const std::string& line : lines) {
    canvas.text_middle(line, {paper.x + paper.w / 2, y}, style);
    y += step;
  }
}

}  // namespace

void draw_bottle(Canvas& canvas, const BottleLook& look) {
  const Rect& r = look.rect;
  const Point mouth = bottle_mouth(r);
  const auto turn = [&](const Points& points) { return turned(points, mouth, look.turned_degrees); };
  const bool held = look.turned_degrees != 0;
  if (!held) draw_foot_shadow(canvas, {r.x + r.w / 2, r.bottom() - 2}, r.w * 0.5F, 0.4);
  const Points outer = turn(bottle_outline(r, 0));
  canvas.polygon(outer,
                 faded(look.brown ? palette::brown_glass : palette::glass_tint, look.brown ? 0.92 : 0.45));
  const float level = r.y + r.h * (0.40F + 0.58F * (1 - std::clamp(look.fill, 0.0F, 1.0F)));
  if (look.fill > 0.01F && !held) {
    canvas.rounded_rect({r.x + 4, level, r.w - 8, r.bottom() - 4 - level}, 6,
                        water_shading(r.x, r.right(), 0.85));
    canvas.ellipse({r.x + r.w / 2, level}, r.w / 2 - 4, 3, faded(sf::Color::White, 0.7));
  }
  if (held) canvas.polygon(turn(bottle_outline(r, 3)), faded(palette::water, 0.7));
  if (!held) {
    canvas.polygon(outer, glass_shading(r.x, r.right()));
    bottle_label(canvas, look);
    canvas.rounded_rect({r.x + 9, r.y + r.h * 0.40F, 5, r.h * 0.54F}, 2.5F, faded(sf::Color::White, 0.5));
  } else {
    const Rect paper{r.x + 3, r.y + r.h * 0.46F, r.w - 6, r.h * 0.42F};
    canvas.polygon(turn(rounded_rect_points(paper, 1)), look.paper);
  }
  canvas.stroke(outer, {1.3F, true}, faded(palette::glass_edge, 0.9));
  if (!held) {
    const Rect cap{mouth.x - r.w * 0.24F, r.y, r.w * 0.48F, r.h * 0.125F};
    canvas.rounded_rect(cap, 3,
                        Paint::horizontal(cap.x, cap.right(),
                                          {{0, mixed(look.ink, palette::shadow, 0.35)},
                                           {0.3F, mixed(look.ink, sf::Color::White, 0.25)},
                                           {1, mixed(look.ink, palette::shadow, 0.5)}}));
  }
}

Point wash_spout(const Rect& rect) { return {rect.right() + 22, rect.y + 20}; }

void draw_wash_bottle(Canvas& canvas, const Rect& r) {
  const float cx = r.x + r.w / 2, shoulder = r.y + r.h * 0.42F, neck = r.y + r.h * 0.27F;
  draw_foot_shadow(canvas, {cx, r.bottom() - 2}, r.w * 0.48F, 0.36);
  const Points left = Path({cx - r.w * 0.18F, neck})
                          .cubic({cx - r.w * 0.2F, neck + 14}, {r.x, shoulder - 16}, {r.x, shoulder + 8})
                          .line({r.x, r.bottom() - 9})
                          .quad({r.x, r.bottom()}, {r.x + 9, r.bottom()})
                          .points();
  Points body = left;
  const Points right = mirrored_in_x(left, cx);
  body.insert(body.end(), right.begin(), right.end());
  canvas.stroke(Path({cx, neck})
                    .line({cx, r.y + 14})
                    .quad({cx + 2, r.y - 2}, {cx + 16, r.y + 2})
                    .line(wash_spout(r))
                    .points(),
                {4.5F, false, true}, mixed(palette::cloth_shade, palette::glass_edge, 0.25));
  canvas.stroke(
      Path({cx - 1, neck}).line({cx - 1, r.y + 14}).quad({cx + 1, r.y - 2}, {cx + 15, r.y + 2}).points(),
      {1.2F}, faded(sf::Color::White, 0.9));
  canvas.polygon(
      body, Paint::horizontal(
                r.x, r.right(),
                {{0, rgb(0xb9c8cc)}, {0.25F, rgb(0xfafcfc)}, {0.6F, rgb(0xeef3f3)}, {1, rgb(0xa8babf)}}));
  const float level = r.y + r.h * 0.55F;
  canvas.rounded_rect({r.x + 3, level, r.w - 6, r.bottom() - 3 - level}, 7, faded(palette::water, 0.5));
  canvas.stroke(body, {1.3F, true}, faded(palette::glass_edge, 0.85));
  const Rect cap{cx - r.w * 0.22F, neck - 16, r.w * 0.44F, 18};
  canvas.rounded_rect(
      cap, 3,
      Paint::horizontal(cap.x, cap.right(),
                        {{0, palette::rubber}, {0.3F, palette::rubber_light}, {1, palette::rubber}}));
  canvas.text_middle(say("bench.water"), {cx, r.y + r.h * 0.72F},
                     {15, palette::accent, Face::semibold, Align::centre});
}

void draw_dropper_bottle(Canvas& canvas, const Rect& r, const std::string& label) {
  const float cx = r.x + r.w / 2, top = r.y + r.h * 0.42F;
  draw_foot_shadow(canvas, {cx, r.bottom() - 2}, r.w * 0.5F, 0.4);
  const Points body = Path({cx - r.w * 0.2F, top})
                          .line({cx + r.w * 0.2F, top})
                          .cubic({cx + r.w * 0.22F, top + 10}, {r.right(), top + 8}, {r.right(), top + 22})
                          .line({r.right(), r.bottom() - 5})
                          .quad({r.right(), r.bottom()}, {r.right() - 5, r.bottom()})
                          .line({r.x + 5, r.bottom()})
                          .quad({r.x, r.bottom()}, {r.x, r.bottom() - 5})
                          .line({r.x, top + 22})
                          .cubic({r.x, top + 8}, {cx - r.w * 0.22F, top + 10}, {cx - r.w * 0.2F, top})
                          .points();
  canvas.polygon(
      body,
      Paint::horizontal(
          r.x, r.right(),
          {{0, rgb(0x5a3416)}, {0.22F, rgb(0xb4773c)}, {0.45F, palette::brown_glass}, {1, rgb(0x482a12)}}));
  canvas.rounded_rect(
      {cx - r.w * 0.25F, top - 12, r.w * 0.5F, 15}, 2,
      Paint::horizontal(r.x, r.right(),
                        {{0.2F, rgb(0x22282b)}, {0.4F, rgb(0x5a6569)}, {0.8F, rgb(0x1b2022)}}));
  canvas.polygon(
      Path({cx - 6, top - 12})
          .cubic({cx - 11, top - 26}, {cx - 9, r.y}, {cx, r.y})
          .cubic({cx + 9, r.y}, {cx + 11, top - 26}, {cx + 6, top - 12})
          .points(),
      Paint::horizontal(cx - 9, cx + 9, {{0, rgb(0x8c3a33)}, {0.35F, rgb(0xcc766a)}, {1, rgb(0x6d2a25)}}));
  const Rect paper{r.x + 2, r.bottom() - 46, r.w - 4, 36};
  canvas.rect(paper, Paint::horizontal(paper.x, paper.right(),
                                       {{0, palette::paper_shade},
                                        {0.35F, palette::paper},
                                        {1, mixed(palette::paper_shade, palette::shadow, 0.15)}}));
  const TextStyle style{12, palette::print, Face::semibold, Align::centre};
  const auto lines = canvas.wrapped(label, paper.w - 4, style);
  float y = paper.centre().y - 7 * static_cast<float>(lines.size() - 1);
  for (const std::string& line : lines) {
    canvas.text_middle(line, {paper.centre().x, y}, style);
    y += 14;
  }
}

void draw_beaker(Canvas& canvas, const Rect& r, float fill, const std::string& word) {
  const float cx = r.x + r.w / 2, half = r.w / 2;
  draw_foot_shadow(canvas, {cx, r.bottom() - 2}, half * 0.96F, 0.42);
  const Points body = Path({r.x, r.y})
                          .line({r.x + 4, r.y + 8})
                          .line({r.x + 4, r.bottom() - 12})
                          .quad({r.x + 4, r.bottom()}, {r.x + 18, r.bottom()})
                          .line({r.right() - 18, r.bottom()})
                          .quad({r.right() - 4, r.bottom()}, {r.right() - 4, r.bottom() - 12})
                          .line({r.right() - 4, r.y + 8})
                          .line({r.right(), r.y})
                          .points();
  if (fill > 0.0F) {
    const float level = r.bottom() - 4 - (r.h - 24) * std::min(1.0F, fill);
    canvas.rounded_rect({r.x + 7, level, r.w - 14, r.bottom() - 3 - level}, 9,
                        water_shading(r.x + 7, r.right() - 7, 0.8));
    canvas.ellipse({cx, level}, half - 7, 4.5F, faded(sf::Color::White, 0.55));
    canvas.stroke(ellipse_points({cx, level}, half - 7, 4.5F), {0.9F, true}, faded(palette::water_edge, 0.9));
  }
  canvas.polygon(body, glass_shading(r.x + 4, r.right() - 4, 0.8));
  canvas.stroke(body, {1.8F}, faded(palette::glass_edge, 0.9));
  canvas.stroke(ellipse_points({cx, r.y}, half, 5), {1.6F, true}, faded(palette::glass_edge, 0.9));
  canvas.rounded_rect({r.x + 13, r.y + 14, 5, r.h - 40}, 2.5F, faded(sf::Color::White, 0.6));
  canvas.text_middle(word, {cx + 4, r.y + r.h * 0.40F}, {16, palette::accent, Face::italic, Align::centre});
}

void draw_funnel(Canvas& canvas, Point rim, float half, float cone, float stem, bool upside_down) {
  const float s = upside_down ? -1.0F : 1.0F, narrow = half * 0.14F + 0.8F;
  const Points body{{rim.x - half, rim.y},
                    {rim.x + half, rim.y},
                    {rim.x + narrow, rim.y + s * cone},
                    {rim.x + narrow * 0.8F, rim.y + s * (cone + stem)},
                    {rim.x - narrow * 0.8F, rim.y + s * (cone + stem)},
                    {rim.x - narrow, rim.y + s * cone}};
  canvas.polygon(body, faded(palette::cloth, 0.55));
  canvas.polygon(body, glass_shading(rim.x - half, rim.x + half));
  canvas.stroke(body, {1.2F, true}, faded(palette::glass_edge, 0.95));
  canvas.ellipse(rim, half, half * 0.12F + 0.5F, faded(palette::glass_tint, 0.6));
  canvas.stroke(ellipse_points(rim, half, half * 0.12F + 0.5F), {1.2F, true},
                faded(palette::glass_edge, 0.95));
}

}  // namespace halfdrop

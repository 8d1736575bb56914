#include "game/scenes/making_up_panel.h"

#include <algorithm>
#include <array>
#include <cstdio>

#include "game/level/say.h"
#include "game/scenes/eye_neck.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/glassware.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

constexpr float kFrame = 8.0F, kLineHeight = 28.0F, kLargeLineHeight = 36.0F, kMargin = 6.0F;
constexpr float kLargeWords = 29.0F;  ///< 4 % of the height
constexpr double kTipsOut = 0.7, kTipsGently = 0.25, kLetsIn = 1.0, kLetsInGently = 0.12;

Rect inside(const Rect& area) { return EyePicture::frame(area).grown(-kFrame); }

Rect line_rect(const Rect& area, std::size_t line, bool large) {
  const Rect in = inside(area);
  const auto count = static_cast<float>(making_up_lines().size());
  const float high = large ? kLargeLineHeight : kLineHeight, top = in.bottom() - kMargin - count * high;
  return {in.x + kMargin, top + static_cast<float>(line) * high, in.w - 2 * kMargin, high - 3};
}

Rect picture_rect(const Rect& area, bool large) {
  const Rect in = inside(area);
  return {in.x, in.y, in.w, line_rect(area, 0, large).y - kMargin - in.y};
}

std::string grams(double shown_g) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.3f g", shown_g);
  return text.data();
}

std::string line_words(std::size_t line, const PreparationView& work, bool large) {
  const std::string count = std::to_string(work.inversions);
  switch (line) {
    case 0:
      return large ? say("making_up.tip_short") : say("making_up.tip");
    case 1:
      return large ? say("making_up.dissolve_short") : say("making_up.dissolve");
    case 2:
      return large ? say("making_up.pour_short") : say("making_up.pour");
    case 3:
      return large ? say("making_up.rinse_short") : say("making_up.rinse");
    case 4:
      return large ? say("making_up.let_in_short") : say("making_up.let_in");
    default:
      return large ? say("making_up.invert_short", {{"count", count}})
                   : say("making_up.invert", {{"count", count}});
  }
}

/// A squat glass with a lid, solid in it.
void draw_weighing_bottle(Canvas& canvas, Point foot, bool tilted) {
  const Rect glass{foot.x - 15, foot.y - 40, 30, 40};
  if (tilted) canvas.lean({glass.x, glass.y}, -1.9);
  canvas.rounded_rect({glass.x + 2, glass.bottom() - 15, glass.w - 4, 13}, 3, rgb(0xffffff));
  canvas.rounded_rect(glass, 4, glass_shading(glass.x, glass.right(), 0.8));
  canvas.stroke(rounded_rect_points(glass, 4), {1.4F, true}, palette::glass_edge);
  if (!tilted) canvas.rounded_rect({glass.x - 2, glass.y - 6, glass.w + 4, 7}, 3, palette::glass_edge);
  canvas.upright();
}

/// It shows what stands on its pan; with the bottle in the hand, nothing.
void draw_balance(Canvas& canvas, const Rect& place, const PreparationView& work, bool tilted) {
  const float pan_y = place.bottom() - 52;
  canvas.rounded_rect({place.x + 14, pan_y, place.w - 28, 6}, 3, palette::steel_light);
  canvas.rect({place.centre().x - 5, pan_y + 6, 10, 6}, palette::steel);
  const Rect body{place.x, pan_y + 12, place.w, 40};
  canvas.rounded_rect(
      body, 6, Paint::vertical(body.y, body.bottom(), {{0, palette::ptfe}, {1, palette::steel_light}}));
  canvas.stroke(rounded_rect_points(body, 6), {1.2F, true}, palette::steel_dark);
  const Rect window = Rect{body.x + 6, body.y + 7, body.w - 12, 26};
  canvas.rounded_rect(window, 3, rgb(0xdfe8d6));
  canvas.text_middle(tilted ? "0.000 g" : grams(work.shown_g), {window.right() - 5, window.centre().y},
                     {19, palette::scale_print, Face::bold, Align::right});
  if (!tilted) draw_weighing_bottle(canvas, {place.centre().x, pan_y}, false);
}

void draw_solid(Canvas& canvas, const Rect& beaker, double out_g) {
  const auto heap = static_cast<float>(std::min(1.0, out_g / 1.5));
  if (heap <= 0.0F) return;
  const float y = beaker.bottom() - 5;
  canvas.polygon(Path({beaker.x + 10, y})
                     .quad({beaker.centre().x, y - 6 - 22 * heap}, {beaker.right() - 10, y})
                     .points(),
                 rgb(0xffffff));
}

void draw_at_work(Canvas& canvas, const Rect& place, const View& view, const BenchSpec& spec) {
  const PreparationView& work = view.preparation;
  const bool tilted = view.hands.tip > 0.0;
  canvas.rect(place,
              Paint::vertical(place.y, place.bottom(), {{0, palette::wall_light}, {1, palette::wall}}));
  const float foot = place.bottom() - 10;
  canvas.rect({place.x, foot - 4, place.w, 14}, palette::wood);
  const Rect beaker{place.x + 108, foot - 66, 54, 64};
  draw_balance(canvas, {place.x + 6, foot - 112, 98, 110}, work, tilted);
  if (work.dry_solid) draw_solid(canvas, beaker, work.out_g);
  draw_beaker(canvas, beaker, static_cast<float>(work.beaker_cm3 / 130.0), "");
  if (tilted) {
    draw_weighing_bottle(canvas, {beaker.centre().x + 26, beaker.y - 4}, true);
    if (work.solid_left)
      canvas.line({beaker.centre().x, beaker.y - 22}, {beaker.centre().x, beaker.bottom() - 14}, 2.4F,
                  rgb(0xffffff));
  }
  draw_volumetric(canvas, {place.right() - 72, place.y + 8, 66, foot - place.y - 10}, work, spec, "");
  canvas.flush();
}

void draw_line(Canvas& canvas, const Rect& at, std::size_t line, const View& view, bool large) {
  const bool held = (line == 0 && view.hands.tip > 0.0) || (line == 4 && view.hands.fill > 0.0);
  canvas.rounded_rect(at, 5, held ? palette::accent : rgb(0xffffff, 0.85));
  canvas.stroke(rounded_rect_points(at, 5), {1.1F, true}, palette::accent);
  const float size = large ? kLargeWords : 15.0F;
  canvas.text_middle(std::to_string(line + 1), {at.x + 9, at.centre().y},
                     {size + 1, held ? palette::pill_text : palette::tap_handle_dark, Face::bold});
  const std::string words = line_words(line, view.preparation, large);
  const TextStyle style{size, held ? palette::pill_text : palette::print, Face::semibold};
  const float from = large ? 36.0F : 26.0F;
  canvas.text_middle(words, {at.x + from, at.centre().y}, fitted(canvas, words, at.w - from - 6, style));
}

}  // namespace

const std::vector<MakingUpLine>& making_up_lines() {
  static const std::vector<MakingUpLine> lines = {{"tip-out", {}, Grip::tip},
                                                  {"dissolve", Deed::dissolve_standard},
                                                  {"pour-over", Deed::pour_into_volumetric},
                                                  {"rinse-in", Deed::rinse_into_volumetric},
                                                  {"let-in", {}, Grip::let_in},
                                                  {"turn-over", Deed::invert_volumetric}};
  return lines;
}

double making_up_strength(Grip grip, bool gently) {
  if (grip == Grip::tip) return gently ? kTipsGently : kTipsOut;
  return gently ? kLetsInGently : kLetsIn;
}

std::vector<Thing> making_up_things(const Rect& area, bool large) {
  std::vector<Thing> all;
  const std::vector<MakingUpLine>& lines = making_up_lines();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const bool holds = lines[i].grip != Grip::none;
    all.push_back({lines[i].name,
                   line_rect(area, i, large),
                   holds ? say("hint.making_up.hold", {{"key", std::to_string(i + 1)}})
                         : say("hint.making_up.click", {{"key", std::to_string(i + 1)}}),
                   lines[i].deed,
                   {},
                   lines[i].grip});
  }
  return all;
}

void draw_making_up(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec, bool large) {
  const Rect in = inside(area);
  canvas.flush();
  canvas.clip(in);
  canvas.rect(in, palette::paper_shade);
  if (view.preparation.in_neck) {
    draw_eye_neck(canvas, picture_rect(area, large), view.preparation, spec);
  } else {
    draw_at_work(canvas, picture_rect(area, large), view, spec);
  }
  for (std::size_t i = 0; i < making_up_lines().size(); ++i)
    draw_line(canvas, line_rect(area, i, large), i, view, large);
  canvas.flush();
  canvas.unclip();
  const float y = EyePicture::rail_y(area, kNeckLine_mm), x = EyePicture::rail(area).centre().x;
  canvas.line({x - 12, y}, {x + 12, y}, 3, palette::tap_handle);
  canvas.flush();
}

}  // namespace halfdrop

#include "game/scenes/eye_picture.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "game/scenes/eye_scene.h"
#include "game/scenes/eye_tube.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"
#include "physics/bench/hands.h"

namespace halfdrop {

namespace {

constexpr float kRailWidth = 62.0F;
constexpr double kRailTop_mm = 300.0, kRailFoot_mm = -700.0;  ///< of the eye, over the zero mark
constexpr float kFrame = 8.0F;                                ///< width of the frame
constexpr double kLeastSeen_mm = 18.0;                        ///< of the tube's length, top to bottom
constexpr double kTubeShare = 0.86;                           ///< of the picture's width
constexpr float kBenchBegins = 500.0F;  ///< a rail that reaches the dark bench has a plate behind it
const sf::Color kDarkCard = rgb(0x27343a);

/// Says where to look when the meniscus is out of the picture.
void draw_way(const EyePane& pane) {
  if (!pane.scene.has_liquid()) return;
  const double y_mm = pane.scene.lower_edge_mm(0.0);
  const bool lower = y_mm<pane.bottom_mm(), higher = y_mm> pane.top_mm();
  if (!lower && !higher) return;
  const Rect& in = pane.inner;
  const float y = lower ? in.bottom() - 24 : in.y + 24;
  pane.canvas.rounded_rect({in.centre().x - 80, y - 14, 160, 28}, 14, palette::pill);
  const Phrase words = lower ? words::kMeniscusLower : words::kMeniscusHigher;
  const TextStyle style{15, palette::pill_text, Face::semibold, Align::centre};
  pane.canvas.text_middle(words, {in.centre().x, y}, fitted(pane.canvas, words, 152, style));
}

/// Nothing stands in its clamps to be read.
void draw_no_burette(Canvas& canvas, const Rect& in) {
  canvas.rect(in, Paint::vertical(in.y, in.bottom(), {{0, palette::wall}, {1, palette::wall_shade}}));
  canvas.text_middle(words::kBuretteInHand, in.centre(), {15, palette::print, Face::semibold, Align::centre});
}

void draw_picture(Canvas& canvas, const Rect& frame, const EyePane& pane, bool in_hand) {
  canvas.soft_rect({frame.x + 2, frame.y + 6, frame.w, frame.h}, 16, 12, faded(palette::shadow, 0.22));
  canvas.rounded_rect(frame, 18, palette::accent);
  canvas.rounded_rect(frame.grown(-2), 16, rgb(0xfffdf8));
  canvas.clip(pane.inner);
  if (in_hand) {
    draw_no_burette(canvas, pane.inner);
  } else {
    draw_eye_tube(pane);
    canvas.flush();
    draw_way(pane);
  }
  canvas.flush();
  canvas.unclip();
  // The frame's round inner corners, and the shade it throws.
  const Rect& in = pane.inner;
  canvas.stroke(rounded_rect_points(in.grown(1.5F), 9), {5, true}, rgb(0xfffdf8));
  canvas.stroke(rounded_rect_points(in.grown(-1), 8), {1.2F, true}, rgb(0x241d15, 0.22));
  canvas.rect({in.x, in.y, in.w, 7},
              Paint::vertical(in.y, in.y + 7, {{0, rgb(0x241d15, 0.16)}, {1, rgb(0x241d15, 0.0)}}));
}

void draw_eye(Canvas& canvas, Point at, double look_down) {
  const Points almond = Path({at.x - 19, at.y})
                            .quad({at.x - 2, at.y - 18}, {at.x + 18, at.y})
                            .quad({at.x - 2, at.y + 18}, {at.x - 19, at.y})
                            .points();
  canvas.soft_ellipse({at.x, at.y + 4}, 16, 8, 6, faded(palette::shadow, 0.25));
  canvas.polygon(almond, rgb(0xffffff));
  const Point iris{at.x - 3, at.y + static_cast<float>(std::clamp(look_down * 9.0, -3.0, 3.0))};
  canvas.circle(iris, 6.4F, palette::accent);
  canvas.circle(iris, 3.0F, rgb(0x10242d));
  canvas.circle({iris.x - 2.1F, iris.y - 2.2F}, 1.6F, rgb(0xffffff, 0.9));
  canvas.stroke(almond, {2.2F, true}, palette::accent);
}

void draw_card_handle(Canvas& canvas, const Rect& card) {
  canvas.soft_rect({card.x + 1, card.y + 2, card.w, card.h}, 2, 3, faded(palette::shadow, 0.3));
  canvas.rect(card, rgb(0xfdfcf8));
  canvas.rect({card.x, card.centre().y, card.w, card.h / 2}, kDarkCard);
  canvas.stroke(rounded_rect_points(card, 1), {1, true}, palette::accent);
}

void draw_rail(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec, double look_down) {
  const Rect rail = EyePicture::rail(area);
  const float x = rail.centre().x;
  if (rail.bottom() > kBenchBegins)
    canvas.rounded_rect({rail.x - 6, rail.y - 9, rail.w + 22, rail.h + 18}, 12, rgb(0xf7f3ea, 0.9));
  canvas.rounded_rect({x - 2, rail.y, 4, rail.h}, 2, faded(palette::accent, 0.30));
  // The burette's scale along the rail.
  const float zero = EyePicture::rail_y(area, 0),
              last = EyePicture::rail_y(area, -spec.burette.scale_length_mm);
  canvas.rounded_rect({x - 2, zero, 4, last - zero}, 2, faded(palette::accent, 0.62));
  const TextStyle style{13, palette::print, Face::regular, Align::left};
  for (const auto& [y, figure] : {std::pair{zero, 0.0}, std::pair{last, spec.burette.nominal_cm3}}) {
    canvas.line({x - 5, y}, {x + 5, y}, 2, palette::accent);
    canvas.text_middle(std::to_string(static_cast<int>(figure)), {x + 22, y}, style);
  }
  canvas.flush();
  draw_card_handle(canvas, EyePicture::card_handle(area, view.hands.card_mm));
  draw_eye(canvas, {x, EyePicture::rail_y(area, eye_above_zero_mm(view.hands))}, look_down);
}

}  // namespace

Rect EyePicture::frame(const Rect& area) { return {area.x, area.y, area.w - kRailWidth, area.h}; }

Rect EyePicture::rail(const Rect& area) {
  return {area.right() - kRailWidth + 14, area.y + 12, kRailWidth - 14, area.h - 24};
}

float EyePicture::rail_y(const Rect& area, double eye_mm) {
  const Rect r = rail(area);
  const double share = (kRailTop_mm - eye_mm) / (kRailTop_mm - kRailFoot_mm);
  return r.y + r.h * static_cast<float>(std::clamp(share, 0.0, 1.0));
}

double EyePicture::eye_mm_at(const Rect& area, float y) {
  const Rect r = rail(area);
  const double share = std::clamp(static_cast<double>((y - r.y) / r.h), 0.0, 1.0);
  return kRailTop_mm - share * (kRailTop_mm - kRailFoot_mm);
}

Rect EyePicture::eye_handle(const Rect& area, double eye_mm) {
  return {rail(area).centre().x - 20, rail_y(area, eye_mm) - 16, 44, 32};
}

Rect EyePicture::card_handle(const Rect& area, double card_mm) {
  return {rail(area).centre().x - 35, rail_y(area, card_mm) - 10, 14, 20};
}

double EyePicture::units_per_mm(const Rect& area, const BenchSpec& spec) {
  const Rect inner = frame(area).grown(-kFrame);
  return std::min(static_cast<double>(inner.w) * kTubeShare / (2.0 * spec.burette.outer_half_width_mm),
                  static_cast<double>(inner.h) / kLeastSeen_mm);
}

void EyePicture::draw(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec) {
  const EyeScene scene(view, spec);
  canvas.flush();
  const EyePane pane{canvas, scene, frame(area).grown(-kFrame), units_per_mm(area, spec), scene.gaze_mm()};
  draw_picture(canvas, frame(area), pane, view.held_aslant);
  canvas.flush();
  draw_rail(canvas, area, view, spec, scene.has_liquid() ? scene.look_down() : 0.0);
  canvas.flush();
}

}  // namespace halfdrop

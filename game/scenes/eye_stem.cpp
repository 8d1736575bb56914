#include "game/scenes/eye_stem.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "game/level/say.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/palette.h"
#include "physics/bench/pipette_by_hand.h"

namespace halfdrop {

namespace {

constexpr float kFrame = 8.0F;
constexpr double kShows_mm = 24.0;  ///< of the stem, top to bottom

/// The stem on the screen: heights above the line as the eye sees them on the stem's front.
struct Stem {
  Canvas& canvas;
  Rect inner;
  float per_mm, line_y, outer, bore;
  float round;  ///< how much a ring opens: its half height over its half width

  [[nodiscard]] float y(double above_line_mm) const {
    return line_y - static_cast<float>(above_line_mm) * per_mm;
  }
  [[nodiscard]] Points half_ring(float y, float half_width, bool far) const {
    constexpr int kPieces = 24;
    Points points;
    for (int i = 0; i <= kPieces; ++i) {
      const double angle = kPi * i / kPieces;
      const float down = half_width * round * static_cast<float>(std::sin(angle));
      points.push_back(
          {inner.centre().x - half_width * static_cast<float>(std::cos(angle)), y + (far ? -down : down)});
    }
    return points;
  }
};

/// A ring's near half comes forward by the tube's radius, so that it is seen where the eye's height puts it.
Stem stem_of(Canvas& canvas, const Rect& inner, const PipetteView& pipette, const BenchSpec& spec) {
  const SightGeometry& sight = spec.settled.stem_sight;
  const auto per_mm = static_cast<float>(inner.h / kShows_mm);
  const double slope = pipette.eye_above_mm / sight.eye_distance_mm;
  const auto outer = static_cast<float>(sight.outer_mm) * per_mm;
  const auto round = static_cast<float>(std::clamp(slope, -2.0, 2.0) / std::sqrt(1.0 + slope * slope));
  return {canvas, inner, per_mm, inner.centre().y, outer, static_cast<float>(sight.bore_mm) * per_mm, round};
}

void draw_liquid(const Stem& stem, const PipetteView& pipette) {
  if (!pipette.holds) return;
  const float edge = std::clamp(stem.y(pipette.seen_mm), stem.inner.y - 60, stem.inner.bottom() + 60);
  const float left = stem.inner.centre().x - stem.bore, right = stem.inner.centre().x + stem.bore;
  const Paint water = Paint::horizontal(
      left, right, {{0, palette::water_edge}, {0.5F, palette::water}, {1, palette::water_edge}});
  // The surface climbs the wall; its lower edge is what is read.
  const float climb = stem.bore * 0.62F;
  Points liquid;
  for (int i = 0; i <= 24; ++i) {
    const float across = 2.0F * static_cast<float>(i) / 24.0F - 1.0F;
    liquid.push_back({stem.inner.centre().x + across * stem.bore, edge - climb * across * across});
  }
  Points dark = liquid;
  liquid.push_back({right, std::max(stem.inner.bottom() + 70, edge)});
  liquid.push_back({left, std::max(stem.inner.bottom() + 70, edge)});
  stem.canvas.polygon(liquid, water);
  for (Point& point : dark) point.y -= 2.2F;
  stem.canvas.stroke(dark, {5.0F}, faded(palette::scale_print, 0.85));
}

void draw_glass(const Stem& stem) {
  const float x = stem.inner.centre().x;
  for (const float side : {-1.0F, 1.0F}) {
    const float from = x + side * stem.bore, to = x + side * stem.outer;
    const Rect wall{std::min(from, to), stem.inner.y, std::abs(to - from), stem.inner.h};
    stem.canvas.rect(wall, Paint::horizontal(wall.x, wall.right(),
                                             {{0, faded(palette::glass_edge, 0.5)},
                                              {0.5F, faded(sf::Color::White, 0.6)},
                                              {1, faded(palette::glass_edge, 0.5)}}));
    stem.canvas.line({to, stem.inner.y}, {to, stem.inner.bottom()}, 1.6F, palette::glass_edge);
  }
}

/// The line's two halves lie on each other for an eye that is level with it.
void draw_ring(const Stem& stem) {
  const float middle = stem.line_y - stem.outer * stem.round;
  stem.canvas.stroke(stem.half_ring(middle, stem.outer, true), {1.6F}, faded(palette::scale_print, 0.45));
  stem.canvas.stroke(stem.half_ring(middle, stem.outer, false), {2.6F}, palette::scale_print);
}

void draw_words(const Stem& stem, const PipetteView& pipette) {
  const Rect& in = stem.inner;
  std::string words = "pipette's line";
  if (pipette.holds && stem.y(pipette.seen_mm) < in.y) words = say("eye.level_higher");
  if (pipette.holds && stem.y(pipette.seen_mm) > in.bottom()) words = say("eye.level_lower");
  stem.canvas.rounded_rect({in.centre().x - 80, in.bottom() - 34, 160, 26}, 13, palette::pill);
  stem.canvas.text_middle(words, {in.centre().x, in.bottom() - 21},
                          {15, palette::pill_text, Face::semibold, Align::centre});
}

/// Where the line is beside the scale, to the right of the eye when that is level with it.
void mark_on_rail(Canvas& canvas, const Rect& area, const Hands& hands) {
  const float y = EyePicture::rail_y(area, kPipetteLine_mm - hands.clamp_mm),
              x = EyePicture::rail(area).centre().x;
  canvas.line({x + 5, y}, {x + 21, y}, 3, palette::tap_handle);
  canvas.text_middle(say("eye.line"), {x + 24, y}, {14, palette::tap_handle_dark, Face::bold});
}

}  // namespace

bool looks_at_stem(const PipetteView& pipette) {
  if (!pipette.by_hand) return false;
  return pipette.place == PipettePlace::dipped || (pipette.place == PipettePlace::aside && pipette.holds);
}

void draw_eye_stem(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec) {
  const PipetteView& pipette = view.pipette;
  const Rect inner = EyePicture::frame(area).grown(-kFrame);
  const Stem stem = stem_of(canvas, inner, pipette, spec);
  canvas.flush();
  canvas.clip(inner);
  canvas.rect(inner,
              Paint::vertical(inner.y, inner.bottom(), {{0, palette::wall_light}, {1, palette::wall}}));
  draw_liquid(stem, pipette);
  draw_glass(stem);
  draw_ring(stem);
  draw_words(stem, pipette);
  canvas.flush();
  canvas.unclip();
  mark_on_rail(canvas, area, view.hands);
  canvas.flush();
}

}  // namespace halfdrop

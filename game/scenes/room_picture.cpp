#include "game/scenes/room_picture.h"

#include "game/scenes/bench_layout.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

/// A pane of the window's light on the wall, slanting down to the left.
void light_pane(Canvas& canvas, float left, float right, float top, float bottom) {
  constexpr float slant = 0.42F;
  const auto at = [](float x, float y) { return Point{x - slant * y, y}; };
  const Paint light = Paint::vertical(
      top, bottom, {{0, faded(palette::daylight, 0.85)}, {1, faded(palette::daylight, 0.30)}});
  // Soft borders: the same pane a little larger and paler each time.
  for (const float grow : {0.0F, 3.0F, 6.0F}) {
    const Paint& part = light;
    canvas.polygon({at(left - grow, top - grow), at(right + grow, top - grow),
                    at(right + grow, bottom + grow), at(left - grow, bottom + grow)},
                   grow == 0.0F ? part
                                : Paint::vertical(top, bottom,
                                                  {{0, faded(palette::daylight, 0.22)},
                                                   {1, faded(palette::daylight, 0.08)}}));
  }
}

void wall(Canvas& canvas, const Rect& all) {
  canvas.rect({all.x, all.y, all.w, layout::kHorizon - all.y},
              Paint::along({all.x, all.y}, {all.right(), layout::kHorizon + 120},
                           {{0, palette::wall_light}, {0.5F, palette::wall}, {1, palette::wall_shade}}));
  for (const float x : {400.0F, 566.0F}) {
    light_pane(canvas, x, x + 156, 6, 206);
    light_pane(canvas, x, x + 156, 218, 418);
  }
  // The wall darkens towards the bench.
  canvas.rect({all.x, layout::kHorizon - 110, all.w, 110},
              Paint::vertical(layout::kHorizon - 110, layout::kHorizon,
                              {{0, faded(palette::bench, 0.0)}, {1, faded(palette::bench, 0.16)}}));
}

void bench_top(Canvas& canvas, const Rect& all) {
  const float top = layout::kHorizon;
  canvas.rect({all.x, top, all.w, all.bottom() - top},
              Paint::vertical(top, 720,
                              {{0, palette::bench_edge}, {0.06F, palette::bench}, {1, palette::bench_deep}}));
  canvas.rect({all.x, top - 1, all.w, 3}, faded(palette::wall_light, 0.35));
  // Daylight lies on the top as a broad sheen.
  canvas.glow({430, 596}, 420, 62,
              {{0, faded(palette::daylight, 0.20)},
               {0.5F, faded(palette::daylight, 0.10)},
               {1, faded(palette::daylight, 0)}});
  canvas.glow({1010, 580}, 360, 46, {{0, faded(palette::daylight, 0.10)}, {1, faded(palette::daylight, 0)}});
}

void shelf(Canvas& canvas, float left, float right) {
  const float y = layout::kShelfY;
  canvas.soft_rect({left + 6, y + 14, right - left, 16}, 6, 12, faded(palette::shadow, 0.22));
  for (const float x : {left + 26, right - 38}) {
    canvas.polygon({{x, y + 10}, {x + 12, y + 10}, {x + 12, y + 14}, {x + 5, y + 26}, {x, y + 26}},
                   Paint::horizontal(x, x + 12, {{0, palette::steel}, {1, palette::steel_dark}}));
  }
  canvas.rect({left, y - 5, right - left, 6}, mixed(palette::wood, palette::daylight, 0.45));
  canvas.rect({left, y, right - left, 11},
              Paint::vertical(y, y + 11,
                              {{0, palette::wood},
                               {0.25F, mixed(palette::wood, palette::wood_dark, 0.3)},
                               {1, palette::wood_dark}}));
}

}  // namespace

void draw_room(Canvas& canvas) {
  const Rect all = canvas.window().grown(2);
  wall(canvas, all);
  bench_top(canvas, all);
  shelf(canvas, 198, 376);
  shelf(canvas, 526, 850);
}

}  // namespace halfdrop

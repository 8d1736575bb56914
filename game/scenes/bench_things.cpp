#include <algorithm>

#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"

namespace halfdrop {

void draw_cloth(Canvas& canvas, const Rect& r) {
  canvas.circle({r.x + r.w / 2, r.y - 3}, 3.5F, palette::steel_dark);
  canvas.soft_rect({r.x + 5, r.y + 8, r.w, r.h - 6}, 6, 8, faded(palette::shadow, 0.2));
  const Points cloth =
      Path({r.x + r.w * 0.5F, r.y - 2})
          .cubic({r.x + r.w * 0.8F, r.y + 4}, {r.right(), r.y + 18}, {r.right() - 3, r.y + 40})
          .cubic({r.right() - 7, r.y + 60}, {r.right() + 1, r.bottom() - 10}, {r.right() - 4, r.bottom()})
          .quad({r.x + r.w * 0.75F, r.bottom() - 6}, {r.x + r.w * 0.5F, r.bottom() + 3})
          .quad({r.x + r.w * 0.25F, r.bottom() - 4}, {r.x + 2, r.bottom() - 4})
          .cubic({r.x + 6, r.bottom() - 30}, {r.x - 2, r.y + 50}, {r.x + 5, r.y + 32})
          .cubic({r.x + 8, r.y + 12}, {r.x + r.w * 0.35F, r.y + 3}, {r.x + r.w * 0.5F, r.y - 2})
          .points();
  canvas.polygon(cloth, Paint::horizontal(r.x, r.right(),
                                          {{0, rgb(0xc9d6d4)},
                                           {0.2F, rgb(0xeef3ef)},
                                           {0.4F, rgb(0xb9c9c8)},
                                           {0.6F, rgb(0xe9f0ec)},
                                           {0.82F, rgb(0xaebfbf)},
                                           {1, rgb(0xd5dfdc)}}));
  for (const float at : {0.80F, 0.87F}) {
    canvas.stroke(Path({r.x + 3, r.y + r.h * at})
                      .quad({r.x + r.w * 0.5F, r.y + r.h * at + 7}, {r.right() - 5, r.y + r.h * at})
                      .points(),
                  {2.2F}, faded(palette::tap_handle, 0.65));
  }
}

void draw_leaning_tile(Canvas& canvas, const Rect& r) {
  canvas.soft_rect({r.x + 6, r.y + 8, r.w, r.h - 6}, 3, 9, faded(palette::shadow, 0.3));
  canvas.polygon({{r.x + 3, r.y}, {r.right() + 2, r.y + 3}, {r.right() - 1, r.bottom()}, {r.x, r.bottom()}},
                 Paint::along({r.x, r.y}, {r.right(), r.bottom()},
                              {{0, sf::Color::White}, {0.6F, palette::tile}, {1, rgb(0xdfe0dc)}}));
  canvas.polygon({{r.right() + 2, r.y + 3},
                  {r.right() + 6, r.y + 5},
                  {r.right() + 3, r.bottom() - 1},
                  {r.right() - 1, r.bottom()}},
                 rgb(0xb9bab5));
}

void draw_laid_tile(Canvas& canvas, const Rect& r) {
  const float inset = 30, front = r.bottom() - 8;
  canvas.soft_rect({r.x - 2, r.y + 12, r.w + 12, r.h}, 6, 14, faded(palette::shadow, 0.55));
  canvas.polygon({{r.x + inset, r.y}, {r.right() - inset, r.y}, {r.right(), front}, {r.x, front}},
                 Paint::vertical(r.y, front, {{0, rgb(0xf2f2ee)}, {1, sf::Color::White}}));
  canvas.polygon({{r.x, front}, {r.right(), front}, {r.right() - 1, r.bottom()}, {r.x + 1, r.bottom()}},
                 Paint::vertical(front, r.bottom(), {{0, rgb(0xd9dad5)}, {1, rgb(0xb4b5af)}}));
  canvas.line({r.x, front}, {r.right(), front}, 1, sf::Color::White);
}

void draw_sink(Canvas& canvas, const Rect& r) {
  // A water tap on the wall over a small ceramic sink let into the bench.
  const float cx = r.x + r.w * 0.50F;
  const Paint metal = Paint::horizontal(
      cx - 4, cx + 5, {{0, palette::steel_dark}, {0.35F, palette::steel_light}, {1, palette::steel_dark}});
  canvas.stroke(Path({cx + 22, r.y + 62})
                    .line({cx + 22, r.y + 24})
                    .cubic({cx + 22, r.y - 4}, {cx - 14, r.y - 4}, {cx - 14, r.y + 22})
                    .line({cx - 14, r.y + 40})
                    .points(),
                {8}, palette::steel_dark);
  canvas.stroke(Path({cx + 20.5F, r.y + 62})
                    .line({cx + 20.5F, r.y + 24})
                    .cubic({cx + 20.5F, r.y - 1}, {cx - 15.5F, r.y - 1}, {cx - 15.5F, r.y + 22})
                    .line({cx - 15.5F, r.y + 40})
                    .points(),
                {3.2F}, palette::steel_light);
  canvas.rounded_rect(
      {cx + 12, r.y + 56, 20, 34}, 3,
      Paint::horizontal(cx + 12, cx + 32,
                        {{0, palette::steel_dark}, {0.3F, palette::steel_light}, {1, palette::steel_dark}}));
  canvas.rounded_rect(
      {cx + 6, r.y + 64, 32, 9}, 4,
      Paint::vertical(r.y + 64, r.y + 73, {{0, palette::steel_light}, {1, palette::steel_dark}}));
  const Rect basin{r.x, r.y + 92, r.w, r.h - 92};
  canvas.soft_rect({basin.x + 2, basin.y + 6, basin.w, basin.h}, 8, 8, faded(palette::shadow, 0.35));
  canvas.rounded_rect(basin, 7,
                      Paint::vertical(basin.y, basin.bottom(),
                                      {{0, sf::Color::White}, {0.25F, rgb(0xf1f1ec)}, {1, rgb(0xc5c6c0)}}));
  canvas.ellipse({basin.x + basin.w / 2, basin.y + 8}, basin.w / 2 - 6, 5,
                 Paint::vertical(basin.y + 3, basin.y + 13, {{0, rgb(0x8a8e8c)}, {1, rgb(0xd8dad5)}}));
}

namespace {

void draw_coat_cloth(Canvas& canvas, const Rect& r, float cx) {
  canvas.soft_rect({r.x + 8, r.y + 20, r.w, r.h - 16}, 14, 12, faded(palette::shadow, 0.22));
  const Points coat =
      Path({cx - 10, r.y + 8})
          .cubic({cx - 20, r.y + 16}, {r.x + 4, r.y + 22}, {r.x + 2, r.y + 46})
          .cubic({r.x - 2, r.y + 110}, {r.x + 4, r.y + 180}, {r.x + 3, r.bottom() - 4})
          .quad({cx - 10, r.bottom() + 5}, {cx, r.bottom()})
          .quad({cx + 14, r.bottom() + 6}, {r.right() - 2, r.bottom() - 5})
          .cubic({r.right() - 4, r.y + 180}, {r.right() + 2, r.y + 110}, {r.right() - 3, r.y + 46})
          .cubic({r.right() - 5, r.y + 22}, {cx + 20, r.y + 16}, {cx + 10, r.y + 8})
          .quad({cx, r.y + 18}, {cx - 10, r.y + 8})
          .points();
  canvas.polygon(coat, Paint::horizontal(r.x, r.right(),
                                         {{0, rgb(0xc6ccce)},
                                          {0.16F, palette::cloth},
                                          {0.30F, rgb(0xd5dadb)},
                                          {0.42F, palette::cloth},
                                          {0.62F, rgb(0xf4f4f0)},
                                          {0.74F, rgb(0xd0d5d6)},
                                          {0.86F, palette::cloth},
                                          {1, rgb(0xb4bcbe)}}));
  canvas.stroke(coat, {1.0F, true}, faded(palette::glass_edge, 0.55));
}

void draw_lapel_and_sleeve(Canvas& canvas, const Rect& r, float cx, float side) {
  const Points edge = {
      {cx + side * 9, r.y + 9}, {cx + side * 21, r.y + 30}, {cx + side * 12, r.y + 38}, {cx, r.y + 62}};
  Points lapel = edge;
  lapel.push_back({cx + side * 2, r.y + 34});
  canvas.polygon(lapel, mixed(palette::cloth, palette::cloth_shade, 0.35));
  canvas.stroke(edge, {1.0F}, faded(palette::glass_edge, 0.7));
  canvas.stroke(
      Path({cx + side * 24, r.y + 60})
          .cubic({cx + side * 22, r.y + 110}, {cx + side * 26, r.y + 160}, {cx + side * 25, r.y + 214})
          .points(),
      {1.2F}, faded(palette::glass_edge, 0.55));
}

void draw_coat(Canvas& canvas, const Rect& r, float cx) {
  draw_coat_cloth(canvas, r, cx);
  canvas.line({cx, r.y + 58}, {cx + 1, r.bottom()}, 1.2F, faded(palette::glass_edge, 0.8));
  draw_lapel_and_sleeve(canvas, r, cx, -1.0F);
  draw_lapel_and_sleeve(canvas, r, cx, 1.0F);
  for (const float y : {84.0F, 122.0F, 160.0F, 198.0F})
    canvas.circle({cx + 5, r.y + y}, 2.1F, palette::steel);
  canvas.stroke({{cx + 9, r.y + 226}, {cx + 27, r.y + 226}}, {1.4F}, faded(palette::glass_edge, 0.8));
  canvas.stroke({{cx - 27, r.y + 226}, {cx - 9, r.y + 226}}, {1.4F}, faded(palette::glass_edge, 0.8));
}

}  // namespace

void draw_coat_peg(Canvas& canvas, const Rect& r, bool coat_hangs) {
  const float cx = r.x + r.w / 2;
  if (coat_hangs) draw_coat(canvas, r, cx);
  canvas.soft_ellipse({cx + 3, r.y + 5}, 7, 6, 3, faded(palette::shadow, 0.3));
  canvas.circle({cx, r.y + 2}, 6,
                Paint::vertical(r.y - 4, r.y + 8, {{0, palette::wood}, {1, palette::wood_dark}}));
  canvas.circle({cx - 1.5F, r.y}, 2, faded(palette::daylight, 0.6));
}

void draw_goggles_hook(Canvas& canvas, const Rect& r, bool goggles_hang) {
  const float cx = r.x + r.w / 2;
  if (goggles_hang) {
    canvas.soft_ellipse({cx + 4, r.y + 27}, 38, 13, 8, faded(palette::shadow, 0.25));
    canvas.stroke(Path({r.x + 5, r.y + 22})
                      .cubic({r.x + 12, r.y + 2}, {cx - 12, r.y + 2}, {cx, r.y + 3})
                      .cubic({cx + 12, r.y + 2}, {r.right() - 12, r.y + 2}, {r.right() - 5, r.y + 22})
                      .points(),
                  {4}, palette::rubber);
    const Points body =
        Path({r.x + 4, r.y + 22})
            .cubic({r.x + 2, r.y + 8}, {r.x + 20, r.y + 9}, {cx, r.y + 10})
            .cubic({r.right() - 20, r.y + 9}, {r.right() - 2, r.y + 8}, {r.right() - 4, r.y + 22})
            .cubic({r.right() - 3, r.y + 44}, {cx + 12, r.y + 42}, {cx + 7, r.y + 35})
            .quad({cx, r.y + 26}, {cx - 7, r.y + 35})
            .cubic({cx - 12, r.y + 42}, {r.x + 3, r.y + 44}, {r.x + 4, r.y + 22})
            .points();
    canvas.polygon(body, Paint::along({r.x, r.y}, {r.right(), r.bottom()},
                                      {{0, rgb(0xe3f0f1, 0.95)},
                                       {0.4F, rgb(0xb5d0d4, 0.9)},
                                       {0.55F, rgb(0xf4fafa, 0.95)},
                                       {1, rgb(0x9dbdc3, 0.92)}}));
    canvas.stroke(body, {2.6F, true}, palette::rubber);
    canvas.stroke(Path({r.x + 13, r.y + 24}).quad({r.x + 14, r.y + 15}, {r.x + 28, r.y + 14}).points(),
                  {2, false, true}, faded(sf::Color::White, 0.9));
  }
  canvas.circle({cx, r.y + 1}, 4.5F,
                Paint::vertical(r.y - 4, r.y + 6, {{0, palette::steel_light}, {1, palette::steel_dark}}));
}

}  // namespace halfdrop

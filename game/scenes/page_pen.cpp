#include "game/scenes/page_pen.h"

#include <algorithm>

#include "game/scenes/palette.h"

namespace halfdrop {

void draw_page_ground(Canvas& canvas) {
  const Rect all = canvas.window();
  canvas.rect(all.grown(2),
              Paint::along({all.x, all.y}, {all.right(), all.bottom()},
                           {{0, palette::wall_light}, {0.6F, rgb(0xf3ede1)}, {1, rgb(0xe6ddcd)}}));
}

TextStyle fitted(const Canvas& canvas, std::string_view text, float width, TextStyle style) {
  const float least = 0.6F * style.size;
  while (style.size > least && canvas.text_width(text, style) > width) style.size -= 0.5F;
  return style;
}

void draw_page_button(Canvas& canvas, const Rect& at, const std::string& text, bool strong, float size) {
  canvas.soft_rect({at.x, at.y + 2, at.w, at.h}, 8, 4, faded(palette::shadow, strong ? 0.25 : 0.12));
  canvas.rounded_rect(at, 8, strong ? palette::accent : rgb(0xfffdf8));
  canvas.stroke(rounded_rect_points(at, 8), {1.5F, true}, palette::accent);
  const TextStyle style{size, strong ? palette::pill_text : palette::accent, Face::semibold, Align::centre};
  canvas.text_middle(text, at.centre(), fitted(canvas, text, at.w - 12, style));
}

void draw_choice_ground(Canvas& canvas, const Rect& at, bool chosen) {
  canvas.rounded_rect(at, 7, chosen ? rgb(0xfbe9b7) : rgb(0xffffff, 0.7));
  canvas.stroke(rounded_rect_points(at, 7), {chosen ? 2.2F : 1.0F, true},
                chosen ? palette::accent : palette::paper_line);
}

void draw_paper_ground(Canvas& canvas, const Rect& p, bool forward) {
  canvas.soft_rect({p.x + 3, p.y + (forward ? 14.0F : 6.0F), p.w, p.h}, 4, forward ? 22.0F : 9.0F,
                   faded(palette::shadow, forward ? 0.42 : 0.34));
  const float ear = 26;
  // Cut by hand: no two corners alike.
  canvas.polygon({{p.x, p.y + 3},
                  {p.right() - ear, p.y + 0.4F},
                  {p.right(), p.y + ear},
                  {p.right() + 1.5F, p.bottom() - 2},
                  {p.x + 2, p.bottom() + 1}},
                 Paint::along({p.x, p.y}, {p.right(), p.bottom()},
                              {{0, rgb(0xfffef8)}, {0.6F, palette::paper}, {1, palette::paper_shade}}));
  canvas.polygon({{p.right() - ear, p.y}, {p.right(), p.y + ear}, {p.right() - ear + 2, p.y + ear - 3}},
                 Paint::along({p.right() - ear, p.y + ear}, {p.right() - ear / 2, p.y + ear / 2},
                              {{0, rgb(0xf7f2e4)}, {1, rgb(0xd6cfbd)}}));
}

void draw_scroll_bar(Canvas& canvas, const Rect& track, float content, float shown, float scroll) {
  if (content <= shown) return;
  canvas.rounded_rect(track, track.w / 2, faded(palette::accent, 0.14));
  const float length = std::max(36.0F, track.h * shown / content);
  const float y = track.y + (track.h - length) * std::clamp(scroll / (content - shown), 0.0F, 1.0F);
  canvas.rounded_rect({track.x, y, track.w, length}, track.w / 2, faded(palette::accent, 0.7));
}

void draw_tick_or_cross(Canvas& canvas, Point at, float radius, bool tick) {
  const float r = radius;
  canvas.circle(at, r, tick ? palette::good : palette::bad);
  const StrokeStyle style{r * 0.26F, false, true};
  if (tick) {
    canvas.stroke({{at.x - r * 0.46F, at.y + r * 0.02F},
                   {at.x - r * 0.12F, at.y + r * 0.38F},
                   {at.x + r * 0.5F, at.y - r * 0.38F}},
                  style, rgb(0xffffff));
    return;
  }
  canvas.stroke({{at.x - r * 0.4F, at.y - r * 0.4F}, {at.x + r * 0.4F, at.y + r * 0.4F}}, style,
                rgb(0xffffff));
  canvas.stroke({{at.x - r * 0.4F, at.y + r * 0.4F}, {at.x + r * 0.4F, at.y - r * 0.4F}}, style,
                rgb(0xffffff));
}

}  // namespace halfdrop

#pragma once
// What marks page and level list have in common: the ground they lie on, buttons, a scroll bar.

#include <string>

#include "game/scenes/canvas.h"

namespace halfdrop {

/// Paper over the whole window.
void draw_page_ground(Canvas& canvas);
/// The style, its size made smaller until the words fit a width, down to three fifths: other languages are
/// longer.
[[nodiscard]] TextStyle fitted(const Canvas& canvas, std::string_view text, float width, TextStyle style);

/// Its words are made to fit.
void draw_page_button(Canvas& canvas, const Rect& at, const std::string& text, bool strong,
                      float size = 17.0F);
/// What an answer's words stand on; one is chosen of several.
void draw_choice_ground(Canvas& canvas, const Rect& at, bool chosen);
/// A sheet cut by hand, with a dog's ear; `forward`: held over the bench.
void draw_paper_ground(Canvas& canvas, const Rect& paper, bool forward);
/// Where a page of `content` height stands when `shown` of it are seen from `scroll` on; nothing when all is
/// seen.
void draw_scroll_bar(Canvas& canvas, const Rect& track, float content, float shown, float scroll);
/// A tick in a disc, or a cross: shape and colour.
void draw_tick_or_cross(Canvas& canvas, Point at, float radius, bool tick);

}  // namespace halfdrop

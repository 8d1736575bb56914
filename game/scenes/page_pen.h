#pragma once
// What marks page and level list have in common: the ground they lie on, buttons, a scroll bar.

#include <string>

#include "game/scenes/canvas.h"

namespace halfdrop {

/// Paper over the whole window.
void draw_page_ground(Canvas& canvas);
void draw_page_button(Canvas& canvas, const Rect& at, const std::string& text, bool strong);
/// Where a page of `content` height stands when `shown` of it are seen from `scroll` on; nothing when all is
/// seen.
void draw_scroll_bar(Canvas& canvas, const Rect& track, float content, float shown, float scroll);
/// A tick in a disc, or a cross: shape and colour.
void draw_tick_or_cross(Canvas& canvas, Point at, float radius, bool tick);

}  // namespace halfdrop

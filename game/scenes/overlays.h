#pragma once
// What lies over the bench for a moment: the line at the foot, the card of keys, the pause.

#include <string>
#include <vector>

#include "game/scenes/canvas.h"
#include "game/scenes/outfit.h"

namespace halfdrop {

/// One line (or two in the projector's size) on a dark pill; [words in brackets] stand out as keys.
void draw_pill(Canvas& canvas, const std::string& words, bool is_warning, bool projector);

/// The keys that are of use in a level.
void draw_help_card(Canvas& canvas, const Outfit& outfit);
/// The level's method, step by step.
void draw_method_card(Canvas& canvas, const std::vector<std::string>& steps);

enum class PauseChoice { go_on, method, level_list, hand_in };
struct PauseButton {
  PauseChoice choice;
  std::string name, words;
  Rect rect;
};
[[nodiscard]] const std::vector<PauseButton>& pause_buttons();
void draw_pause(Canvas& canvas, std::size_t chosen);

/// A veil over everything, with a line in the middle.
void draw_wait(Canvas& canvas, const std::string& words);

}  // namespace halfdrop

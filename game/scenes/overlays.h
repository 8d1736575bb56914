#pragma once
// What lies over the bench for a moment: the line at the foot, the card of keys, the pause.

#include <string>
#include <vector>

#include "game/level/say.h"
#include "game/scenes/canvas.h"
#include "game/scenes/outfit.h"

namespace halfdrop {

/// One line (or two in the projector's size) on a dark pill; [words in brackets] stand out as keys.
void draw_pill(Canvas& canvas, const std::string& words, bool is_warning, bool projector);

/// Words with [keys] that stand out, from the left, centred on at.y by capital height.
void draw_words_with_keys(Canvas& canvas, const std::string& words, Point at, float size, Face face);
/// How wide they are.
[[nodiscard]] float width_with_keys(const Canvas& canvas, const std::string& words, float size, Face face);
/// Such words broken at spaces into lines of at most this width.
[[nodiscard]] std::vector<std::string> broken_words(const Canvas& canvas, const std::string& words,
                                                    float width, float size, Face face);

/// The keys that are of use in a level.
void draw_help_card(Canvas& canvas, const Outfit& outfit);
/// The level's method, step by step.
void draw_method_card(Canvas& canvas, const std::vector<std::string>& steps);

enum class PauseChoice { go_on, method, level_list, hand_in };
struct PauseButton {
  PauseChoice choice;
  std::string name;
  Phrase words;
  Rect rect;
};
[[nodiscard]] const std::vector<PauseButton>& pause_buttons();
void draw_pause(Canvas& canvas, std::size_t chosen);

/// A veil over everything, with a line in the middle.
void draw_wait(Canvas& canvas, const std::string& words);

}  // namespace halfdrop

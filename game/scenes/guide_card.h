#pragma once
// The guide's card at the foot of the bench: the next step, and its reason below.

#include <string>

#include "game/scenes/canvas.h"
#include "game/session/guide.h"

namespace halfdrop {

/// Hides and shows the card, or asks a silent guide (key F3).
inline constexpr Rect kGuideTab{14, 622, 116, 26};

/// `instead` stands in the reason's place when it is not empty: what a thing does, what was refused.
void draw_guide_card(Canvas& canvas, const Guide::Shown& shown, const std::string& instead, bool is_warning,
                     bool projector);
void draw_guide_tab(Canvas& canvas, bool card_shown);

/// The step's words with the key that does it, if one does: "Shut the tap. [S]".
[[nodiscard]] std::string step_with_key(const Guide::Shown& shown);

}  // namespace halfdrop

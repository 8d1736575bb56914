#pragma once
// The guide's card at the foot of the bench: the next step, and its reason below.

#include <optional>
#include <string>

#include "game/scenes/canvas.h"
#include "game/session/guide.h"

namespace halfdrop {

/// Where the tab is that hides and shows the card, or asks a silent guide (key F3), unless the card is high.
inline constexpr Rect kGuideTab{14, 622, 116, 26};

struct GuideCard {
  std::string words, under;  ///< the step, and below it its reason or what was told instead
  bool is_warning = false;
  bool large = false;  ///< the projector's size
};
/// Returns where it lies: at the foot, as high as its words need.
Rect draw_guide_card(Canvas& canvas, const GuideCard& card);
/// Above the card, or where the card would be. Returns where it lies.
Rect draw_guide_tab(Canvas& canvas, const std::optional<Rect>& card, bool large);

/// The step's words with the key that does it, if one does: "Shut the tap. [S]".
[[nodiscard]] std::string step_with_key(const Guide::Shown& shown);

}  // namespace halfdrop

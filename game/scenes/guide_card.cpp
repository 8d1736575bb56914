#include "game/scenes/guide_card.h"

#include <algorithm>
#include <array>

#include "game/level/say.h"
#include "game/scenes/overlays.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

constexpr float kCardLeft = 14, kCardWidth = 822, kCardFoot = 713;
constexpr float kLargeWords = 29.0F;  ///< 4 % of the height

struct StepKey {
  std::string_view step, keys;
  Phrase held = {};  ///< in place of the keys
};
constexpr std::array kStepKeys = {StepKey{"coat", "C"},
                                  StepKey{"goggles", "G"},
                                  StepKey{"tap-shut", "S"},
                                  StepKey{"mop", "M"},
                                  StepKey{"standard-before", "R"},
                                  StepKey{"standard-tip", "", "guide.hold_1"},
                                  StepKey{"standard-after", "R"},
                                  StepKey{"standard-dissolve", "2"},
                                  StepKey{"standard-pour", "3"},
                                  StepKey{"standard-rinse", "4"},
                                  StepKey{"standard-fill", "", "guide.hold_5"},
                                  StepKey{"standard-eye", "PgUp PgDn, ↑ ↓"},
                                  StepKey{"standard-line", "", "guide.hold_5_gently"},
                                  StepKey{"standard-invert", "6"},
                                  StepKey{"flask-aside", "F"},
                                  StepKey{"rinse-flask", "V"},
                                  StepKey{"take-up-titrant", "Q"},
                                  StepKey{"swing-out", "Home"},
                                  StepKey{"lower", "Ctrl + ↓"},
                                  StepKey{"raise", "Ctrl + ↑"},
                                  StepKey{"swing-back", "Home"},
                                  StepKey{"rinse-beaker", "B"},
                                  StepKey{"rinse-funnel-in", "N"},
                                  StepKey{"rinse-pour", "", "guide.hold_p"},
                                  StepKey{"rinse-funnel-out", "N"},
                                  StepKey{"rinse-turn", "", "guide.hold_e"},
                                  StepKey{"rinse-out", "", "guide.hold_open"},
                                  StepKey{"rinse-pipette", "Y"},
                                  StepKey{"funnel-in", "N"},
                                  StepKey{"fill", "", "guide.hold_p"},
                                  StepKey{"funnel-out", "N"},
                                  StepKey{"beaker-under", "B"},
                                  StepKey{"jet", "", "guide.hold_open"},
                                  StepKey{"on-scale", "", "guide.hold_open"},
                                  StepKey{"jet-shut", "S"},
                                  StepKey{"drop-off", "O"},
                                  StepKey{"beaker-away", "B"},
                                  StepKey{"eye-initial", "↑ ↓"},
                                  StepKey{"read-initial", "R"},
                                  StepKey{"tile", "L"},
                                  StepKey{"pipette", "A"},
                                  StepKey{"pipette-aside", "F"},
                                  StepKey{"pipette-dip", "A"},
                                  StepKey{"pipette-draw", "", "guide.hold_z"},
                                  StepKey{"pipette-lift", "A"},
                                  StepKey{"pipette-wipe", "M"},
                                  StepKey{"pipette-eye", "PgUp PgDn, ↑ ↓"},
                                  StepKey{"pipette-line", "", "guide.hold_z_gently"},
                                  StepKey{"pipette-lean", "A"},
                                  StepKey{"pipette-run", "Z"},
                                  StepKey{"pipette-drain", "", "guide.wait"},
                                  StepKey{"pipette-touch", "Shift A"},
                                  StepKey{"pipette-away", "A"},
                                  StepKey{"flask-out", "F"},
                                  StepKey{"deliver", "A"},
                                  StepKey{"indicator", "I"},
                                  StepKey{"second-indicator", "Shift + I"},
                                  StepKey{"read-first", "R"},
                                  StepKey{"first-titre", "R"},
                                  StepKey{"flask-under", "F"},
                                  StepKey{"swirl", "", "guide.hold_space"},
                                  StepKey{"mix", "", "guide.hold_space"},
                                  StepKey{"trial-run", "→, S"},
                                  StepKey{"run-quickly", "→, S"},
                                  StepKey{"slow-down", "S"},
                                  StepKey{"wash-down", "", "guide.hold_w"},
                                  StepKey{"drops", "→, S"},
                                  StepKey{"half-drops", "→, S, O, W"},
                                  StepKey{"shut", "S"},
                                  StepKey{"drop-in", "O"},
                                  StepKey{"wash-in", "", "guide.hold_w"},
                                  StepKey{"wait", "", "guide.hold_space"},
                                  StepKey{"eye-final", "↑ ↓"},
                                  StepKey{"read-final", "R"},
                                  StepKey{"titre", "R"},
                                  StepKey{"hand-in", "H"}};

std::string keys_of(const StepKey& step) {
  return step.held.empty() ? std::string(step.keys) : say(step.held);
}

}  // namespace

std::string step_with_key(const Guide::Shown& shown) {
  const auto found = std::find_if(kStepKeys.begin(), kStepKeys.end(),
                                  [&](const StepKey& one) { return one.step == shown.id; });
  return found == kStepKeys.end() ? shown.words : shown.words + "   [" + keys_of(*found) + "]";
}

Rect draw_guide_card(Canvas& canvas, const GuideCard& card) {
  const float first = card.large ? kLargeWords : 20.0F, second = card.large ? kLargeWords : 17.0F;
  const float width = kCardWidth - 36;
  const auto step = broken_words(canvas, card.words, width, first, Face::bold);
  const auto under = card.under.empty() ? std::vector<std::string>()
                                        : broken_words(canvas, card.under, width, second, Face::regular);
  const float step_line = first * 1.25F, under_line = second * 1.25F;
  const float height =
      step_line * static_cast<float>(step.size()) + under_line * static_cast<float>(under.size()) + 14;
  const Rect place{kCardLeft, kCardFoot - height, kCardWidth, height};
  canvas.flush();
  canvas.soft_rect({place.x, place.y + 3, place.w, place.h}, 14, 8, faded(palette::shadow, 0.4));
  canvas.rounded_rect(place, 12, palette::guide);
  if (card.is_warning) canvas.stroke(rounded_rect_points(place, 12), {1.8F, true}, palette::tap_handle);
  float y = place.y + 7 + step_line / 2;
  for (const std::string& line : step) {
    draw_words_with_keys(canvas, line, {place.x + 18, y}, first, Face::bold);
    y += step_line;
  }
  y += (under_line - step_line) / 2;
  for (const std::string& line : under) {
    draw_words_with_keys(canvas, line, {place.x + 18, y}, second, Face::regular);
    y += under_line;
  }
  canvas.flush();
  return place;
}

Rect draw_guide_tab(Canvas& canvas, const std::optional<Rect>& card, bool large) {
  Rect tab = kGuideTab;
  if (large) {
    tab.w = 176;
    tab.h = 42;
  }
  const std::string& words = card ? say("guide.hide") : say("guide.show");
  const float size = large ? kLargeWords : 16.0F;
  tab.w = std::max(tab.w, width_with_keys(canvas, words, size, Face::semibold) + 28);
  if (card) tab.y = std::min(tab.y, card->y - tab.h - 4);
  canvas.flush();
  canvas.rounded_rect(tab, 8, palette::guide);
  draw_words_with_keys(canvas, words, {tab.x + 14, tab.centre().y}, size, Face::semibold);
  canvas.flush();
  return tab;
}

}  // namespace halfdrop

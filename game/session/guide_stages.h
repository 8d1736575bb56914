#pragma once
// Where in a titration the work stands, as far as the guide can tell; shared by its tables of steps.

#include <string>

#include "game/level/say.h"
#include "game/session/guide.h"

namespace halfdrop::guide {

using F = const GuideFacts&;

/// Below this a reading is surely on the scale, for an eye that is not quite level too.
inline constexpr double kOnScale_cm3 = 0.05;
inline constexpr double kRefilled_cm3 = 1.0;    ///< full enough, with liquid in the jet
inline constexpr double kSpare_cm3 = 1.0;       ///< left below a run's end
inline constexpr double kQuickUntil_cm3 = 1.5;  ///< before the end that is expected
inline constexpr double kLevel_mm = 1.5;        ///< off level: moves a reading by 0.002 cm3
inline constexpr int kEnoughIndicator = 3;      ///< drops: with two, a large flask shows its change late

inline bool preparing(F f) { return !f.run.empty() && !f.initial_cm3; }
inline bool running(F f) { return !f.run.empty() && f.initial_cm3 && !f.final_cm3; }
inline bool under_way(F f) { return preparing(f) || running(f); }
inline bool shut(F f) { return f.hands.tap <= 0.0; }
inline bool hangs(F f) { return f.seen.hanging_share > 0.0; }
inline bool never(F) { return false; }
inline bool eye_level(F f) {
  return f.seen.eye_above_level_mm <= kLevel_mm && f.seen.eye_above_level_mm >= -kLevel_mm;
}
/// No run can be made with what the burette holds.
[[nodiscard]] bool too_little(F f);
/// The jet has air in it, or the meniscus is above the scale.
[[nodiscard]] bool to_be_let_out(F f);

/// "21.5"
[[nodiscard]] std::string one_decimal(double value);

/// A step's words that are always the same, by key: says<"guide.shut.do">.
template <std::size_t N>
struct Words {
  char text[N];
  // NOLINTNEXTLINE(google-explicit-constructor): a literal is the argument
  constexpr Words(const char (&literal)[N]) {
    for (std::size_t i = 0; i < N; ++i) text[i] = literal[i];
  }
};
template <Words words>
std::string says(F) {
  return say(Phrase(words.text));
}

/// What the burette was rinsed with runs out: the tap is open for a purpose.
[[nodiscard]] bool rinses_out(F f);

/// The burette is still to be rinsed, or what it was rinsed with to be thrown away.
[[nodiscard]] bool rinsing(F f);
/// ... and what is turned about next is not in it yet.
[[nodiscard]] bool rinse_to_be_poured(F f);
/// Something is to be poured into the burette next, or is being poured.
[[nodiscard]] bool to_be_poured(F f);

/// Where a standard is made up.
[[nodiscard]] std::span<const GuideStep> steps_of_making_up();
[[nodiscard]] std::span<const GuideStep> steps_of_lowering();
[[nodiscard]] std::span<const GuideStep> steps_of_rinsing();
[[nodiscard]] std::span<const GuideStep> steps_before_a_run();
/// Where the pipette is worked by hand.
[[nodiscard]] std::span<const GuideStep> steps_with_pipette();
[[nodiscard]] std::span<const GuideStep> steps_of_a_run();
[[nodiscard]] std::span<const GuideStep> steps_on_paper();

}  // namespace halfdrop::guide

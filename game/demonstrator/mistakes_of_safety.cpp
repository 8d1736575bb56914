// The catalogue's mistakes of safety.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

constexpr std::array kMistakes = {
    Mistake{"no-goggles", "mistake.no_goggles", "safety", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.wears_goggles = false; }},
    Mistake{"goggles-off-early", "mistake.goggles_off_early", "safety", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.takes_goggles_off_early = true; }},
    Mistake{"no-coat", "mistake.no_coat", "safety", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.wears_coat = false; }},
    Mistake{"spill-left", "mistake.spill_left", "safety", std::nullopt, "none", 0.0, [](Habits& habits) {
              habits.uses_funnel = false;
              habits.wipes_bench = false;
            }}};

}  // namespace

std::span<const Mistake> mistakes_of_safety() { return kMistakes; }

}  // namespace halfdrop

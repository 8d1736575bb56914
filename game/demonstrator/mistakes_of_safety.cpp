// The catalogue's mistakes of safety.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

constexpr std::array kMistakes = {
    Mistake{"no-goggles", "Everything is done without eye protection.", "safety", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.wears_goggles = false; }},
    Mistake{"goggles-off-early", "Eye protection comes off after the trial, with the work half done.",
            "safety", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.takes_goggles_off_early = true; }},
    Mistake{"no-coat", "Everything is done without a coat.", "safety", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.wears_coat = false; }},
    Mistake{"spill-left",
            "The burette is filled without a funnel, and what runs down beside it is left on the bench.",
            "safety", std::nullopt, "none", 0.0, [](Habits& habits) {
              habits.uses_funnel = false;
              habits.wipes_bench = false;
            }}};

}  // namespace

std::span<const Mistake> mistakes_of_safety() { return kMistakes; }

}  // namespace halfdrop

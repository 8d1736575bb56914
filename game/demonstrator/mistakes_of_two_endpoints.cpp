// The catalogue's mistakes where a flask has two endpoints.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

constexpr std::array kMistakes = {
    Mistake{"first-endpoint-overshot", "mistake.first_endpoint_overshot", "two endpoints", Cause::overshoot,
            "high", 0.15, [](Habits& habits) { habits.drops_past_first_endpoint = 3; }},
    Mistake{"second-indicator-too-soon", "mistake.second_indicator_too_soon", "two endpoints",
            Cause::indicator_blank, "low", 0.23,
            [](Habits& habits) { habits.second_indicator_at_start = true; }},
    Mistake{"titre-from-first-endpoint", "mistake.titre_from_first_endpoint", "two endpoints", std::nullopt,
            "low", 15.0, [](Habits& habits) { habits.working.titre_from_first_endpoint = true; }},
    Mistake{"first-titre-taken-off-once", "mistake.first_titre_taken_off_once", "two endpoints", std::nullopt,
            "none", 0.0, [](Habits& habits) { habits.working.takes_first_titre_off_once = true; }}};

}  // namespace

std::span<const Mistake> mistakes_of_two_endpoints() { return kMistakes; }

}  // namespace halfdrop

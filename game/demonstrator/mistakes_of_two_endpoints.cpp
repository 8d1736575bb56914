// The catalogue's mistakes where a flask has two endpoints.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

constexpr std::array kMistakes = {
    Mistake{"first-endpoint-overshot",
            "Three drops more go in after the first endpoint, before its reading is taken.", "two endpoints",
            Cause::overshoot, "high", 0.15, [](Habits& habits) { habits.drops_past_first_endpoint = 3; }},
    Mistake{"second-indicator-too-soon",
            "The second indicator goes into the flask with the first: its colour hides the first one's last.",
            "two endpoints", Cause::indicator_blank, "low", 0.23,
            [](Habits& habits) { habits.second_indicator_at_start = true; }},
    Mistake{"titre-from-first-endpoint",
            "The whole titre is counted from the first endpoint's reading, not from the initial one.",
            "two endpoints", std::nullopt, "low", 15.0,
            [](Habits& habits) { habits.working.titre_from_first_endpoint = true; }},
    Mistake{"first-titre-taken-off-once",
            "The first titre is taken off the whole one once, though each carbonate has taken acid twice.",
            "two endpoints", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.takes_first_titre_off_once = true; }}};

}  // namespace

std::span<const Mistake> mistakes_of_two_endpoints() { return kMistakes; }

}  // namespace halfdrop

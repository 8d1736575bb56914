// The catalogue's mistakes with a pipette that is worked by hand.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

/// 45 degrees at reading distance: who stands and looks down on a pipette held over the bench, or crouches.
constexpr double kOffLine_mm = 300.0;

constexpr std::array kMistakes = {
    Mistake{"line-read-from-above", "mistake.line_read_from_above", "pipetting", Cause::aliquot, "low", 0.03,
            [](Habits& habits) { habits.eye_above_line_mm = kOffLine_mm; }},
    Mistake{"line-read-from-below", "mistake.line_read_from_below", "pipetting", Cause::aliquot, "high", 0.04,
            [](Habits& habits) { habits.eye_above_line_mm = -kOffLine_mm; }},
    Mistake{"pipette-not-wiped", "mistake.pipette_not_wiped", "pipetting", Cause::aliquot, "high", 0.03,
            [](Habits& habits) { habits.wipes_pipette = false; }},
    Mistake{"air-drawn-up", "mistake.air_drawn_up", "pipetting", Cause::aliquot, "low", 0.34,
            [](Habits& habits) { habits.draws_air = true; }},
    Mistake{"pipette-held-free", "mistake.pipette_held_free", "pipetting", Cause::aliquot, "low", 0.03,
            [](Habits& habits) { habits.leans_pipette = false; }},
    Mistake{"pipette-not-drained", "mistake.pipette_not_drained", "pipetting", Cause::aliquot, "low", 0.05,
            [](Habits& habits) { habits.drains_pipette = false; }}};

}  // namespace

std::span<const Mistake> mistakes_of_pipetting() { return kMistakes; }

}  // namespace halfdrop

// The catalogue's mistakes with a pipette that is worked by hand.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

/// 45 degrees at reading distance: who stands and looks down on a pipette held over the bench, or crouches.
constexpr double kOffLine_mm = 300.0;

constexpr std::array kMistakes = {
    Mistake{"line-read-from-above", "The pipette is let down to its line by an eye that looks down on it.",
            "pipetting", Cause::aliquot, "low", 0.03,
            [](Habits& habits) { habits.eye_above_line_mm = kOffLine_mm; }},
    Mistake{"line-read-from-below", "The pipette is let down to its line by an eye that looks up at it.",
            "pipetting", Cause::aliquot, "high", 0.04,
            [](Habits& habits) { habits.eye_above_line_mm = -kOffLine_mm; }},
    Mistake{"pipette-not-wiped", "What clings to the outside of the pipette goes into the flask with it.",
            "pipetting", Cause::aliquot, "high", 0.03, [](Habits& habits) { habits.wipes_pipette = false; }},
    Mistake{"air-drawn-up",
            "The pipette's tip leaves the liquid too soon, and it is drawn past its line with air.",
            "pipetting", Cause::aliquot, "low", 0.34, [](Habits& habits) { habits.draws_air = true; }},
    Mistake{"pipette-held-free",
            "The pipette's tip touches nothing while it runs out: a drop hangs on and is taken away.",
            "pipetting", Cause::aliquot, "low", 0.03, [](Habits& habits) { habits.leans_pipette = false; }},
    Mistake{"pipette-not-drained",
            "The pipette is taken away as soon as its bulb is empty, before its wall has drained.",
            "pipetting", Cause::aliquot, "low", 0.05, [](Habits& habits) { habits.drains_pipette = false; }}};

}  // namespace

std::span<const Mistake> mistakes_of_pipetting() { return kMistakes; }

}  // namespace halfdrop

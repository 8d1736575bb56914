// The catalogue's mistakes in making up a standard. Titres are those of a level that pipettes it; poured into
// the burette it moves them the other way, through the titrant's strength.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

/// Practice has an overfilled flask 0.2 to 0.4 % off.
constexpr double kOverfilled_mm = 4.0;

constexpr std::array kMistakes = {
    Mistake{"washings-left-out", "mistake.washings_left_out", "solutions", Cause::aliquot, "low", 0.12,
            [](Habits& habits) { habits.making_up.washings = 0; }},
    Mistake{"flask-overfilled", "mistake.flask_overfilled", "solutions", Cause::aliquot, "low", 0.07,
            [](Habits& habits) { habits.making_up.past_line_mm = kOverfilled_mm; }},
    Mistake{"top-on-the-mark", "mistake.top_on_the_mark", "solutions", Cause::aliquot, "high", 0.07,
            [](Habits& habits) { habits.making_up.to_bottom = false; }},
    Mistake{"flask-not-inverted", "mistake.flask_not_inverted", "solutions", Cause::aliquot, "high", 0.72,
            [](Habits& habits) { habits.making_up.inversions = 0; }}};

}  // namespace

std::span<const Mistake> mistakes_of_making_up() { return kMistakes; }

}  // namespace halfdrop

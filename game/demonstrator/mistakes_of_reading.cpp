// The catalogue's mistakes of eye and reading.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

/// About 20 degrees down on the meniscus at reading distance, or up at it.
constexpr double kOffLevel_mm = 110.0;
constexpr double kAboutZero_cm3 = 0.1, kAboveZero_cm3 = -0.5;

constexpr std::array kMistakes = {
    Mistake{"eye-too-high-at-start", "The first reading is taken looking down on the meniscus.", "reading",
            Cause::parallax_initial, "high", 0.12,
            [](Habits& habits) { habits.eye_too_high_at_start_mm = kOffLevel_mm; }},
    Mistake{"eye-too-high-at-end", "The last reading is taken looking down on the meniscus.", "reading",
            Cause::parallax_final, "low", 0.12,
            [](Habits& habits) { habits.eye_too_high_at_end_mm = kOffLevel_mm; }},
    Mistake{"eye-too-low-at-start", "The first reading is taken looking up at the meniscus.", "reading",
            Cause::parallax_initial, "low", 0.18,
            [](Habits& habits) { habits.eye_too_high_at_start_mm = -kOffLevel_mm; }},
    Mistake{"eye-too-low-at-end", "The last reading is taken looking up at the meniscus.", "reading",
            Cause::parallax_final, "high", 0.18,
            [](Habits& habits) { habits.eye_too_high_at_end_mm = -kOffLevel_mm; }},
    Mistake{"eye-never-moves", "The eye stays where the first reading was taken, also for the last.",
            "reading", Cause::parallax_final, "low", 0.21, [](Habits& habits) { habits.moves_eye = false; }},
    Mistake{"read-at-once",
            "The glass is not clean, and the meniscus is read at once, before the wall has run down.",
            "reading", Cause::film, "high", 0.04, [](Habits& habits) { habits.waits = false; },
            R"({"burette":{"grease":1}})"},
    Mistake{"top-read-at-start",
            "The first reading is taken at the top of the meniscus, the last at its bottom.", "reading",
            Cause::meniscus_edge, "high", 0.31, [](Habits& habits) { habits.reading.top_at_start = true; }},
    Mistake{"top-read-at-end",
            "The last reading is taken at the top of the meniscus, the first at its bottom.", "reading",
            Cause::meniscus_edge, "low", 0.31, [](Habits& habits) { habits.reading.top_at_end = true; }},
    Mistake{"scale-read-upwards",
            "The divisions are counted upwards from the printed figure below the meniscus.", "reading",
            Cause::misreading, "either", 0.7, [](Habits& habits) { habits.reading.upwards = true; }},
    Mistake{"zero-not-read",
            "The burette is filled to about the zero mark for every run, and 0.00 is written without a look.",
            "reading", Cause::misreading, "high", 0.10,
            [](Habits& habits) {
              habits.starts_at_cm3 = kAboutZero_cm3;
              habits.fills_for_every_run = true;
              habits.reading.writes_zero_unread = true;
            }},
    Mistake{"started-above-zero",
            "The burette is filled above the zero mark for every run, and that is taken for 0.00.", "reading",
            Cause::misreading, "low", 0.50, [](Habits& habits) {
              habits.starts_at_cm3 = kAboveZero_cm3;
              habits.fills_for_every_run = true;
              habits.reading.writes_zero_unread = true;
            }}};

}  // namespace

std::span<const Mistake> mistakes_of_reading() { return kMistakes; }

}  // namespace halfdrop

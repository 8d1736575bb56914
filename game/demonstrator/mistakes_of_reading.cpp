// The catalogue's mistakes of eye and reading.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

/// About 20 degrees down on the meniscus at reading distance, or up at it.
constexpr double kOffLevel_mm = 110.0;
constexpr double kAboutZero_cm3 = 0.1, kAboveZero_cm3 = -0.5;

constexpr std::array kMistakes = {
    Mistake{"eye-too-high-at-start", "mistake.eye_too_high_at_start", "reading", Cause::parallax_initial,
            "high", 0.12, [](Habits& habits) { habits.eye_too_high_at_start_mm = kOffLevel_mm; }},
    Mistake{"eye-too-high-at-end", "mistake.eye_too_high_at_end", "reading", Cause::parallax_final, "low",
            0.12, [](Habits& habits) { habits.eye_too_high_at_end_mm = kOffLevel_mm; }},
    Mistake{"eye-too-low-at-start", "mistake.eye_too_low_at_start", "reading", Cause::parallax_initial, "low",
            0.18, [](Habits& habits) { habits.eye_too_high_at_start_mm = -kOffLevel_mm; }},
    Mistake{"eye-too-low-at-end", "mistake.eye_too_low_at_end", "reading", Cause::parallax_final, "high",
            0.18, [](Habits& habits) { habits.eye_too_high_at_end_mm = -kOffLevel_mm; }},
    Mistake{"eye-never-moves", "mistake.eye_never_moves", "reading", Cause::parallax_final, "low", 0.21,
            [](Habits& habits) { habits.moves_eye = false; }},
    Mistake{"read-at-once", "mistake.read_at_once", "reading", Cause::film, "high", 0.04,
            [](Habits& habits) { habits.waits = false; }, R"({"burette":{"grease":1}})"},
    Mistake{"top-read-at-start", "mistake.top_read_at_start", "reading", Cause::meniscus_edge, "high", 0.31,
            [](Habits& habits) { habits.reading.top_at_start = true; }},
    Mistake{"top-read-at-end", "mistake.top_read_at_end", "reading", Cause::meniscus_edge, "low", 0.31,
            [](Habits& habits) { habits.reading.top_at_end = true; }},
    Mistake{"scale-read-upwards", "mistake.scale_read_upwards", "reading", Cause::misreading, "either", 0.7,
            [](Habits& habits) { habits.reading.upwards = true; }},
    Mistake{"zero-not-read", "mistake.zero_not_read", "reading", Cause::misreading, "high", 0.10,
            [](Habits& habits) {
              habits.starts_at_cm3 = kAboutZero_cm3;
              habits.fills_for_every_run = true;
              habits.reading.writes_zero_unread = true;
            }},
    Mistake{"started-above-zero", "mistake.started_above_zero", "reading", Cause::misreading, "low", 0.50,
            [](Habits& habits) {
              habits.starts_at_cm3 = kAboveZero_cm3;
              habits.fills_for_every_run = true;
              habits.reading.writes_zero_unread = true;
            }}};

}  // namespace

std::span<const Mistake> mistakes_of_reading() { return kMistakes; }

}  // namespace halfdrop

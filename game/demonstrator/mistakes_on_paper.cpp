// The catalogue's mistakes on paper: what is written down, what counts, what is made of it.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

constexpr std::array kMistakes = {
    Mistake{"trial-in-mean", "mistake.trial_in_mean", "record", std::nullopt, "high", 0.10,
            [](Habits& habits) { habits.counts_trial = true; }},
    Mistake{"no-trial", "mistake.no_trial", "record", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.makes_trial = false; }},
    Mistake{"trial-not-recorded", "mistake.trial_not_recorded", "record", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.writes_trial_down = false; }},
    Mistake{"one-titre", "mistake.one_titre", "record", std::nullopt, "either", 0.02,
            [](Habits& habits) { habits.repeats = Repeats::once; }},
    Mistake{"not-concordant", "mistake.not_concordant", "record", std::nullopt, "high", 0.15,
            [](Habits& habits) {
              habits.hurries_second_run = true;
              habits.repeats = Repeats::twice_whatever;
            }},
    Mistake{"titres-adjusted", "mistake.titres_adjusted", "record", std::nullopt, "none", 0.0,
            [](Habits& habits) {
              habits.hurries_second_run = true;
              habits.repeats = Repeats::twice_whatever;
              habits.working.adjusts_titres = true;
            }},
    Mistake{"written-from-memory", "mistake.written_from_memory", "record", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.reading.written_at_once = false; }},
    Mistake{"readings-swapped", "mistake.readings_swapped", "record", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.reading.in_each_others_place = true; }},
    Mistake{"one-decimal", "mistake.one_decimal", "record", std::nullopt, "either", 0.02,
            [](Habits& habits) { habits.reading.decimals = 1; }},
    Mistake{"three-decimals", "mistake.three_decimals", "record", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.reading.decimals = 3; }},
    Mistake{"final-taken-for-titre", "mistake.final_taken_for_titre", "arithmetic", std::nullopt, "high", 0.4,
            [](Habits& habits) {
              habits.fills_for_every_run = true;
              habits.working.final_is_titre = true;
            }},
    Mistake{"ratio-left-out", "mistake.ratio_left_out", "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.omits_ratio = true; }},
    Mistake{"dilution-left-out", "mistake.dilution_left_out", "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.omits_dilution = true; }},
    Mistake{"thousand-left-out", "mistake.thousand_left_out", "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.omits_thousand = true; }},
    Mistake{"aliquot-for-titre", "mistake.aliquot_for_titre", "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.aliquot_for_titre = true; }},
    Mistake{"rounded-early", "mistake.rounded_early", "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.rounds_early = true; }},
    Mistake{"every-figure-copied", "mistake.every_figure_copied", "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.copies_every_figure = true; }}};

}  // namespace

std::span<const Mistake> mistakes_on_paper() { return kMistakes; }

}  // namespace halfdrop

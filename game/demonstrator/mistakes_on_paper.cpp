// The catalogue's mistakes on paper: what is written down, what counts, what is made of it.

#include <array>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

constexpr std::array kMistakes = {
    Mistake{"trial-in-mean", "The trial is ticked and taken into the mean.", "record", std::nullopt, "high",
            0.10, [](Habits& habits) { habits.counts_trial = true; }},
    Mistake{"no-trial", "There is no trial: the first accurate run has to look for the endpoint.", "record",
            std::nullopt, "none", 0.0, [](Habits& habits) { habits.makes_trial = false; }},
    Mistake{"trial-not-recorded", "The trial is run, and nothing of it is written down.", "record",
            std::nullopt, "none", 0.0, [](Habits& habits) { habits.writes_trial_down = false; }},
    Mistake{"one-titre", "One accurate run is made, and counts.", "record", std::nullopt, "either", 0.02,
            [](Habits& habits) { habits.repeats = Repeats::once; }},
    Mistake{"not-concordant", "The second accurate run is hurried past the endpoint, and both titres count.",
            "record", std::nullopt, "high", 0.15,
            [](Habits& habits) {
              habits.hurries_second_run = true;
              habits.repeats = Repeats::twice_whatever;
            }},
    Mistake{"titres-adjusted",
            "The second accurate run is hurried; its last reading is changed afterwards, so that the titres "
            "agree.",
            "record", std::nullopt, "none", 0.0,
            [](Habits& habits) {
              habits.hurries_second_run = true;
              habits.repeats = Repeats::twice_whatever;
              habits.working.adjusts_titres = true;
            }},
    Mistake{"written-from-memory",
            "The last reading is carried in the head, and written when the flask is empty and rinsed.",
            "record", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.reading.written_at_once = false; }},
    Mistake{"readings-swapped", "Initial and final reading are written in each other's place.", "record",
            std::nullopt, "none", 0.0, [](Habits& habits) { habits.reading.in_each_others_place = true; }},
    Mistake{"one-decimal", "Readings are written with one decimal.", "record", std::nullopt, "either", 0.02,
            [](Habits& habits) { habits.reading.decimals = 1; }},
    Mistake{"three-decimals", "Readings are written with three decimals, finer than the scale can show.",
            "record", std::nullopt, "none", 0.0, [](Habits& habits) { habits.reading.decimals = 3; }},
    Mistake{"final-taken-for-titre",
            "The burette is filled for every run, and its last reading is the titre.", "arithmetic",
            std::nullopt, "high", 0.4,
            [](Habits& habits) {
              habits.fills_for_every_run = true;
              habits.working.final_is_titre = true;
            }},
    Mistake{"ratio-left-out", "The ratio of the reaction is left out of the working.", "arithmetic",
            std::nullopt, "none", 0.0, [](Habits& habits) { habits.working.omits_ratio = true; }},
    Mistake{"dilution-left-out", "The dilution is left out of the working.", "arithmetic", std::nullopt,
            "none", 0.0, [](Habits& habits) { habits.working.omits_dilution = true; }},
    Mistake{"thousand-left-out", "The first step between cm³ and dm³ is left out of the working.",
            "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.omits_thousand = true; }},
    Mistake{"aliquot-for-titre", "Aliquot and titre stand in each other's place in the working.",
            "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.aliquot_for_titre = true; }},
    Mistake{"rounded-early", "Every line of the working is rounded to two figures before the next.",
            "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.rounds_early = true; }},
    Mistake{"every-figure-copied", "The result is copied from the calculator with all its figures.",
            "arithmetic", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.working.copies_every_figure = true; }}};

}  // namespace

std::span<const Mistake> mistakes_on_paper() { return kMistakes; }

}  // namespace halfdrop

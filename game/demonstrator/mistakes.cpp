#include "game/demonstrator/mistakes.h"

#include <algorithm>
#include <array>

namespace halfdrop {

namespace {

/// About 20 degrees down on the meniscus at reading distance.
constexpr double kLooksDown_mm = 110.0;

constexpr std::array kMistakes = {
    Mistake{"burette-not-rinsed", "The burette is filled as it stands, wet with water.", "rinsing",
            Cause::titrant_strength, "high", 0.1, [](Habits& habits) { habits.rinses_burette = false; }},
    Mistake{"burette-rinsed-with-sample", "The burette is rinsed with the solution that belongs in the flask.",
            "rinsing", Cause::titrant_strength, "high", 0.1,
            [](Habits& habits) { habits.rinses_burette_with_sample = true; }},
    Mistake{"pipette-not-rinsed", "The pipette measures as it stands, wet with water.", "rinsing",
            Cause::aliquot, "low", 0.1, [](Habits& habits) { habits.rinses_pipette = false; }},
    Mistake{"last-drop-blown-out", "The last drop is blown out of the pipette.", "rinsing", Cause::aliquot,
            "high", 0.03, [](Habits& habits) { habits.leaves_last_drop = false; }},
    Mistake{"flask-rinsed-with-sample", "The flask is rinsed with the solution that the pipette measures.",
            "rinsing", Cause::flask_residue, "high", 0.3,
            [](Habits& habits) { habits.rinses_flask_with_sample = true; }},
    Mistake{"jet-not-filled", "The burette is emptied and filled for every run, and its jet is never filled.",
            "filling", Cause::jet_air, "high", 0.22,
            [](Habits& habits) {
              habits.fills_jet = false;
              habits.fills_for_every_run = true;
            }},
    Mistake{
        "bubble-left-in-jet",
        "The burette is filled afresh for every run, and its jet only until it drips: air stays under the "
        "tap until the run carries it off.",
        "filling", Cause::jet_air, "high", 0.22,
        [](Habits& habits) {
          habits.fills_jet_slowly = true;
          habits.fills_for_every_run = true;
        }},
    Mistake{"funnel-left-in", "The funnel stays in the burette and drips after the first reading.", "filling",
            Cause::funnel_drips, "low", 0.15,
            [](Habits& habits) {
              habits.lifts_funnel_out = false;
              habits.fills_for_every_run = true;
            }},
    Mistake{"eye-too-high-at-start", "The first reading is taken looking down on the meniscus.", "reading",
            Cause::parallax_initial, "high", 0.12,
            [](Habits& habits) { habits.eye_too_high_at_start_mm = kLooksDown_mm; }},
    Mistake{"eye-too-high-at-end", "The last reading is taken looking down on the meniscus.", "reading",
            Cause::parallax_final, "low", 0.12,
            [](Habits& habits) { habits.eye_too_high_at_end_mm = kLooksDown_mm; }},
    Mistake{"eye-never-moves", "The eye stays where the first reading was taken, also for the last.",
            "reading", Cause::parallax_final, "low", 0.21, [](Habits& habits) { habits.moves_eye = false; }},
    Mistake{"read-at-once",
            "The glass is not clean, and the meniscus is read at once, before the wall has run down.",
            "reading", Cause::film, "high", 0.04, [](Habits& habits) { habits.waits = false; },
            R"({"burette":{"grease":1}})"},
    Mistake{"drop-left-at-end", "One drop more is begun, and left hanging when the last reading is taken.",
            "titrating", Cause::hanging_drop, "high", 0.05,
            [](Habits& habits) { habits.leaves_drop_hanging = true; }},
    Mistake{"tap-leaks",
            "The tap leaks at its plug, drop by drop; the bench is mopped, the tap is not seen to.",
            "titrating", Cause::leak, "high", 0.18, [](Habits&) {}, R"({"tap":{"leak_cm3_min":0.08}})"},
    Mistake{"overshoot", "The accurate runs are run as fast as the trial, past the endpoint.", "titrating",
            Cause::overshoot, "high", 0.31, [](Habits& habits) { habits.slows_down = false; }},
    Mistake{"no-swirling", "The flask is never swirled.", "titrating", Cause::overshoot, "either", 0.43,
            [](Habits& habits) { habits.swirls = false; }},
    Mistake{"swirled-too-hard", "The flask is swirled so hard that its liquid splashes out of the neck.",
            "titrating", Cause::swirled_out, "low", 0.4, [](Habits& habits) { habits.swirl = 1.0; }},
    Mistake{
        "drops-left-on-wall",
        "The jet leans on the flask's neck, now on one side, now on the other, and nothing is washed down.",
        "titrating", Cause::flask_wall, "high", 0.04, [](Habits& habits) { habits.rinses_wall = false; }},
    Mistake{"flask-off-line",
            "Towards the end the flask is drawn aside to be looked at while the tap still drips.",
            "titrating", Cause::missed_flask, "high", 0.17,
            [](Habits& habits) { habits.keeps_flask_in_line = false; }},
    Mistake{"stopped-at-flash",
            "The accurate runs are ended at the first flash of colour that lingers a moment.", "titrating",
            Cause::overshoot, "low", 0.09, [](Habits& habits) { habits.waits_to_fade = false; }},
    Mistake{"no-tile", "The flask stands on the bare bench, where a first tint is not trusted: each run goes on until the "
            "colour is plain.", "titrating",
            Cause::overshoot, "high", 0.04, [](Habits& habits) {
              habits.lays_tile = false;
              habits.trusts_a_tint = false;
            }},
    Mistake{"flask-not-rinsed",
            "The flask is used again as the last run left it; it is tipped out, unrinsed, only when it is "
            "too full.",
            "flask", Cause::flask_residue, "low", 0.33, [](Habits& habits) { habits.cleans_flask = false; }},
    Mistake{"trial-in-mean", "The trial is ticked and taken into the mean.", "record", std::nullopt, "high",
            0.10, [](Habits& habits) { habits.counts_trial = true; }},
    Mistake{"no-goggles", "Everything is done without eye protection.", "safety", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.wears_goggles = false; }}};

}  // namespace

std::span<const Mistake> mistakes() { return kMistakes; }

bool has_room_for(const Level& level, std::string_view mistake) {
  using std::string_view_literals::operator""sv;
  static constexpr std::array kReading = {"eye-too-high-at-start"sv, "eye-too-high-at-end"sv};
  static constexpr std::array kDelivering = {"drop-left-at-end"sv, "no-goggles"sv};
  static constexpr std::array kFilling = {"jet-not-filled"sv, "funnel-left-in"sv, "eye-too-high-at-start"sv,
                                          "no-goggles"sv};
  const auto among = [mistake](const auto& names) {
    return std::find(names.begin(), names.end(), mistake) != names.end();
  };
  if (!level.drill) return true;
  if (level.drill->kind == DrillKind::read_meniscus) return among(kReading);
  return level.drill->kind == DrillKind::deliver_exactly ? among(kDelivering) : among(kFilling);
}

const Mistake* find_mistake(std::string_view name) {
  const auto found = std::find_if(kMistakes.begin(), kMistakes.end(),
                                  [&](const Mistake& mistake) { return mistake.name == name; });
  return found == kMistakes.end() ? nullptr : &*found;
}

}  // namespace halfdrop

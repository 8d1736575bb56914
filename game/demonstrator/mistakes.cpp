#include "game/demonstrator/mistakes.h"

#include <algorithm>
#include <array>
#include <vector>

#include "game/demonstrator/mistakes_by_family.h"

namespace halfdrop {

namespace {

constexpr std::array kMistakes = {
    Mistake{"burette-not-rinsed", "mistake.burette_not_rinsed", "rinsing",
            Cause::titrant_strength, "high", 0.11, [](Habits& habits) { habits.rinses_burette = false; }},
    Mistake{"burette-rinsed-with-sample", "mistake.burette_rinsed_with_sample",
            "rinsing", Cause::titrant_strength, "high", 0.15,
            [](Habits& habits) { habits.rinses_burette_with_sample = true; }},
    Mistake{"pipette-not-rinsed", "mistake.pipette_not_rinsed", "rinsing",
            Cause::aliquot, "low", 0.04, [](Habits& habits) { habits.rinses_pipette = false; }},
    Mistake{"last-drop-blown-out", "mistake.last_drop_blown_out", "rinsing", Cause::aliquot,
            "high", 0.04, [](Habits& habits) { habits.leaves_last_drop = false; }},
    Mistake{"flask-rinsed-with-sample", "mistake.flask_rinsed_with_sample",
            "rinsing", Cause::flask_residue, "high", 0.26,
            [](Habits& habits) { habits.rinses_flask_with_sample = true; }},
    Mistake{"jet-not-filled", "mistake.jet_not_filled",
            "filling", Cause::jet_air, "high", 0.22,
            [](Habits& habits) {
              habits.fills_jet = false;
              habits.fills_for_every_run = true;
            }},
    Mistake{"filled-above-eye",
            "mistake.filled_above_eye", "filling",
            std::nullopt, "none", 0.0, [](Habits& habits) { habits.lowers_to_fill = false; }},
    Mistake{
        "bubble-left-in-jet",
        "mistake.bubble_left_in_jet",
        "filling", Cause::jet_air, "high", 0.22,
        [](Habits& habits) {
          habits.fills_jet_slowly = true;
          habits.fills_for_every_run = true;
        }},
    Mistake{"funnel-left-in", "mistake.funnel_left_in", "filling",
            Cause::funnel_drips, "low", 0.15,
            [](Habits& habits) {
              habits.lifts_funnel_out = false;
              habits.fills_for_every_run = true;
            }},
    Mistake{"tap-open-while-filling",
            "mistake.tap_open_while_filling",
            "filling", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.shuts_tap_before_pouring = false; }},
    Mistake{"jet-filled-after-reading",
            "mistake.jet_filled_after_reading",
            "filling", Cause::jet_air, "high", 0.22,
            [](Habits& habits) {
              habits.fills_jet = false;
              habits.fills_for_every_run = true;
              habits.fills_jet_after_reading = true;
            }},
    Mistake{"drop-left-at-start", "mistake.drop_left_at_start", "filling",
            Cause::hanging_drop, "low", 0.05,
            [](Habits& habits) { habits.begins_with_drop_hanging = true; }},
    Mistake{"tap-opened-too-soon",
            "mistake.tap_opened_too_soon",
            "titrating", Cause::missed_flask, "high", 0.20,
            [](Habits& habits) { habits.opens_tap_before_flask = true; }},
    Mistake{"topped-up-in-run",
            "mistake.topped_up_in_run", "titrating",
            Cause::refill, "low", 2.04, [](Habits& habits) { habits.tops_up_in_run = true; }},
    Mistake{"fade-chased", "mistake.fade_chased",
            "titrating", Cause::overshoot, "high", 0.04,
            [](Habits& habits) { habits.chases_fade = true; }},
    Mistake{"too-much-indicator", "mistake.too_much_indicator", "titrating",
            Cause::indicator_blank, "low", 0.01, [](Habits& habits) { habits.indicator_drops = 25; }},
    Mistake{"indicator-by-guess", "mistake.indicator_by_guess",
            "titrating", std::nullopt, "none", 0.0,
            [](Habits& habits) { habits.more_indicator_each_run = 3; }},
    Mistake{"shade-differs",
            "mistake.shade_differs",
            "titrating", Cause::overshoot, "high", 0.15,
            [](Habits& habits) {
              habits.drops_past_tint = 3;
              habits.repeats = Repeats::twice_whatever;
            }},
    Mistake{"drop-left-at-end", "mistake.drop_left_at_end",
            "titrating", Cause::hanging_drop, "high", 0.05,
            [](Habits& habits) { habits.leaves_drop_hanging = true; }},
    Mistake{"tap-leaks",
            "mistake.tap_leaks",
            "titrating", Cause::leak, "high", 0.18, [](Habits&) {}, R"({"tap":{"leak_cm3_min":0.08}})"},
    Mistake{"overshoot", "mistake.overshoot", "titrating",
            Cause::overshoot, "high", 0.31, [](Habits& habits) { habits.slows_down = false; }},
    Mistake{"no-swirling", "mistake.no_swirling", "titrating", Cause::overshoot, "either", 0.43,
            [](Habits& habits) { habits.swirls = false; }},
    Mistake{"swirled-too-hard", "mistake.swirled_too_hard",
            "titrating", Cause::swirled_out, "low", 0.4, [](Habits& habits) { habits.swirl = 1.0; }},
    Mistake{
        "drops-left-on-wall",
        "mistake.drops_left_on_wall",
        "titrating", Cause::flask_wall, "high", 0.04, [](Habits& habits) { habits.rinses_wall = false; }},
    Mistake{"flask-off-line",
            "mistake.flask_off_line",
            "titrating", Cause::missed_flask, "high", 0.17,
            [](Habits& habits) { habits.keeps_flask_in_line = false; }},
    Mistake{"stopped-at-flash",
            "mistake.stopped_at_flash", "titrating",
            Cause::overshoot, "low", 0.09, [](Habits& habits) { habits.waits_to_fade = false; }},
    Mistake{"no-tile", "mistake.no_tile", "titrating",
            Cause::overshoot, "high", 0.04, [](Habits& habits) {
              habits.lays_tile = false;
              habits.trusts_a_tint = false;
            }},
    Mistake{"old-alkali-trusted",
            "mistake.old_alkali_trusted",
            "solutions", Cause::carbon_dioxide, "high", 0.36, [](Habits&) {},
            R"({"titrant":{"carbonate_mol_dm3":0.002}})"},
    Mistake{"flask-not-rinsed",
            "mistake.flask_not_rinsed",
            "flask", Cause::flask_residue, "low", 0.33, [](Habits& habits) { habits.cleans_flask = false; }}};

bool has_factor(const std::vector<Factor>& factors, const Factor& factor) {
  return std::find(factors.begin(), factors.end(), factor) != factors.end();
}

/// A factor of one can be left out without a fault, a colour that goes does not fade, only an alkali that is
/// the standard is trusted, and dry glass need not be rinsed.
bool has_room_in_titration(const Level& level, std::string_view mistake) {
  const auto uses = [&](const Factor& factor) {
    return std::any_of(level.calculation.begin(), level.calculation.end(), [&](const CalculationStep& step) {
      return has_factor(step.multiply, factor) || has_factor(step.divide, factor) ||
             has_factor(step.plus, factor) || has_factor(step.minus, factor);
    });
  };
  if (mistake == "ratio-left-out") return level.ratio != 1.0 && uses("ratio");
  if (mistake == "dilution-left-out") return level.dilution != 1.0 && uses("dilution");
  if (mistake == "thousand-left-out") return uses(1000.0);
  if (mistake == "aliquot-for-titre") return uses("aliquot_cm3");
  if (mistake == "fade-chased") return level.endpoint_gains_colour;
  if (mistake == "filled-above-eye") return level.filling_below_eye;
  const Mistake* const known = find_mistake(mistake);
  if (known != nullptr && known->family == "pipetting") return level.pipette.by_hand;
  if (known != nullptr && known->family == "two endpoints") return level.then.has_value();
  if (known != nullptr && known->family == "solutions" && mistake != "old-alkali-trusted")
    return level.standard.has_value();
  if (mistake == "burette-not-rinsed") return level.burette.wet_cm3 > 0.0;
  if (mistake == "old-alkali-trusted")
    return level.unknown_in_flask && level.titrant_substance.name == "sodium hydroxide";
  return true;
}

}  // namespace

std::span<const Mistake> mistakes() {
  static const std::vector<Mistake> catalogue = [] {
    std::vector<Mistake> all(kMistakes.begin(), kMistakes.end());
    for (const auto& part : {mistakes_of_making_up(), mistakes_of_pipetting(), mistakes_of_two_endpoints(),
                             mistakes_of_reading(), mistakes_on_paper(), mistakes_of_safety()})
      all.insert(all.end(), part.begin(), part.end());
    return all;
  }();
  return catalogue;
}

bool has_room_for(const Level& level, std::string_view mistake) {
  using std::string_view_literals::operator""sv;
  static constexpr std::array kReading = {"eye-too-high-at-start"sv, "eye-too-high-at-end"sv};
  static constexpr std::array kDelivering = {"drop-left-at-end"sv, "no-goggles"sv};
  static constexpr std::array kFilling = {"filled-above-eye"sv, "jet-not-filled"sv, "funnel-left-in"sv,
                                          "eye-too-high-at-start"sv, "no-goggles"sv};
  const auto among = [mistake](const auto& names) {
    return std::find(names.begin(), names.end(), mistake) != names.end();
  };
  if (!level.drill) return has_room_in_titration(level, mistake);
  if (level.drill->kind == DrillKind::read_meniscus) return among(kReading);
  if (level.drill->kind == DrillKind::know_apparatus) return false;
  if (level.drill->kind == DrillKind::deliver_exactly) return among(kDelivering);
  if (mistake == "filled-above-eye" && !level.filling_below_eye) return false;
  return among(kFilling);
}

const Mistake* find_mistake(std::string_view name) {
  const std::span<const Mistake> all = mistakes();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Mistake& mistake) { return mistake.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace halfdrop

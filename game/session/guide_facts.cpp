// What the guide goes by: what is perceived, was done, stands on the sheet.

#include <algorithm>
#include <charconv>
#include <cmath>
#include <set>

#include "game/session/guide.h"
#include "physics/bench/clamp.h"
#include "physics/burette/rinsing.h"

namespace halfdrop {

namespace {

constexpr double kAgree_cm3 = 0.10 + 1e-9;
constexpr double kFullPipette_cm3 = 0.5;
constexpr double kTurned_s = 3.0;  ///< a burette turned about for less is not rinsed

/// A plain decimal number, with point or comma.
std::optional<double> plain_number(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::optional<double> number_in(const Session& session, const std::string& cell) {
  return plain_number(session.cell(cell));
}

std::optional<double> own_titre_cm3(const Session& session, const std::string& run,
                                    const char* reading = "/final") {
  const auto first = number_in(session, run + "/initial"), last = number_in(session, run + reading);
  if (!first || !last) return std::nullopt;
  return std::round((*last - *first) * 1e6) / 1e6;
}

/// Follows the log through what happened to the flask and the tap.
struct Log {
  GuideFacts& facts;
  double aslant_since_s = -1.0;  ///< negative: upright
  double quiet_since_s = 0.0;
  bool tap_open = true;  // a bench left overnight
  bool beaker_under = false;
  bool pipette_over_flask = false;
  std::set<std::string> finals{}, firsts{};  ///< cells that have held a final reading, a first endpoint

  void operator()(double at_s, const HandsChange& change) {
    if (change.pour.value_or(0.0) > 0.0) facts.turned_about = false;
    if (change.tilt_degrees) tilted(at_s, *change.tilt_degrees >= kRolls_degrees);
    if (pipette_over_flask && change.valve.value_or(0.0) > 0.0) facts.pipette_let_in = true;
    if (!change.tap) return;
    if (tap_open && *change.tap <= 0.0) quiet_since_s = at_s;
    tap_open = *change.tap > 0.0;
    facts.let_in = facts.let_in || (tap_open && !beaker_under);
    facts.let_in_on = facts.let_in_on || (tap_open && !beaker_under);
  }
  void tilted(double at_s, bool aslant) {
    if (aslant && aslant_since_s < 0.0) aslant_since_s = at_s;
    if (aslant || aslant_since_s < 0.0) return;
    if (at_s - aslant_since_s >= kTurned_s && !facts.turned_about) {
      facts.turned_about = true;
      ++facts.rinses;
    }
    aslant_since_s = -1.0;
  }
  /// Of a pipette that is worked by hand: lifted away after it was let run, it has brought its aliquot.
  void pipette_held(Deed deed) {
    if (deed == Deed::lean_pipette || deed == Deed::hold_pipette_free) pipette_over_flask = true;
    if (deed != Deed::lift_pipette) return;
    if (facts.pipette_let_in) {
      ++facts.aliquots;
      facts.pipette_rinsed = true;
      facts.let_in = false;
    }
    pipette_over_flask = facts.pipette_let_in = false;
  }
  void operator()(double at_s, Deed deed) {
    pipette_held(deed);
    if (deed == Deed::pour_into_volumetric) ++facts.poured_over;
    if (deed == Deed::rinse_into_volumetric) ++facts.washings;
    if (deed == Deed::rinse_pipette_with_sample || deed == Deed::fill_pipette || deed == Deed::dip_pipette)
      facts.standard_used = true;
    if (deed == Deed::rinse_pipette_with_sample || deed == Deed::deliver_aliquot) facts.pipette_rinsed = true;
    if (deed == Deed::rinse_flask_with_sample) facts.flask_spent = true;
    if (deed == Deed::touch_off_drop) quiet_since_s = at_s;
    if (deed == Deed::put_beaker_under || deed == Deed::take_beaker_away)
      beaker_under = deed == Deed::put_beaker_under;
    if (deed == Deed::deliver_aliquot) ++facts.aliquots;
    if (deed == Deed::add_indicator) ++facts.indicator_drops;
    if (deed == Deed::add_second_indicator) ++facts.second_indicator_drops;
    if (deed == Deed::empty_flask || deed == Deed::rinse_flask)
      facts.aliquots = facts.indicator_drops = facts.second_indicator_drops = 0;
    if (deed == Deed::rinse_flask) facts.flask_spent = false;
    if (deed == Deed::deliver_aliquot || deed == Deed::empty_flask || deed == Deed::rinse_flask)
      facts.let_in = false;
  }
  void operator()(double, const Writing& writing) {
    if (writing.cell.ends_with("/first endpoint") && firsts.insert(writing.cell).second)
      facts.let_in_on = false;
    if (!writing.cell.ends_with("/final") || writing.text.empty() || facts.aliquots == 0) return;
    // A figure put right is of a flask that may be long gone.
    if (finals.insert(writing.cell).second) facts.flask_spent = true;
  }
  void operator()(double, const Ending&) {}
};

void read_log(const Session& session, GuideFacts& facts) {
  Log log{.facts = facts};
  for (const Change& change : session.attempt().changes) {
    std::visit([&](const auto& what) { log(seconds(change.tick), what); }, change.what);
  }
  facts.undisturbed_s = log.tap_open ? 0.0 : facts.seen.time_s - log.quiet_since_s;
}

/// The two accurate runs whose titres lie nearest to each other.
void find_pair(const Session& session, const std::vector<std::string>& runs, GuideFacts& facts) {
  double nearest_cm3 = HUGE_VAL;
  for (std::size_t i = 1; i < runs.size(); ++i) {
    for (std::size_t j = i + 1; j < runs.size(); ++j) {
      const auto one = own_titre_cm3(session, runs[i]), other = own_titre_cm3(session, runs[j]);
      if (!one || !other) continue;
      double apart_cm3 = std::fabs(*one - *other);
      const auto first = own_titre_cm3(session, runs[i], "/first endpoint"),
                 second = own_titre_cm3(session, runs[j], "/first endpoint");
      if (first && second) apart_cm3 = std::max(apart_cm3, std::fabs(*first - *second));
      if (apart_cm3 >= nearest_cm3) continue;
      nearest_cm3 = apart_cm3;
      facts.counting = {runs[i], runs[j]};
    }
  }
  facts.agree = nearest_cm3 <= kAgree_cm3;
}

void read_sheet(const Session& session, GuideFacts& facts) {
  const std::vector<std::string> runs = run_names(session.level());
  find_pair(session, runs, facts);
  bool whole = true;
  for (const std::string& run : runs) {
    if (session.cell(run + "/counts") == "yes") ++facts.ticked;
    const auto titre = own_titre_cm3(session, run);
    if (titre) facts.expected_cm3 = std::min(*titre, facts.expected_cm3.value_or(*titre));
    const auto first = own_titre_cm3(session, run, "/first endpoint");
    if (first && titre)
      facts.expected_first_cm3 = std::min(*first, facts.expected_first_cm3.value_or(*first));
    if (!whole) continue;
    whole = titre && !session.cell(run + "/titre").empty();
    if (!whole) facts.run = run;
  }
  // Two that agree end the runs, unless another was begun.
  if (facts.agree && !number_in(session, facts.run + "/initial")) facts.run.clear();
  facts.initial_cm3 = number_in(session, facts.run + "/initial");
  facts.final_cm3 = number_in(session, facts.run + "/final");
  facts.first_cm3 = number_in(session, facts.run + "/first endpoint");
  facts.first_titre_written = !session.cell(facts.run + "/first titre").empty();
  for (const CalculationStep& step : session.level().calculation) {
    if (!session.cell(step.cell).empty()) continue;
    facts.next_line = step.prompt;
    break;
  }
}

}  // namespace

GuideFacts guide_facts(const Session& session, const View& seen) {
  GuideFacts facts;
  facts.level = &session.level();
  facts.seen = senses(seen);
  facts.hands = seen.hands;
  facts.coat_on = seen.coat_on;
  facts.goggles_on = seen.goggles_on;
  facts.funnel_in = seen.funnel_in;
  facts.in_hand = seen.in_hand;
  facts.tile_laid = seen.tile_laid;
  facts.over_edge = seen.over_edge;
  facts.top_below_eye = top_below_eye(session.spec(), seen.hands);
  facts.pipette_full = seen.pipette_cm3 > kFullPipette_cm3;
  if (session.level().standard) {
    facts.bottle_before = session.cell(kBottleBefore);
    facts.bottle_after = session.cell(kBottleAfter);
    const PreparationSpec& standard = session.spec().preparation;
    facts.weighed_out_g = standard.bottle_g + standard.solid_g - facts.seen.preparation.shown_g;
  }
  read_log(session, facts);
  read_sheet(session, facts);
  return facts;
}

}  // namespace halfdrop

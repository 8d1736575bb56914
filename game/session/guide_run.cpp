// The guide's steps from the pipette to the final reading, and those on paper.

#include "game/level/say.h"
#include "game/session/guide_stages.h"
#include "physics/flask/contents.h"

namespace halfdrop {

bool shows_change(const GuideFacts& facts) {
  if (!facts.let_in || facts.aliquots == 0) return false;
  const Level& level = *facts.level;
  const bool second = second_endpoint_due(facts);
  if (second && !facts.let_in_on) return false;  // the first one's colour, or an indicator not mixed yet
  const bool gains = second ? level.then->endpoint_gains_colour : level.endpoint_gains_colour;
  // The second indicator may be in too soon.
  const ColourSeen& seen = !second && facts.seen.first ? *facts.seen.first : facts.seen;
  return gains ? seen.common_change >= kFirstVisibleChange : seen.common_left <= kFirstVisibleChange;
}

bool second_endpoint_due(const GuideFacts& facts) { return facts.level->then && facts.first_cm3; }

namespace guide {

namespace {

constexpr double kHalvesFrom_cm3 = 0.35;  ///< before the end that is expected
constexpr double kSingleDrops_per_s = 2.5;
constexpr double kStreaky = 3.0;  ///< CIEDE2000 between places: not one colour yet

bool flask_ready(F f) {
  const bool ready = f.aliquots > 0 && f.indicator_drops >= kEnoughIndicator;
  return ready && (!second_endpoint_due(f) || f.second_indicator_drops >= kEnoughIndicator);
}
bool titrating(F f) { return running(f) && flask_ready(f) && f.seen.flask_under_jet && !f.colour_lasted; }
bool trial(F f) { return f.run == "trial" || !f.expected_cm3; }
bool turned(F f) { return titrating(f) && shows_change(f); }
bool unturned(F f) { return titrating(f) && !shows_change(f); }
bool accurate(F f) { return titrating(f) && !trial(f); }
bool to_be_read(F f) { return running(f) && f.colour_lasted; }
bool first_to_be_read(F f) { return to_be_read(f) && f.level->then && !f.first_cm3; }
bool last_to_be_read(F f) { return to_be_read(f) && !first_to_be_read(f); }
bool past_first(F f) { return running(f) && second_endpoint_due(f); }
bool over(F f) { return f.run.empty(); }
bool dry_wall(F f) { return !f.seen.wall_wet; }
bool swirls(F f) { return f.hands.swirl > 0.0; }

double expected_titre_cm3(F f) {
  const bool first = f.level->then && !second_endpoint_due(f);
  return (first ? f.expected_first_cm3 : f.expected_cm3).value_or(0.0);
}
double expected_end_cm3(F f) { return f.initial_cm3.value_or(0.0) + expected_titre_cm3(f); }
const std::string& colour_to_stop_at(F f) {
  return second_endpoint_due(f) ? f.level->then->endpoint_colour : f.level->endpoint_colour;
}
bool near_end(F f) { return f.seen.reading_cm3 >= expected_end_cm3(f) - kQuickUntil_cm3 || shows_change(f); }
bool within_drops(F f) {
  return f.seen.reading_cm3 >= expected_end_cm3(f) - kHalvesFrom_cm3 || shows_change(f);
}

std::string second_indicator_words(F f) {
  return say("guide.second_indicator.do",
             {{"indicator", f.level->then ? f.level->then->indicator : f.level->indicator}});
}
std::string why_trial(F f) { return say("guide.trial_run.why", {{"colour", colour_to_stop_at(f)}}); }
std::string why_halves(F f) { return say("guide.half_drops.why", {{"colour", colour_to_stop_at(f)}}); }
std::string quick_words(F f) {
  return say("guide.run_quickly.do", {{"reading", one_decimal(expected_end_cm3(f) - kQuickUntil_cm3)}});
}
std::string why_quick(F f) {
  return say("guide.run_quickly.why", {{"titre", one_decimal(expected_titre_cm3(f))}});
}
std::string tick_words(F f) {
  if (f.counting.size() < 2) return say("guide.tick.do");
  return say("guide.tick.do_two", {{"one", f.counting[0]}, {"other", f.counting[1]}});
}
std::string why_tick(F f) {
  if (f.agree) return say("guide.tick.why");
  return say("guide.tick.why_apart");
}
std::string line_words(F f) { return say("guide.working.do", {{"line", f.next_line}}); }

const std::vector<GuideStep> kRun = {
    {"tile",
     under_way,
     [](F f) { return f.tile_laid; },
     says<"guide.tile.do">,
     says<"guide.tile.why">,
     Deed::lay_tile,
     {},
     ""},
    {"pipette",
     [](F f) { return under_way(f) && f.aliquots == 0 && !f.level->pipette.by_hand; },
     [](F f) { return f.pipette_full; },
     says<"guide.pipette.do">,
     says<"guide.pipette.why">,
     Deed::fill_pipette,
     {},
     ""},
    {"flask-out",
     [](F f) { return under_way(f) && f.aliquots == 0; },
     [](F f) { return !f.seen.flask_under_jet; },
     says<"guide.flask_out.do">,
     says<"guide.flask_out.why">,
     {},
     {},
     ""},
    {"deliver",
     [](F f) { return under_way(f) && !f.level->pipette.by_hand; },
     [](F f) { return f.aliquots > 0; },
     says<"guide.deliver.do">,
     says<"guide.deliver.why">,
     Deed::deliver_aliquot,
     {},
     ""},
    {"indicator",
     under_way,
     [](F f) { return f.indicator_drops >= kEnoughIndicator; },
     says<"guide.indicator.do">,
     says<"guide.indicator.why">,
     Deed::add_indicator,
     {},
     ""},
    {"second-indicator",
     past_first,
     [](F f) { return f.second_indicator_drops >= kEnoughIndicator; },
     second_indicator_words,
     says<"guide.second_indicator.why">,
     Deed::add_second_indicator,
     {},
     ""},
    {"flask-under",
     [](F f) { return running(f) && flask_ready(f); },
     [](F f) { return f.seen.flask_under_jet; },
     says<"guide.flask_under.do">,
     says<"guide.flask_under.why">,
     {},
     {},
     ""},
    {"swirl", unturned, swirls, says<"guide.swirl.do">, says<"guide.swirl.why">, {}, {}, ""},
    {"mix",
     [](F f) { return titrating(f) && shut(f) && (trial(f) || !near_end(f)); },
     [](F f) { return f.seen.streaks <= kStreaky; },
     says<"guide.mix.do">,
     says<"guide.mix.why">,
     {},
     {},
     ""},
    {"trial-run",
     [](F f) { return titrating(f) && trial(f); },
     shows_change,
     says<"guide.trial_run.do">,
     why_trial,
     {},
     {},
     ""},
    {"run-quickly", accurate, near_end, quick_words, why_quick, {}, {}, ""},
    {"slow-down",
     [](F f) { return accurate(f) && near_end(f); },
     [](F f) { return f.seen.drops_per_s <= kSingleDrops_per_s; },
     says<"guide.slow_down.do">,
     says<"guide.slow_down.why">,
     {},
     {},
     ""},
    {"wash-down",
     [](F f) { return unturned(f) && shut(f) && (trial(f) || !within_drops(f)); },
     dry_wall,
     says<"guide.wash_down.do">,
     says<"guide.wash_down.why">,
     {},
     {},
     ""},
    {"drops",
     [](F f) { return accurate(f) && near_end(f); },
     within_drops,
     says<"guide.drops.do">,
     says<"guide.drops.why">,
     {},
     {},
     ""},
    {"half-drops",
     [](F f) { return accurate(f) && within_drops(f); },
     shows_change,
     says<"guide.half_drops.do">,
     why_halves,
     Deed::touch_off_drop,
     {},
     ""},
    {"shut", turned, shut, says<"guide.shut.do">, says<"guide.shut.why">, {}, {}, ""},
    {"drop-in",
     turned,
     [](F f) { return !hangs(f); },
     says<"guide.drop_in.do">,
     says<"guide.drop_in.why">,
     Deed::touch_off_drop,
     {},
     ""},
    {"wash-in", turned, dry_wall, says<"guide.wash_in.do">, says<"guide.wash_in.why">, {}, {}, ""},
    {"wait",
     turned,
     [](F f) { return f.colour_lasted; },
     says<"guide.wait.do">,
     says<"guide.wait.why">,
     {},
     {},
     ""},
    {"eye-final", to_be_read, eye_level, says<"guide.eye_final.do">, says<"guide.eye_final.why">, {}, {}, ""},
    {"read-first",
     first_to_be_read,
     [](F f) { return f.first_cm3.has_value(); },
     says<"guide.read_first.do">,
     says<"guide.read_first.why">,
     {},
     {},
     "/first endpoint"},
    {"read-final",
     last_to_be_read,
     [](F f) { return f.final_cm3.has_value(); },
     says<"guide.read_final.do">,
     says<"guide.read_final.why">,
     {},
     {},
     "/final"},
    {"first-titre",
     [](F f) { return !f.run.empty() && f.level->then && f.first_cm3 && f.final_cm3; },
     [](F f) { return f.first_titre_written; },
     says<"guide.first_titre.do">,
     says<"guide.first_titre.why">,
     {},
     {},
     "/first titre"},
    {"titre",
     [](F f) { return !f.run.empty() && f.final_cm3; },
     never,
     says<"guide.titre.do">,
     says<"guide.titre.why">,
     {},
     {},
     "/titre"},
};

const std::vector<GuideStep> kPaper = {
    {"tick", over, [](F f) { return f.ticked >= 2; }, tick_words, why_tick, {}, {}, "/counts"},
    {"working",
     over,
     [](F f) { return f.next_line.empty(); },
     line_words,
     says<"guide.working.why">,
     {},
     {},
     "calculation/"},
    {"hand-in", over, never, says<"guide.hand_in.do">, says<"guide.hand_in.why">, {}, {}, ""},
};

}  // namespace

std::span<const GuideStep> steps_of_a_run() { return kRun; }
std::span<const GuideStep> steps_on_paper() { return kPaper; }

}  // namespace guide
}  // namespace halfdrop

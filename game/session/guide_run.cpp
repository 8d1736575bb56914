// The guide's steps from the pipette to the final reading, and those on paper.

#include "game/session/guide_stages.h"
#include "physics/flask/contents.h"

namespace halfdrop {

bool shows_change(const GuideFacts& facts) {
  if (!facts.let_in || facts.aliquots == 0) return false;
  const Level& level = *facts.level;
  const bool second = second_endpoint_due(facts);
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

std::string why_trial(F f) {
  return "It shows where the endpoint lies, no more. Stop at " + colour_to_stop_at(f) + ".";
}
std::string why_halves(F f) {
  return "Half the drop, half the overshoot. Stop at " + colour_to_stop_at(f) + ".";
}
std::string quick_words(F f) {
  return "Let titrant run in to about " + one_decimal(expected_end_cm3(f) - kQuickUntil_cm3) +
         " on the scale; then shut the tap.";
}
std::string why_quick(F f) {
  return "The smallest titre so far was " + one_decimal(expected_titre_cm3(f)) +
         " cm³: only the last 1.5 cm³ needs care.";
}
std::string tick_words(F f) {
  if (f.counting.size() < 2) return "Tick the titres that count.";
  return "Tick the titres of runs " + f.counting[0] + " and " + f.counting[1] + ".";
}
std::string why_tick(F f) {
  if (f.agree) return "They agree within 0.10 cm³. The trial was too quick to count.";
  return "They are the nearest that the sheet has room for, though not within 0.10 cm³.";
}
std::string line_words(F f) { return "Work out the line “" + f.next_line + "”."; }

const std::vector<GuideStep> kRun = {
    {"tile",
     under_way,
     [](F f) { return f.tile_laid; },
     say<"Lay the white tile under the jet.">,
     say<"On white the first tint shows sooner, and at the same point in every run.">,
     Deed::lay_tile,
     {},
     ""},
    {"pipette",
     [](F f) { return under_way(f) && f.aliquots == 0 && !f.level->pipette.by_hand; },
     [](F f) { return f.pipette_full; },
     say<"Fill the pipette from the sample, with the filler.">,
     say<"One pipetteful is the same amount each time. Never by mouth.">,
     Deed::fill_pipette,
     {},
     ""},
    {"flask-out",
     [](F f) { return under_way(f) && f.aliquots == 0; },
     [](F f) { return !f.seen.flask_under_jet; },
     say<"Set the flask aside.">,
     say<"The pipette needs the room above it.">,
     {},
     {},
     ""},
    {"deliver",
     [](F f) { return under_way(f) && !f.level->pipette.by_hand; },
     [](F f) { return f.aliquots > 0; },
     say<"Let the pipette run into the flask.">,
     say<"What stays in its tip belongs there: it was made to deliver its volume without.">,
     Deed::deliver_aliquot,
     {},
     ""},
    {"indicator",
     under_way,
     [](F f) { return f.indicator_drops >= kEnoughIndicator; },
     say<"Add three drops of indicator, as many in every run.">,
     say<"Fewer show the change late; more, being an acid or a base, take up titrant themselves.">,
     Deed::add_indicator,
     {},
     ""},
    {"second-indicator",
     past_first,
     [](F f) { return f.second_indicator_drops >= kEnoughIndicator; },
     [](F f) { return "Add three drops of " + f.level->then->indicator + " to the same flask."; },
     say<"The first indicator has shown all it can; this one shows the second endpoint.">,
     Deed::add_second_indicator,
     {},
     ""},
    {"flask-under",
     [](F f) { return running(f) && flask_ready(f); },
     [](F f) { return f.seen.flask_under_jet; },
     say<"Set the flask under the jet, on the tile.">,
     say<"With the jet inside its neck, all that leaves the scale goes into the flask.">,
     {},
     {},
     ""},
    {"swirl",
     unturned,
     swirls,
     say<"Swirl the flask, and go on while titrant runs in.">,
     say<"Where titrant falls the colour flashes early; only the mixed flask tells how far you are.">,
     {},
     {},
     ""},
    {"mix",
     [](F f) { return titrating(f) && shut(f) && (trial(f) || !near_end(f)); },
     [](F f) { return f.seen.streaks <= kStreaky; },
     say<"Swirl until the flask is one colour.">,
     say<"Only then can you tell whether the change stays, or was a flash.">,
     {},
     {},
     ""},
    {"trial-run",
     [](F f) { return titrating(f) && trial(f); },
     shows_change,
     say<"Trial run: let titrant in until the colour stays; shut the tap.">,
     why_trial,
     {},
     {},
     ""},
    {"run-quickly", accurate, near_end, quick_words, why_quick, {}, {}, ""},
    {"slow-down",
     [](F f) { return accurate(f) && near_end(f); },
     [](F f) { return f.seen.drops_per_s <= kSingleDrops_per_s; },
     say<"Shut the tap, or slow down to single drops.">,
     say<"A drop is about 0.05 cm³, and from here each may be the last one.">,
     {},
     {},
     ""},
    {"wash-down",
     [](F f) { return unturned(f) && shut(f) && (trial(f) || !within_drops(f)); },
     dry_wall,
     say<"Wash the flask's wall down with a little water.">,
     say<"Titrant that clings there is counted but does not react. Water brings no moles.">,
     {},
     {},
     ""},
    {"drops",
     [](F f) { return accurate(f) && near_end(f); },
     within_drops,
     say<"Let in single drops, and look at the mixed flask after each.">,
     say<"The nearer the endpoint, the longer the flash takes to fade.">,
     {},
     {},
     ""},
    {"half-drops",
     [](F f) { return accurate(f) && within_drops(f); },
     shows_change,
     say<"Half drops: let one swell, shut the tap, touch it off, wash it in.">,
     why_halves,
     Deed::touch_off_drop,
     {},
     ""},
    {"shut",
     turned,
     shut,
     say<"Shut the tap.">,
     say<"The whole flask has changed: every further drop is 0.05 cm³ too much.">,
     {},
     {},
     ""},
    {"drop-in",
     turned,
     [](F f) { return !hangs(f); },
     say<"Touch the hanging drop off on the flask's neck.">,
     say<"It has left the scale, so it must react too.">,
     Deed::touch_off_drop,
     {},
     ""},
    {"wash-in",
     turned,
     dry_wall,
     say<"Wash the flask's wall down with a little water.">,
     say<"What clings there was counted but has not reacted. Water brings no moles.">,
     {},
     {},
     ""},
    {"wait",
     turned,
     [](F f) { return f.colour_lasted; },
     say<"Go on swirling for half a minute.">,
     say<"The colour has to last, and the film in the burette still runs down to the meniscus.">,
     {},
     {},
     ""},
    {"eye-final",
     to_be_read,
     eye_level,
     say<"Bring your eye level with the meniscus where it stands now.">,
     say<"From the height of the first reading you would read too little: the titre is too small.">,
     {},
     {},
     ""},
    {"read-first",
     first_to_be_read,
     [](F f) { return f.first_cm3.has_value(); },
     say<"Read to 0.05 and write it as first endpoint.">,
     say<"Before the second indicator goes in: its colour would hide the first one's last trace.">,
     {},
     {},
     "/first endpoint"},
    {"read-final",
     last_to_be_read,
     [](F f) { return f.final_cm3.has_value(); },
     say<"Read to 0.05 and write it as final.">,
     say<"Before anything is poured or moved: later it cannot be read again.">,
     {},
     {},
     "/final"},
    {"first-titre",
     [](F f) { return !f.run.empty() && f.level->then && f.final_cm3; },
     [](F f) { return f.first_titre_written; },
     say<"Write the first titre: first endpoint less initial.">,
     say<"It is what the first endpoint alone took.">,
     {},
     {},
     "/first titre"},
    {"titre",
     [](F f) { return !f.run.empty() && f.final_cm3; },
     never,
     say<"Write the titre: final less initial.">,
     say<"It is what went into the flask, wherever on the scale you began.">,
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
     say<"It goes on from your own figures above; carry one figure more than you will report.">,
     {},
     {},
     "calculation/"},
    {"hand-in",
     over,
     never,
     say<"Look your sheet over once more, and hand in.">,
     say<"All is done, and nothing can be changed afterwards.">,
     {},
     {},
     ""},
};

}  // namespace

std::span<const GuideStep> steps_of_a_run() { return kRun; }
std::span<const GuideStep> steps_on_paper() { return kPaper; }

}  // namespace guide
}  // namespace halfdrop

// The guide's steps from the coat to the initial reading. Reasons say which way a slip would push the titre.

#include <algorithm>
#include <array>
#include <cstdio>

#include "game/session/guide_stages.h"

namespace halfdrop::guide {

bool to_be_let_out(F f) { return !f.seen.jet_full || f.seen.reading_cm3 < kOnScale_cm3; }

bool too_little(F f) {
  constexpr double kFirstStart = 0.2;  // of the scale: titres take no more than 0.7 of it
  const double nominal_cm3 = f.level->burette.nominal_cm3;
  const double latest_cm3 =
      f.expected_cm3 ? nominal_cm3 - *f.expected_cm3 - kSpare_cm3 : kFirstStart * nominal_cm3;
  return !f.seen.meniscus_in_sight || f.seen.reading_cm3 > std::max(latest_cm3, kRefilled_cm3);
}

namespace {

bool jet_full(F f) { return f.seen.jet_full; }
bool filled(F f) {
  constexpr double kAboveZero_cm3 = -0.1;
  return f.seen.meniscus_in_sight && f.seen.reading_cm3 < (jet_full(f) ? kRefilled_cm3 : kAboveZero_cm3);
}

}  // namespace

bool to_be_poured(F f) {
  if (rinse_to_be_poured(f)) return true;
  return !rinsing(f) && (f.funnel_in ? !filled(f) : too_little(f));
}

std::string one_decimal(double value) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.1f", value);
  return text.data();
}

namespace {

bool always(F) { return true; }
bool no_flask(F f) { return !f.seen.flask_under_jet; }
bool beaker_under(F f) { return f.seen.beaker_under; }

/// The tap is open for a purpose.
bool lets_out(F f) { return beaker_under(f) && f.seen.meniscus_in_sight && !f.funnel_in && to_be_let_out(f); }
bool jet_is_done(F f) { return preparing(f) && beaker_under(f) && !too_little(f) && !to_be_let_out(f); }
bool ready_to_read(F f) {
  return preparing(f) && !too_little(f) && !f.funnel_in && !to_be_let_out(f) && shut(f) && !beaker_under(f);
}
/// An initial reading stands there, the tap was not opened since, and the burette is not ready.
bool read_too_early(F f) { return running(f) && !f.let_in && (f.funnel_in || !jet_full(f) || too_little(f)); }

std::string why_shut(F f) {
  return f.seen.meniscus_in_sight
             ? "What runs out before the first reading is lost, and wets the bench."
             : "A burette is put away with its tap open: what you pour in would run straight out.";
}
std::string fill_words(F f) {
  return jet_full(f) ? "Pour titrant in, up to about the zero mark."
                     : "Pour titrant in until it stands a little above the zero mark.";
}
std::string why_fill(F f) {
  if (!jet_full(f)) return "Filling the jet takes some of it; then the meniscus is on the scale.";
  return "What is left would not last for a run, and below the last mark nothing can be read.";
}
std::string why_too_early(F f) {
  if (f.funnel_in) return "The funnel is still in: its drips would raise the level that you read.";
  if (!jet_full(f)) return "There is air in the jet: it would be counted as titrant.";
  return "There is too little in it for a run.";
}

const std::vector<GuideStep> kSafely = {
    {"coat",
     always,
     [](F f) { return f.coat_on; },
     say<"Put on your lab coat and button it.">,
     say<"A splash then lands on the coat, not on you.">,
     Deed::put_on_coat,
     {},
     ""},
    {"goggles",
     always,
     [](F f) { return f.goggles_on; },
     say<"Put on eye protection.">,
     say<"It stays on from the first liquid to the last: even weak acid or alkali harms eyes.">,
     Deed::put_on_goggles,
     {},
     ""},
    {"tap-shut",
     [](F f) { return preparing(f) && !lets_out(f) && !jet_is_done(f) && !rinses_out(f); },
     shut,
     say<"Turn the tap across the burette: that is shut.">,
     why_shut,
     {},
     {},
     ""},
    {"mop",
     shut,
     [](F f) { return !f.seen.bench_wet; },
     say<"Mop up what was spilt.">,
     say<"A wet bench is a hazard, and nobody else can tell what the puddle is.">,
     Deed::wipe_bench,
     {},
     ""},
};

const std::vector<GuideStep> kFlaskReady = {
    {"flask-aside",
     [](F f) { return preparing(f) && (f.flask_spent || f.aliquots == 0 || too_little(f)); },
     no_flask,
     say<"Set the flask aside.">,
     say<"Beaker and pipette need the room, and nothing may fall into it uncounted.">,
     {},
     {},
     ""},
    {"rinse-flask", preparing, [](F f) { return !f.flask_spent; },
     say<"Empty the flask and rinse it with water.">,
     say<"What is left in it would count in the next run. Water brings no moles: it may stay wet.">,
     Deed::rinse_flask, Deed::empty_flask, ""},
};

const std::vector<GuideStep> kBefore = {
    {"funnel-in",
     [](F f) { return preparing(f) && too_little(f); },
     [](F f) { return f.funnel_in; },
     say<"Put the funnel into the burette.">,
     say<"The rim is narrow: without it, titrant runs down the outside and over your hands.">,
     Deed::put_in_funnel,
     {},
     ""},
    {"fill", [](F f) { return preparing(f) && f.funnel_in; }, filled, fill_words, why_fill, {}, {}, ""},
    {"funnel-out",
     [](F f) { return preparing(f) && filled(f); },
     [](F f) { return !f.funnel_in; },
     say<"Take the funnel out.">,
     say<"Its drips would raise the level once it is read: the titre comes out too small.">,
     Deed::lift_out_funnel,
     {},
     ""},
    {"beaker-under",
     [](F f) { return preparing(f) && !too_little(f) && (to_be_let_out(f) || hangs(f)); },
     beaker_under,
     say<"Stand the waste beaker under the jet.">,
     say<"It takes what runs out while the jet fills.">,
     Deed::put_beaker_under,
     {},
     ""},
    {"jet",
     [](F f) { return preparing(f) && beaker_under(f) && !too_little(f); },
     jet_full,
     say<"Open the tap wide until no air is left in the jet.">,
     say<"Air that leaves later is counted as titrant, but none reached the flask: the titre is too large.">,
     Deed::flick_jet,
     {},
     ""},
    {"on-scale",
     [](F f) { return preparing(f) && beaker_under(f) && jet_full(f); },
     [](F f) { return f.seen.reading_cm3 >= kOnScale_cm3; },
     say<"Let titrant out until the meniscus is below the zero mark.">,
     say<"Above it nothing can be read. Where below does not matter: a titre is a difference.">,
     {},
     {},
     ""},
    {"jet-shut",
     jet_is_done,
     shut,
     say<"Shut the tap.">,
     say<"The jet is full and the meniscus on the scale: what runs out now is only wasted.">,
     {},
     {},
     ""},
    {"drop-off",
     [](F f) { return jet_is_done(f) && shut(f); },
     [](F f) { return !hangs(f); },
     say<"Touch the hanging drop off on the beaker.">,
     say<"It has left the scale already, yet would react in the flask: the titre is too small.">,
     Deed::touch_off_drop,
     {},
     ""},
    {"beaker-away",
     [](F f) { return jet_is_done(f) && shut(f) && !hangs(f); },
     [](F f) { return !beaker_under(f); },
     say<"Take the beaker away.">,
     say<"From the first reading on, whatever leaves the jet belongs in the flask.">,
     Deed::take_beaker_away,
     {},
     ""},
    {"eye-initial",
     ready_to_read,
     eye_level,
     say<"Bring your eye level with the meniscus.">,
     say<"From above the burette reads too little. Level, the far half of a ring hides behind the near.">,
     {},
     {},
     ""},
    {"read-initial",
     preparing,
     [](F f) { return f.initial_cm3.has_value(); },
     say<"Read the lowest point of the curve to 0.05 and write it as initial.">,
     say<"It need not be 0.00, only true: the titre is the difference of two readings.">,
     {},
     {},
     "/initial"},
    {"read-too-early",
     read_too_early,
     never,
     say<"Strike out the initial reading: it came too early.">,
     why_too_early,
     {},
     {},
     "/initial"},
};

}  // namespace

std::span<const GuideStep> steps_before_a_run() {
  static const std::vector<GuideStep> steps = [] {
    std::vector<GuideStep> all(kSafely.begin(), kSafely.end());
    const auto add = [&](std::span<const GuideStep> more) {
      all.insert(all.end(), more.begin(), more.end());
    };
    add(kFlaskReady);
    add(steps_of_lowering());
    add(steps_of_rinsing());
    add(kBefore);
    return all;
  }();
  return steps;
}

}  // namespace halfdrop::guide

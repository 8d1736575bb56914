// The guide's steps from the coat to the initial reading. Reasons say which way a slip would push the titre.

#include <algorithm>
#include <array>
#include <cstdio>

#include "game/level/say.h"
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
  return f.seen.meniscus_in_sight ? say("guide.tap_shut.why") : say("guide.tap_shut.why_first");
}
std::string fill_words(F f) { return jet_full(f) ? say("guide.fill.do") : say("guide.fill_jet.do"); }
std::string why_fill(F f) {
  if (!jet_full(f)) return say("guide.fill_jet.why");
  return say("guide.fill.why");
}
std::string why_too_early(F f) {
  if (f.funnel_in) return say("guide.read_too_early.why_funnel");
  if (!jet_full(f)) return say("guide.read_too_early.why_jet");
  return say("guide.read_too_early.why_little");
}

const std::vector<GuideStep> kSafely = {
    {"coat",
     always,
     [](F f) { return f.coat_on; },
     says<"guide.coat.do">,
     says<"guide.coat.why">,
     Deed::put_on_coat,
     {},
     ""},
    {"goggles",
     always,
     [](F f) { return f.goggles_on; },
     says<"guide.goggles.do">,
     says<"guide.goggles.why">,
     Deed::put_on_goggles,
     {},
     ""},
    {"tap-shut",
     [](F f) { return preparing(f) && !lets_out(f) && !jet_is_done(f) && !rinses_out(f); },
     shut,
     says<"guide.tap_shut.do">,
     why_shut,
     {},
     {},
     ""},
    {"mop",
     shut,
     [](F f) { return !f.seen.bench_wet; },
     says<"guide.mop.do">,
     says<"guide.mop.why">,
     Deed::wipe_bench,
     {},
     ""},
};

const std::vector<GuideStep> kFlaskReady = {
    {"flask-aside",
     [](F f) { return preparing(f) && (f.flask_spent || f.aliquots == 0 || too_little(f)); },
     no_flask,
     says<"guide.flask_aside.do">,
     says<"guide.flask_aside.why">,
     {},
     {},
     ""},
    {"rinse-flask", preparing, [](F f) { return !f.flask_spent; }, says<"guide.rinse_flask.do">,
     says<"guide.rinse_flask.why">, Deed::rinse_flask, Deed::empty_flask, ""},
};

const std::vector<GuideStep> kBefore = {
    {"funnel-in",
     [](F f) { return preparing(f) && too_little(f); },
     [](F f) { return f.funnel_in; },
     says<"guide.funnel_in.do">,
     says<"guide.funnel_in.why">,
     Deed::put_in_funnel,
     {},
     ""},
    {"fill", [](F f) { return preparing(f) && f.funnel_in; }, filled, fill_words, why_fill, {}, {}, ""},
    {"funnel-out",
     [](F f) { return preparing(f) && filled(f); },
     [](F f) { return !f.funnel_in; },
     says<"guide.funnel_out.do">,
     says<"guide.funnel_out.why">,
     Deed::lift_out_funnel,
     {},
     ""},
    {"beaker-under",
     [](F f) { return preparing(f) && !too_little(f) && (to_be_let_out(f) || hangs(f)); },
     beaker_under,
     says<"guide.beaker_under.do">,
     says<"guide.beaker_under.why">,
     Deed::put_beaker_under,
     {},
     ""},
    {"jet",
     [](F f) { return preparing(f) && beaker_under(f) && !too_little(f); },
     jet_full,
     says<"guide.jet.do">,
     says<"guide.jet.why">,
     Deed::flick_jet,
     {},
     ""},
    {"on-scale",
     [](F f) { return preparing(f) && beaker_under(f) && jet_full(f); },
     [](F f) { return f.seen.reading_cm3 >= kOnScale_cm3; },
     says<"guide.on_scale.do">,
     says<"guide.on_scale.why">,
     {},
     {},
     ""},
    {"jet-shut", jet_is_done, shut, says<"guide.jet_shut.do">, says<"guide.jet_shut.why">, {}, {}, ""},
    {"drop-off",
     [](F f) { return jet_is_done(f) && shut(f); },
     [](F f) { return !hangs(f); },
     says<"guide.drop_off.do">,
     says<"guide.drop_off.why">,
     Deed::touch_off_drop,
     {},
     ""},
    {"beaker-away",
     [](F f) { return jet_is_done(f) && shut(f) && !hangs(f); },
     [](F f) { return !beaker_under(f); },
     says<"guide.beaker_away.do">,
     says<"guide.beaker_away.why">,
     Deed::take_beaker_away,
     {},
     ""},
    {"eye-initial",
     ready_to_read,
     eye_level,
     says<"guide.eye_initial.do">,
     says<"guide.eye_initial.why">,
     {},
     {},
     ""},
    {"read-initial",
     preparing,
     [](F f) { return f.initial_cm3.has_value(); },
     says<"guide.read_initial.do">,
     says<"guide.read_initial.why">,
     {},
     {},
     "/initial"},
    {"read-too-early",
     read_too_early,
     never,
     says<"guide.read_too_early.do">,
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
    add(steps_of_making_up());
    add(kFlaskReady);
    add(steps_of_lowering());
    add(steps_of_rinsing());
    add(kBefore);
    return all;
  }();
  return steps;
}

}  // namespace halfdrop::guide

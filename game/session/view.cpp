#include "game/session/view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "physics/bench/clamp.h"
#include "physics/bench/pipette_by_hand.h"
#include "physics/bench/preparation.h"
#include "physics/burette/column.h"
#include "physics/burette/jet.h"
#include "physics/burette/plug.h"
#include "physics/burette/rinsing.h"
#include "physics/eye/sight_line.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

double cm3_in(const BenchState& state, Account account) { return state.ledger.balance(account).volume_cm3(); }

void view_burette(const Session& session, View& v) {
  const BenchSpec& spec = session.spec();
  const BenchState& state = session.state();
  const double column = cm3_in(state, Account::column);
  const ReadingSeen seen = reading_seen(spec, state);
  v.meniscus_cm3 = scale_reading_cm3(spec.burette, column);
  v.apparent_cm3 = seen.bottom_cm3;
  v.apparent_edge_cm3 = seen.edge_cm3;
  v.eye_above_level_mm =
      eye_above_mark_mm(sight_geometry(spec), eye_above_zero_mm(session.hands()), v.meniscus_cm3);
  v.in_hand = state.in_hand;
  v.held_aslant = held_aslant(state);
  v.column_cm3 = column;
  v.column_empty = column <= 0.0 || v.held_aslant;
  v.plug = plug_after(spec.tap, state.plug, session.hands().tap);
  v.flow_cm3_s = v.held_aslant ? 0.0 : tip_flow_cm3_s(spec, state, v.plug);
  v.jet_fill = cm3_in(state, Account::jet) / spec.burette.jet_cm3;
  v.jet_below = v.jet_fill >= 1.0
                    ? 1.0
                    : static_cast<double>(state.jet_below) * kVolumeQuantum_cm3 / spec.burette.jet_cm3;
  v.hanging_cm3 = cm3_in(state, Account::pendant_drop);
  v.full_drop_cm3 = spec.settled.full_drop_cm3;
  v.streams = v.flow_cm3_s >= spec.settled.stream_from_cm3_s;
  for (const FallingDrop& drop : state.falling) {
    if (drop.flying) v.drops_fallen_cm.push_back(drop.fallen_cm + 0.1 * state.hands.clamp_mm);
  }
}

/// The bench has what lets go of the plug at once: its fall is to be seen only, by how much hangs anew.
void view_leak(const Session& session, View& v) {
  const BenchSpec& spec = session.spec();
  const BenchState& state = session.state();
  v.plug_drop_cm3 = cm3_in(state, Account::plug_drop);
  const double seeps = seeps_cm3_s(spec, state);
  if (seeps <= 0.0 || state.ledger.moved(Account::plug_drop, Account::bench_top).empty()) return;
  const double since_s = v.plug_drop_cm3 / seeps;
  const double fallen_cm = 0.5 * kGravity_m_s2 * since_s * since_s * 100.0;
  if (fallen_cm < tip_height_cm(spec, state.hands) + 0.1 * spec.burette.jet_length_mm)
    v.plug_drop_fallen_cm = fallen_cm;
}

void view_touching(const Session& session, View& v) {
  const std::vector<Change>& changes = session.attempt().changes;
  for (auto change = changes.rbegin(); change != changes.rend(); ++change) {
    const double ago_s = seconds(session.state().tick - change->tick);
    if (ago_s > kTouchShows_s) return;
    const Deed* deed = std::get_if<Deed>(&change->what);
    if (deed == nullptr || *deed != Deed::touch_off_drop) continue;
    v.touched_off_s = ago_s;
    return;
  }
}

/// How many protons a mean molecule of the indicator has lost: places are put in order by it.
float protons_lost(const FormAmounts& forms) {
  const float all = forms[0] + forms[1] + forms[2] + forms[3];
  return all > 0.0F ? (forms[1] + 2.0F * forms[2] + 3.0F * forms[3]) / all : 0.0F;
}

/// The places whose indicator (the one whose change is due) has come on least, middling and most.
std::array<TintHere, 3> ordered_places(const LiquidLook& look, Endpoint due) {
  const std::vector<FormAmounts>& forms = due == Endpoint::second ? look.second_forms : look.forms;
  std::vector<std::size_t> places(forms.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  const auto before = [&](std::size_t a, std::size_t b) {
    return protons_lost(forms[a]) < protons_lost(forms[b]);
  };
  const auto middle = places.begin() + static_cast<std::ptrdiff_t>(places.size() / 2);
  std::nth_element(places.begin(), middle, places.end(), before);
  return {look.at(*std::min_element(places.begin(), middle + 1, before)), look.at(*middle),
          look.at(*std::max_element(middle, places.end(), before))};
}

/// A place as the change that is due is judged by (contents.h: before_change).
TintHere judged(TintHere tint, Endpoint due) {
  if (due == Endpoint::second) tint.first = {};
  return tint;
}

/// One endpoint's change, and the places that stand for the flask: its middling one and the most changed.
struct JudgedChange {
  ColourSeen seen;
  TintHere middle, most;
};

JudgedChange judged_change(const BenchSpec& spec, const Parcel& liquid, const LiquidLook& look,
                           Backdrop backdrop, Endpoint due) {
  const double path = sight_path_cm(spec.flask, liquid.volume_cm3());
  // Titrant that a liquid got on paper only has long met the carbonate.
  const Hydration compared = spec.then ? Hydration::complete : Hydration::as_it_stands;
  const Lab before = to_lab(colour_of(spec, before_change(spec, liquid, due), path, backdrop, compared));
  const Lab to_come = to_lab(colour_of(spec, far_past_endpoint(spec, liquid, due), path, backdrop, compared));
  const auto seen = [&](const TintHere& tint) {
    return to_lab(colour_of(spec, judged(tint, due), path, backdrop));
  };
  JudgedChange change{{}, look.all(), look.all()};
  ColourSeen& c = change.seen;
  const Lab whole = seen(change.middle);
  c.flask_change = c.streak_change = c.common_change = ciede2000(whole, before);
  c.common_left = ciede2000(whole, to_come);
  if (look.even()) return change;
  const auto [least, middle, most] = ordered_places(look, due);
  change.middle = middle;
  const Lab common = seen(middle);
  c.common_change = ciede2000(common, before);
  c.common_left = ciede2000(common, to_come);
  c.streaks = ciede2000(seen(least), seen(most));
  for (const TintHere& place : {least, most}) {
    const double off = ciede2000(seen(place), before);
    if (off <= c.streak_change) continue;
    c.streak_change = off;
    change.most = place;
  }
  return change;
}

void view_colours(const BenchSpec& spec, const BenchState& state, View& v) {
  const Backdrop backdrop = v.flask_on_tile ? Backdrop::white_tile : Backdrop::bare_bench;
  v.backdrop_colour = to_rgb(colour_of(spec, Parcel{}, 0.0, backdrop));
  v.flask_colour = v.common_colour = v.streak_colour = v.backdrop_colour;
  if (v.flask_cm3 <= 0.0) return;
  const Parcel liquid = flask_liquid(state.ledger);
  const double path = sight_path_cm(spec.flask, v.flask_cm3);
  const auto shown = [&](const TintHere& tint) { return to_rgb(colour_of(spec, tint, path, backdrop)); };
  const Endpoint due = endpoint_due(spec, liquid);
  const JudgedChange change = judged_change(spec, liquid, v.flask_look, backdrop, due);
  static_cast<ColourSeen&>(v) = change.seen;
  v.flask_colour = v.common_colour = v.streak_colour = shown(v.flask_look.all());
  if (!v.flask_look.even()) {
    v.common_colour = shown(change.middle);
    v.streak_colour = shown(change.most);
  }
  if (due == Endpoint::second)
    v.first = judged_change(spec, liquid, v.flask_look, backdrop, Endpoint::first).seen;
}

void view_pipette(const Session& session, View& v) {
  const BenchSpec& spec = session.spec();
  const BenchState& state = session.state();
  PipetteView& p = v.pipette;
  p.by_hand = spec.pipette.by_hand;
  p.holds = !state.ledger.balance(Account::pipette).empty();
  if (!p.by_hand) return;
  p.place = state.pipette_place;
  p.level_mm = pipette_level_mm(spec, state);
  p.seen_mm = pipette_seen_mm(spec, state);
  p.eye_above_mm = state.hands.eye_mm - kPipetteLine_mm;
  p.flow_cm3_s = pipette_flow_cm3_s(spec, state);
  p.outside_wet = !state.ledger.balance(Account::pipette_outside).empty();
  p.drains = pipette_drains(state);
  p.froths = state.pipette_air > 0;
}

bool taken_from(const BenchSpec& spec, const Ledger& books) {
  for (const Account to :
       {Account::pipette, Account::pipette_outside, Account::column, Account::funnel, Account::flask}) {
    if (!books.moved(standard_account(spec), to).empty()) return true;
  }
  return false;
}

void view_preparation(const Session& session, View& v) {
  const BenchSpec& spec = session.spec();
  const BenchState& state = session.state();
  PreparationView& p = v.preparation;
  p.asked = spec.preparation.asked;
  if (!p.asked) return;
  const NeckSeen seen = neck_seen(spec, state);
  p.shown_g = balance_shows_g(spec, state);
  p.out_g = tipped_out_g(spec, state);
  p.solid_left = weighing_bottle_g(spec, state) > spec.preparation.bottle_g;
  p.beaker_cm3 = cm3_in(state, Account::dissolving_beaker);
  p.dry_solid = p.out_g > 0.0 && p.beaker_cm3 <= 0.0;
  p.to_pour = p.beaker_cm3 > kStaysInBeaker_cm3;
  p.flask_cm3 = cm3_in(state, standard_account(spec));
  p.level_mm = neck_level_mm(spec, state);
  p.bottom_mm = seen.bottom_mm;
  p.edge_mm = seen.edge_mm;
  p.eye_above_mm = state.hands.eye_mm - kNeckLine_mm;
  p.in_neck = p.level_mm > -kNeckBelowLine_mm;
  p.taken_from = taken_from(spec, state.ledger);
  p.inversions = static_cast<int>(state.preparation.inversions);
}

void view_wall(const BenchState& state, View& v) {
  v.wall_cm3 = cm3_in(state, Account::flask_wall);
  v.swirl_turns = state.slosh.turns;
  v.swirl_reach_cm = state.slosh.reach_cm;
  v.wave_cm = state.slosh.wave_cm;
  for (const ClingingDrop& drop : state.wall.drops) {
    if (!drop.liquid.empty()) v.clinging.push_back({drop.side, drop.height_cm, drop.liquid.volume_cm3()});
  }
  for (std::size_t side = 0; side < state.wall.trail.size(); ++side) {
    for (std::size_t at = 0; at < kTrailLengths; ++at) {
      const double volume_cm3 = state.wall.trail[side][at].volume_cm3();
      if (volume_cm3 > 0.0)
        v.trails.push_back({side == 0 ? -1.0 : 1.0, static_cast<double>(at) + 0.5, volume_cm3});
    }
  }
}

void view_flask(const Session& session, std::size_t every, View& v) {
  const BenchSpec& spec = session.spec();
  const BenchState& state = session.state();
  v.flask_under_jet = flask_under_jet(spec, state);
  v.flask_on_tile = flask_on_tile(state);
  v.flask_cm3 = flask_liquid(state.ledger).volume_cm3();
  v.flask_depth_cm = liquid_depth_cm(spec.flask, v.flask_cm3);
  if (v.flask_cm3 > 0.0) v.flask_look = look_at(spec, state, every);
  view_colours(spec, state, v);
}

}  // namespace

const SightGeometry& sight_geometry(const BenchSpec& spec) { return spec.settled.sight; }

ReadingSeen reading_seen(const BenchSpec& spec, const BenchState& state) {
  const SightGeometry& sight = sight_geometry(spec);
  const double bottom = scale_reading_cm3(spec.burette, cm3_in(state, Account::column));
  const double eye_mm = eye_above_zero_mm(state.hands);
  return ReadingSeen{apparent_reading_cm3(sight, eye_mm, bottom), apparent_edge_cm3(sight, eye_mm, bottom)};
}

View view(const Session& session, std::size_t every) {
  const BenchState& state = session.state();
  View v;
  v.time_s = seconds(state.tick);
  v.hands = session.hands();
  v.coat_on = state.coat_on;
  v.goggles_on = state.goggles_on;
  v.funnel_in = state.funnel_in;
  v.beaker_under = state.beaker_under;
  v.tile_laid = state.tile_laid;
  v.over_edge = state.over_edge;
  view_burette(session, v);
  view_leak(session, v);
  view_touching(session, v);
  view_flask(session, every, v);
  view_wall(state, v);
  view_pipette(session, v);
  view_preparation(session, v);
  v.beaker_cm3 = cm3_in(state, Account::beaker);
  v.spilt_cm3 = cm3_in(state, Account::bench_top);
  v.pipette_cm3 = cm3_in(state, Account::pipette);
  v.funnel_cm3 = cm3_in(state, Account::funnel);
  v.bottle_cm3 = cm3_in(state, Account::titrant_bottle);
  return v;
}

Senses senses(const View& v) {
  Senses s;
  s.time_s = v.time_s;
  s.reading_cm3 = std::round(v.apparent_cm3 * 100.0) / 100.0;
  s.edge_cm3 = std::round(v.apparent_edge_cm3 * 100.0) / 100.0;
  s.eye_above_level_mm = std::round(v.eye_above_level_mm * 2.0) / 2.0;
  s.meniscus_in_sight = !v.column_empty;
  s.jet_full = v.jet_fill > 0.999;
  s.hanging_share = v.hanging_cm3 / v.full_drop_cm3;
  s.drops_per_s = v.flow_cm3_s / v.full_drop_cm3;
  s.falling = static_cast<int>(v.drops_fallen_cm.size());
  static_cast<ColourSeen&>(s) = v;
  s.first = v.first;
  s.flask_has_liquid = v.flask_cm3 > 1.0;
  s.beaker_under = v.beaker_under;
  s.flask_under_jet = v.flask_under_jet;
  s.over_edge = v.over_edge;
  s.wall_wet = v.wall_cm3 > 0.002;
  s.bench_wet = v.spilt_cm3 > 0.01;
  s.pipette = v.pipette;
  s.pipette.seen_mm = std::round(v.pipette.seen_mm * 10.0) / 10.0;
  s.pipette.level_mm = s.pipette.seen_mm;
  s.preparation = v.preparation;
  s.preparation.out_g = 0.0;
  s.preparation.flask_cm3 = std::round(v.preparation.flask_cm3);
  s.preparation.beaker_cm3 = std::round(v.preparation.beaker_cm3);
  s.preparation.bottom_mm = std::round(v.preparation.bottom_mm * 10.0) / 10.0;
  s.preparation.edge_mm = std::round(v.preparation.edge_mm * 10.0) / 10.0;
  s.preparation.level_mm = s.preparation.bottom_mm;
  return s;
}

}  // namespace halfdrop

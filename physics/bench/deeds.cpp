#include "physics/bench/deeds.h"

#include <cassert>
#include <cmath>

#include "physics/bench/bench.h"
#include "physics/bench/clamp.h"
#include "physics/bench/drill.h"
#include "physics/bench/flight.h"
#include "physics/bench/pipette.h"
#include "physics/bench/pipette_by_hand.h"
#include "physics/bench/preparation.h"
#include "physics/burette/jet.h"
#include "physics/flask/liquid.h"
#include "physics/flask/wall.h"

namespace halfdrop {

namespace {

using Answer = std::optional<Refusal>;

Answer refuse_if(bool condition, Refusal refusal) { return condition ? Answer(refusal) : std::nullopt; }

Answer check_beaker(const BenchSpec& spec, const BenchState& state) {
  if (state.beaker_under) return Refusal::already_done;
  if (state.over_edge) return Refusal::burette_over_edge;
  if (tip_height_cm(spec, state.hands) < kBeakerHeight_cm) return Refusal::jet_too_low;
  return refuse_if(std::fabs(state.hands.flask_x_cm) < kBeakerKeeps_cm, Refusal::flask_in_the_way);
}

Answer check_touch_off(const BenchSpec& spec, const BenchState& state) {
  if (state.ledger.balance(Account::pendant_drop).empty()) return Refusal::nothing_hangs;
  if (state.over_edge) return Refusal::nothing_to_touch;
  if (state.beaker_under) return std::nullopt;
  const double above_foot_cm = tip_height_cm(spec, state.hands) - state.hands.flask_y_cm;
  return refuse_if(!flask_under_jet(spec, state) || above_foot_cm > spec.flask.height_cm,
                   Refusal::nothing_to_touch);
}

Answer check_empty_flask(const BenchSpec& spec, const BenchState& state) {
  if (pipette_over_flask(state)) return Refusal::pipette_over_flask;
  return refuse_if(flask_under_jet(spec, state), Refusal::flask_under_jet);
}

Answer check_rinse_flask(const BenchSpec& spec, const BenchState& state, Account bottle, double wants_cm3) {
  if (const Answer no = check_empty_flask(spec, state)) return no;
  return refuse_if(state.ledger.balance(bottle).volume < volume_quanta(wants_cm3), Refusal::bottle_empty);
}

Bottle bottle_named(Deed deed) {
  if (deed == Deed::take_up_sample) return Bottle::sample;
  return deed == Deed::take_up_water ? Bottle::water : Bottle::titrant;
}

Answer check_indicator(const BenchSpec& spec, const BenchState& state, Account bottle) {
  if (bottle == Account::second_indicator_bottle && !spec.then) return Refusal::not_there;
  const double after_cm3 = flask_liquid(state.ledger).volume_cm3() + spec.indicator_drop_cm3;
  if (after_cm3 > spec.flask.capacity_cm3) return Refusal::flask_full;
  const double left_cm3 = state.ledger.balance(bottle).volume_cm3();
  return refuse_if(left_cm3 < spec.indicator_drop_cm3, Refusal::bottle_empty);
}

Answer check_tile(const BenchState& state, Deed deed) {
  if (deed == Deed::lay_tile) return refuse_if(state.tile_laid, Refusal::already_done);
  return refuse_if(!state.tile_laid, Refusal::not_there);
}

Answer check_funnel(const BenchState& state, Deed deed) {
  if (deed == Deed::put_in_funnel) {
    if (state.funnel_in) return Refusal::already_done;
    return refuse_if(state.hands.tilt_degrees > 0.0, Refusal::burette_in_hand);
  }
  return refuse_if(!state.funnel_in, Refusal::not_there);
}

Answer check_drill(const BenchSpec& spec, const BenchState& state, Deed deed) {
  if (deed == Deed::next_picture) return refuse_if(!has_further_picture(spec, state), Refusal::last_picture);
  if (state.drill_step >= spec.drill.volumes) return Refusal::no_volume_left;
  return refuse_if(!state.ledger.balance(Account::in_flight).empty(), Refusal::still_falls);
}

/// Pours the flask out; a heel stays.
void pour_out(const BenchSpec& spec, BenchState& state) {
  even_out(state);
  clear_wall(state);
  Ledger& ledger = state.ledger;
  const Quanta out = ledger.balance(Account::flask).volume - volume_quanta(spec.rinse_left_cm3);
  if (out > 0) ledger.transfer(Account::flask, Account::sink, out);
}

void rinse(const BenchSpec& spec, BenchState& state, Account bottle, double volume_cm3) {
  pour_out(spec, state);
  take_from_bottle(spec, state, bottle, Account::flask, volume_quanta(volume_cm3));
  pour_out(spec, state);
}

/// On the beaker, or on the side of the flask's neck that is nearest.
void touch_off(const BenchSpec& spec, BenchState& state) {
  const Parcel drop = state.ledger.balance(Account::pendant_drop);
  if (state.beaker_under) return state.ledger.move(Account::pendant_drop, Account::beaker, drop);
  cling(spec, state, Account::pendant_drop, drop, -state.hands.flask_x_cm,
        tip_height_cm(spec, state.hands) - state.hands.flask_y_cm);
}

/// Frees what air sticks in the jet, and shakes off what hangs.
void flick(const BenchSpec& spec, BenchState& state) {
  state.jet_freed_until = state.tick + kFlickFrees;
  state.drop_falls_at = 0;
  const Parcel& hanging = state.ledger.balance(Account::pendant_drop);
  if (!hanging.empty()) let_go(spec, state, hanging, 0.0);
}

void drip_indicator(const BenchSpec& spec, BenchState& state, bool second) {
  const Account bottle = second ? Account::second_indicator_bottle : Account::indicator_bottle;
  const Parcel drop = state.ledger.balance(bottle).share(volume_quanta(spec.indicator_drop_cm3));
  second ? let_second_tint_in(state, bottle, drop) : let_tint_in(state, bottle, drop);
}

void pour_away(Ledger& ledger, Account from) {
  ledger.transfer(from, Account::sink, ledger.balance(from).volume);
}

/// What is worn, and where the apparatus stands. Deeds that only move liquid do nothing here.
void move_apparatus(BenchState& state, Deed deed) {
  switch (deed) {
    case Deed::put_on_coat:
      state.coat_on = true;
      break;
    case Deed::put_on_goggles:
    case Deed::take_off_goggles:
      state.goggles_on = deed == Deed::put_on_goggles;
      break;
    case Deed::put_in_funnel:
    case Deed::lift_out_funnel:
      state.funnel_in = deed == Deed::put_in_funnel;
      break;
    case Deed::put_beaker_under:
    case Deed::take_beaker_away:
      state.beaker_under = deed == Deed::put_beaker_under;
      break;
    case Deed::lay_tile:
    case Deed::take_tile_away:
      state.tile_laid = deed == Deed::lay_tile;
      break;
    case Deed::swing_over_edge:
    case Deed::swing_back:
      state.over_edge = deed == Deed::swing_over_edge;
      break;
    case Deed::take_up_titrant:
    case Deed::take_up_sample:
    case Deed::take_up_water:
      state.in_hand = bottle_named(deed);
      break;
    default:
      break;
  }
}

/// What is poured, dropped and wiped. Deeds that only move apparatus do nothing here.
void move_liquid(const BenchSpec& spec, BenchState& state, Deed deed) {
  Ledger& ledger = state.ledger;
  switch (deed) {
    case Deed::lift_out_funnel:
      pour_away(ledger, Account::funnel);
      break;
    case Deed::empty_beaker:
      pour_away(ledger, Account::beaker);
      break;
    case Deed::add_indicator:
    case Deed::add_second_indicator:
      drip_indicator(spec, state, deed == Deed::add_second_indicator);
      break;
    case Deed::touch_off_drop:
      touch_off(spec, state);
      break;
    case Deed::flick_jet:
      flick(spec, state);
      break;
    case Deed::empty_flask:
      pour_out(spec, state);
      break;
    case Deed::rinse_flask:
      for (int i = 0; i < 2; ++i) rinse(spec, state, Account::wash_bottle, spec.rinse_cm3);
      break;
    case Deed::rinse_flask_with_sample:
      rinse(spec, state, Account::sample_bottle, spec.wrong_rinse_cm3);
      break;
    case Deed::wipe_bench:
      pour_away(ledger, Account::bench_top);
      break;
    default:
      break;
  }
}

/// Of what is worn, and of what stands about and holds no liquid that matters.
Answer check_apparatus(const BenchSpec& spec, const BenchState& state, Deed deed) {
  switch (deed) {
    case Deed::put_on_coat:
      return refuse_if(state.coat_on, Refusal::already_done);
    case Deed::put_on_goggles:
      return refuse_if(state.goggles_on, Refusal::already_done);
    case Deed::take_off_goggles:
      return refuse_if(!state.goggles_on, Refusal::not_there);
    case Deed::put_in_funnel:
    case Deed::lift_out_funnel:
      return check_funnel(state, deed);
    case Deed::put_beaker_under:
      return check_beaker(spec, state);
    case Deed::take_beaker_away:
      return refuse_if(!state.beaker_under, Refusal::not_there);
    case Deed::lay_tile:
    case Deed::take_tile_away:
      return check_tile(state, deed);
    case Deed::swing_over_edge:
    case Deed::swing_back:
      return check_swing(spec, state, deed);
    case Deed::take_up_titrant:
    case Deed::take_up_sample:
    case Deed::take_up_water:
      return refuse_if(state.in_hand == bottle_named(deed), Refusal::already_done);
    default:
      return std::nullopt;
  }
}

}  // namespace

std::optional<Refusal> check(const BenchSpec& spec, const BenchState& state, Deed deed) {
  switch (deed) {
    case Deed::empty_beaker:
      return refuse_if(state.ledger.balance(Account::beaker).empty(), Refusal::not_there);
    case Deed::fill_pipette:
    case Deed::deliver_aliquot:
    case Deed::rinse_pipette_with_water:
    case Deed::rinse_pipette_with_sample:
    case Deed::blow_out_pipette:
      return check_pipette(spec, state, deed);
    case Deed::dip_pipette:
    case Deed::lift_pipette:
    case Deed::wipe_pipette:
    case Deed::lean_pipette:
    case Deed::hold_pipette_free:
      return check_pipette_by_hand(spec, state, deed);
    case Deed::add_indicator:
      return check_indicator(spec, state, Account::indicator_bottle);
    case Deed::add_second_indicator:
      return check_indicator(spec, state, Account::second_indicator_bottle);
    case Deed::touch_off_drop:
      return check_touch_off(spec, state);
    case Deed::empty_flask:
      return check_empty_flask(spec, state);
    case Deed::rinse_flask:
      return check_rinse_flask(spec, state, Account::wash_bottle, 2.0 * spec.rinse_cm3);
    case Deed::rinse_flask_with_sample:
      return check_rinse_flask(spec, state, Account::sample_bottle, spec.wrong_rinse_cm3);
    case Deed::wipe_bench:
      return refuse_if(state.ledger.balance(Account::bench_top).empty(), Refusal::not_there);
    case Deed::dissolve_standard:
    case Deed::pour_into_volumetric:
    case Deed::rinse_into_volumetric:
    case Deed::invert_volumetric:
      return check_preparation(spec, state, deed);
    case Deed::next_picture:
    case Deed::close_volume:
      return check_drill(spec, state, deed);
    default:
      return check_apparatus(spec, state, deed);
  }
}

void apply(const BenchSpec& spec, BenchState& state, Deed deed) {
  assert(!check(spec, state, deed));
  move_apparatus(state, deed);
  move_liquid(spec, state, deed);
  use_pipette(spec, state, deed);
  hold_pipette(spec, state, deed);
  prepare(spec, state, deed);
  if (deed == Deed::next_picture) turn_picture(spec, state);
  if (deed == Deed::close_volume) ++state.drill_step;
}

}  // namespace halfdrop

#include "physics/bench/pipette_by_hand.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench.h"
#include "physics/bench/pipette.h"
#include "physics/bench/preparation.h"
#include "physics/eye/sight_line.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

// A 25 cm3 pipette from its tip: lower stem, bulb (our own measures, for the head only).
constexpr double kLowerStem_mm = 150.0, kBulb_mm = 80.0, kLowerStemShare = 0.096;
/// The time that a full pipette takes to run out through an open valve.
constexpr double kRunsOut_s = 17.5;

Quanta in(const BenchState& state, Account account) { return state.ledger.balance(account).volume; }
double cm3(Quanta volume) { return static_cast<double>(volume) * kVolumeQuantum_cm3; }

/// Where the bulb begins and ends, by volume from the tip.
struct Bulb {
  double from_cm3, to_cm3;
};
Bulb bulb_of(const BenchSpec& spec) {
  const double line_cm3 = pipette_line_cm3(spec);
  return {kLowerStemShare * line_cm3, line_cm3 - std::min(kStem_cm3_mm * kStemBelowLine_mm, 0.1 * line_cm3)};
}

double head_mm(const BenchSpec& spec, double volume_cm3) {
  const Bulb bulb = bulb_of(spec);
  if (volume_cm3 <= bulb.from_cm3) return kLowerStem_mm * volume_cm3 / bulb.from_cm3;
  const double into = (volume_cm3 - bulb.from_cm3) / (bulb.to_cm3 - bulb.from_cm3);
  if (into <= 1.0) return kLowerStem_mm + kBulb_mm * into;
  return kLowerStem_mm + kBulb_mm + (volume_cm3 - bulb.to_cm3) / kStem_cm3_mm;
}

/// cm3/s over the root of the head in mm, so that it runs out from its line in kRunsOut_s: the integral of
/// dV / sqrt(head) over lower stem, bulb and stem.
double tip_constant(const BenchSpec& spec) {
  const Bulb bulb = bulb_of(spec);
  const double top_mm = head_mm(spec, pipette_line_cm3(spec));
  const double to_bulb = std::sqrt(kLowerStem_mm), through = std::sqrt(kLowerStem_mm + kBulb_mm);
  const double sum = 2.0 * bulb.from_cm3 / to_bulb +
                     2.0 * (bulb.to_cm3 - bulb.from_cm3) / kBulb_mm * (through - to_bulb) +
                     2.0 * kStem_cm3_mm * (std::sqrt(top_mm) - through);
  return sum / kRunsOut_s;
}

/// Whole quanta: what is that near has been reached.
constexpr double kNearly_cm3 = 2.0 * kVolumeQuantum_cm3;

/// Left in it when it has run out, film not yet run down.
double run_out_cm3(const BenchState& state) {
  const bool over = pipette_over_flask(state);
  return kPipetteKeeps_cm3 + (over ? kDrainingFilm_cm3 : 0.0);
}

/// What stays for now: more at a tip that touches nothing.
double stays_cm3(const BenchState& state) {
  return kPipetteKeeps_cm3 + (state.pipette_place == PipettePlace::over_flask ? kHangsAtFreeTip_cm3 : 0.0);
}

Account below(const BenchState& state) {
  if (state.pipette_place == PipettePlace::dipped) return Account::sample_bottle;
  return pipette_over_flask(state) ? Account::flask : Account::sink;
}

void let_go(const BenchSpec& spec, BenchState& state, Quanta volume) {
  const Account to = below(state);
  if (to == Account::flask) {
    if (flask_liquid(state.ledger).volume + volume > volume_quanta(spec.flask.capacity_cm3)) return;
    even_out(state);  // it runs in along the wall and stirs up what is there
  }
  state.ledger.transfer(Account::pipette, to, volume);
}

/// What is left clings inside: the pipette is empty.
void leave_wet(BenchState& state) {
  state.ledger.transfer(Account::pipette, Account::pipette_wet, in(state, Account::pipette));
  state.pipette_air = 0;
}

void draw_up(const BenchSpec& spec, BenchState& state) {
  const Quanta top = volume_quanta(pipette_line_cm3(spec) + kStem_cm3_mm * kStemAboveLine_mm);
  const Quanta room = top - in(state, Account::pipette) - state.pipette_air;
  const Quanta wants = std::min(room, volume_quanta(-state.hands.valve * kDrawsUp_cm3_s * kSecondsPerTick));
  if (wants <= 0) return;
  if (state.pipette_place == PipettePlace::dipped) {
    // What clings inside is mixed with what is drawn up.
    state.ledger.transfer(Account::pipette_wet, Account::pipette, in(state, Account::pipette_wet));
    take_from_bottle(spec, state, Account::sample_bottle, Account::pipette, wants);
  } else if (in(state, Account::pipette) > 0) {
    state.pipette_air += std::min(wants, volume_quanta(kMostFroth_cm3) - state.pipette_air);
  }
}

/// Film runs down as the square of the time that is left, and is down after kDrains_s.
void drain(const BenchSpec& spec, BenchState& state) {
  const double left_cm3 = cm3(in(state, Account::pipette)) - stays_cm3(state);
  if (left_cm3 > 0.0) {
    const double runs_cm3 = 2.0 / kDrains_s * std::sqrt(left_cm3 * kDrainingFilm_cm3) * kSecondsPerTick;
    let_go(spec, state, volume_quanta(std::min(left_cm3, runs_cm3)));
  }
  if (cm3(in(state, Account::pipette)) <= kPipetteKeeps_cm3 + kNearly_cm3) leave_wet(state);
}

void lift(const BenchSpec& spec, BenchState& state) {
  if (state.pipette_place == PipettePlace::dipped) {
    take_from_bottle(spec, state, Account::sample_bottle, Account::pipette_outside,
                     volume_quanta(kClingsOutside_cm3));
    if (in(state, Account::pipette) <= volume_quanta(kPipetteKeeps_cm3)) leave_wet(state);
  } else if (cm3(in(state, Account::pipette)) <= run_out_cm3(state) + kHangsAtFreeTip_cm3) {
    leave_wet(state);
  }
  state.pipette_place = PipettePlace::aside;
}

void hold_over_flask(BenchState& state, PipettePlace place) {
  if (in(state, Account::pipette_outside) > 0) even_out(state);
  state.ledger.transfer(Account::pipette_outside, Account::flask, in(state, Account::pipette_outside));
  state.pipette_place = place;
}

}  // namespace

double pipette_line_cm3(const BenchSpec& spec) { return spec.pipette.true_cm3 + kPipetteKeeps_cm3; }

double pipette_level_mm(const BenchSpec& spec, const BenchState& state) {
  const Quanta stands = in(state, Account::pipette) + state.pipette_air;
  return (cm3(stands) - pipette_line_cm3(spec)) / kStem_cm3_mm;
}

double pipette_seen_mm(const BenchSpec& spec, const BenchState& state) {
  const double level_mm = pipette_level_mm(spec, state);
  if (level_mm < -kStemBelowLine_mm) return level_mm;
  const SightGeometry& sight = spec.settled.stem_sight;
  const double eye_mm = state.hands.eye_mm - kPipetteLine_mm;
  return -sight.mm_per_cm3 * apparent_reading_cm3(sight, eye_mm, -level_mm / sight.mm_per_cm3);
}

bool pipette_over_flask(const BenchState& state) {
  return state.pipette_place == PipettePlace::at_wall || state.pipette_place == PipettePlace::over_flask;
}

double pipette_flow_cm3_s(const BenchSpec& spec, const BenchState& state) {
  const double holds_cm3 = cm3(in(state, Account::pipette));
  if (state.hands.valve <= 0.0 || holds_cm3 <= run_out_cm3(state) + kNearly_cm3) return 0.0;
  return state.hands.valve * tip_constant(spec) * std::sqrt(head_mm(spec, holds_cm3));
}

bool pipette_drains(const BenchState& state) {
  const double holds_cm3 = cm3(in(state, Account::pipette));
  return pipette_over_flask(state) && holds_cm3 > stays_cm3(state) + kNearly_cm3 &&
         holds_cm3 <= run_out_cm3(state) + kNearly_cm3;
}

std::optional<Refusal> check_pipette_by_hand(const BenchSpec& spec, const BenchState& state, Deed deed) {
  const auto refuse_if = [](bool condition, Refusal refusal) {
    return condition ? std::optional(refusal) : std::nullopt;
  };
  if (!spec.pipette.by_hand) return Refusal::pipette_practised;
  const PipettePlace place = state.pipette_place;
  switch (deed) {
    case Deed::dip_pipette:
      if (pipette_over_flask(state)) return Refusal::pipette_in_use;
      if (nothing_made_up(spec, state, Account::sample_bottle)) return Refusal::nothing_made_up;
      return refuse_if(place == PipettePlace::dipped, Refusal::already_done);
    case Deed::lift_pipette:
      return refuse_if(place == PipettePlace::aside, Refusal::not_there);
    case Deed::wipe_pipette:
      return refuse_if(state.ledger.balance(Account::pipette_outside).empty(), Refusal::nothing_to_wipe);
    case Deed::lean_pipette:
    case Deed::hold_pipette_free:
      if (place == PipettePlace::dipped) return Refusal::pipette_in_use;
      if (state.ledger.balance(Account::pipette).empty() && place == PipettePlace::aside)
        return Refusal::pipette_empty;
      if (flask_under_jet(spec, state)) return Refusal::flask_under_jet;
      if (flask_liquid(state.ledger).volume_cm3() + kClingsOutside_cm3 > spec.flask.capacity_cm3)
        return Refusal::flask_full;
      return refuse_if(
          place == (deed == Deed::lean_pipette ? PipettePlace::at_wall : PipettePlace::over_flask),
          Refusal::already_done);
    default:
      return std::nullopt;
  }
}

void hold_pipette(const BenchSpec& spec, BenchState& state, Deed deed) {
  Ledger& ledger = state.ledger;
  switch (deed) {
    case Deed::dip_pipette:
      ledger.transfer(Account::pipette_outside, Account::sample_bottle, in(state, Account::pipette_outside));
      state.pipette_place = PipettePlace::dipped;
      break;
    case Deed::lift_pipette:
      lift(spec, state);
      break;
    case Deed::wipe_pipette:
      ledger.transfer(Account::pipette_outside, Account::sink, in(state, Account::pipette_outside));
      break;
    case Deed::lean_pipette:
      hold_over_flask(state, PipettePlace::at_wall);
      break;
    case Deed::hold_pipette_free:
      hold_over_flask(state, PipettePlace::over_flask);
      break;
    default:
      break;
  }
}

void work_pipette(const BenchSpec& spec, BenchState& state) {
  if (!spec.pipette.by_hand) return;
  if (state.hands.valve < 0.0) return draw_up(spec, state);
  if (in(state, Account::pipette) <= 0) return;
  const double flow_cm3_s = pipette_flow_cm3_s(spec, state);
  if (flow_cm3_s > 0.0) {
    const double most_cm3 = cm3(in(state, Account::pipette)) - run_out_cm3(state);
    let_go(spec, state, volume_quanta(std::min(most_cm3, flow_cm3_s * kSecondsPerTick)));
  } else if (pipette_over_flask(state) &&
             cm3(in(state, Account::pipette)) <= run_out_cm3(state) + kNearly_cm3) {
    drain(spec, state);
  } else if (state.pipette_place == PipettePlace::aside && state.hands.valve > 0.0) {
    leave_wet(state);
  }
}

}  // namespace halfdrop

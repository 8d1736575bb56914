#include "physics/bench/pipette.h"

#include <algorithm>

#include "physics/bench/bench.h"
#include "physics/bench/pipette_by_hand.h"
#include "physics/bench/preparation.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

std::optional<Refusal> refuse_if(bool condition, Refusal refusal) {
  return condition ? std::optional(refusal) : std::nullopt;
}

Quanta in(const BenchState& state, Account account) { return state.ledger.balance(account).volume; }

Account bottle_of(Deed deed) {
  return deed == Deed::rinse_pipette_with_water ? Account::wash_bottle : Account::sample_bottle;
}

Quanta takes(const BenchSpec& spec, Deed deed) {
  if (deed != Deed::fill_pipette) return volume_quanta(kPipetteRinse_cm3);
  return volume_quanta(spec.pipette.true_cm3) + volume_quanta(kPipetteKeeps_cm3);
}

std::optional<Refusal> check_let_out(const BenchSpec& spec, const BenchState& state, double more_cm3) {
  if (flask_under_jet(spec, state)) return Refusal::flask_under_jet;
  return refuse_if(flask_liquid(state.ledger).volume_cm3() + more_cm3 > spec.flask.capacity_cm3,
                   Refusal::flask_full);
}

/// What clings inside is mixed with what is drawn up.
void draw_up(const BenchSpec& spec, BenchState& state, Account bottle, Quanta volume) {
  const Quanta clings = state.ledger.transfer(Account::pipette_wet, Account::pipette, volume).volume;
  take_from_bottle(spec, state, bottle, Account::pipette, volume - clings);
}

/// It runs in for half a minute and stirs up what is there.
void deliver(const BenchSpec& spec, BenchState& state) {
  even_out(state);
  state.ledger.transfer(Account::pipette, Account::flask, volume_quanta(spec.pipette.true_cm3));
  state.ledger.transfer(Account::pipette, Account::pipette_wet, volume_quanta(kPipetteKeeps_cm3));
}

void throw_away(BenchState& state) {
  Ledger& ledger = state.ledger;
  ledger.transfer(Account::pipette, Account::pipette_wet, volume_quanta(kPipetteKeeps_cm3));
  ledger.transfer(Account::pipette, Account::sink, ledger.balance(Account::pipette).volume);
}

/// Where the pipette is worked by hand: what is left to practised hands there.
std::optional<Refusal> check_in_hand(const BenchSpec& spec, const BenchState& state, Deed deed) {
  if (!spec.pipette.by_hand) return std::nullopt;
  if (deed == Deed::fill_pipette || deed == Deed::deliver_aliquot) return Refusal::pipette_by_hand;
  if (deed != Deed::blow_out_pipette)
    return refuse_if(state.pipette_place != PipettePlace::aside, Refusal::pipette_in_use);
  return refuse_if(!pipette_over_flask(state), Refusal::pipette_empty);
}

}  // namespace

std::optional<Refusal> check_pipette(const BenchSpec& spec, const BenchState& state, Deed deed) {
  if (const auto refused = check_in_hand(spec, state, deed)) return refused;
  const bool full = !state.ledger.balance(Account::pipette).empty();
  switch (deed) {
    case Deed::fill_pipette:
    case Deed::rinse_pipette_with_water:
    case Deed::rinse_pipette_with_sample:
      if (full) return Refusal::pipette_full;
      if (nothing_made_up(spec, state, bottle_of(deed))) return Refusal::nothing_made_up;
      return refuse_if(in(state, bottle_of(deed)) < takes(spec, deed), Refusal::bottle_empty);
    case Deed::deliver_aliquot:
      if (!full) return Refusal::pipette_empty;
      return check_let_out(spec, state, spec.pipette.true_cm3);
    case Deed::blow_out_pipette:
      if (full) return Refusal::pipette_full;
      if (in(state, Account::pipette_wet) <= 0) return Refusal::pipette_empty;
      return check_let_out(spec, state, kPipetteKeeps_cm3);
    default:
      return std::nullopt;
  }
}

void use_pipette(const BenchSpec& spec, BenchState& state, Deed deed) {
  switch (deed) {
    case Deed::fill_pipette:
    case Deed::rinse_pipette_with_water:
    case Deed::rinse_pipette_with_sample:
      draw_up(spec, state, bottle_of(deed), takes(spec, deed));
      if (deed != Deed::fill_pipette) throw_away(state);
      break;
    case Deed::deliver_aliquot:
      deliver(spec, state);
      break;
    case Deed::blow_out_pipette:
      even_out(state);
      state.ledger.transfer(Account::pipette_wet, Account::flask, volume_quanta(kPipetteKeeps_cm3));
      break;
    default:
      break;
  }
}

}  // namespace halfdrop

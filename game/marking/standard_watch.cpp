#include "game/marking/standard_watch.h"

#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

/// What is still in the beaker, of all that was tipped into it.
double share_in_beaker(const BenchSpec& spec, const BenchState& state, Component component) {
  const double out_g = tipped_out_g(spec, state);
  if (out_g <= 0.0) return 0.0;
  return state.ledger.balance(Account::dissolving_beaker).amount_mol(component) *
         spec.preparation.molar_mass_g_mol / out_g;
}

}  // namespace

void StandardWatch::after_tick(const Session& session) {
  if (session.spec().preparation.asked && !now_.taken_from) look(session);
}

void StandardWatch::after_deed(const Session& session, Deed deed) {
  if (!session.spec().preparation.asked || now_.taken_from) return;
  if (deed == Deed::pour_into_volumetric) ++now_.poured_over;
  if (deed == Deed::rinse_into_volumetric) ++now_.washings;
  look(session);
}

void StandardWatch::look(const Session& session) {
  const BenchSpec& spec = session.spec();
  const BenchState& state = session.state();
  const Parcel& flask = state.ledger.balance(standard_account(spec));
  now_.taken_from = flask.volume < in_flask_;
  if (now_.taken_from) return;
  if (flask.volume > in_flask_) now_.eye_above_mm = state.hands.eye_mm - kNeckLine_mm;
  in_flask_ = flask.volume;
  now_.at = state.tick;
  now_.in_flask_cm3 = flask.volume_cm3();
  now_.off_line_cm3 = now_.in_flask_cm3 - spec.preparation.true_flask_cm3;
  now_.inversions = static_cast<int>(state.preparation.inversions);
  const double out_g = tipped_out_g(spec, state);
  if (out_g > now_.tipped_out_g) now_.washings = 0;  // what was rinsed then held none of it
  now_.tipped_out_g = out_g;
  const Component component = spec.unknown_in_flask ? Component::titrant : Component::analyte;
  now_.left_in_beaker = share_in_beaker(spec, state, component);
  now_.strength_mol_cm3 = flask.empty() ? 0.0 : flask.amount_mol(component) / flask.volume_cm3();
}

}  // namespace halfdrop

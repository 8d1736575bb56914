// Hand: what was left in burette and pipette before they were filled, and the pipette's last drop.

#include <cmath>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

/// Weaker than its bottle by less than this share, a liquid counts as undiluted: 0.025 cm3 in 25 (our own
/// choice).
constexpr double kUndiluted = 0.001;

double strength_mol_cm3(const Parcel& liquid, Component component) {
  return liquid.empty() ? 0.0 : liquid.amount_mol(component) / liquid.volume_cm3();
}

/// Of what stood in a bottle, mol/cm3; of one that the player made up, what is left in it, or was in it when
/// it was first taken from. Nought where it never held more than water.
double bottle_mol_cm3(const Case& marked, const Ledger& books, Account bottle) {
  const BenchSpec& spec = marked.session.spec();
  const bool titrant = bottle == Account::titrant_bottle;
  if (!spec.preparation.asked || bottle != standard_account(spec))
    return (titrant ? spec.titrant : spec.sample).true_mol_dm3 / 1000.0;
  const double left =
      strength_mol_cm3(books.balance(bottle), titrant ? Component::titrant : Component::analyte);
  return left > 0.0 ? left : marked.evidence.standard.made_up().strength_mol_cm3;
}

/// How much weaker than its bottle; a bottle of water has nothing that could be weaker.
double share_weaker(double strength, double bottle) { return bottle > 0.0 ? 1.0 - strength / bottle : 0.0; }

std::string percent_text(double share) { return figure_text(100.0 * share, 1) + " %"; }

std::optional<Slip> burette_rinsed(const Case& marked, const RunView& run) {
  const Ledger& books = run.initial->bench.ledger;
  const Parcel filled = books.balance(Account::column) + books.balance(Account::jet);
  const double weaker = share_weaker(strength_mol_cm3(filled, Component::titrant),
                                     bottle_mol_cm3(marked, books, Account::titrant_bottle));
  const double of_sample = strength_mol_cm3(filled, Component::analyte);
  const double foreign =
      of_sample > 0.0 ? 1.0 - share_weaker(of_sample, bottle_mol_cm3(marked, books, Account::sample_bottle))
                      : 0.0;
  if (filled.empty() || (weaker <= kUndiluted && foreign <= kUndiluted)) return std::nullopt;
  const std::string what = foreign > kUndiluted
                               ? say("find.burette_rinsed.foreign", {{"share", percent_text(foreign)}})
                               : say("find.burette_rinsed.weaker", {{"share", percent_text(weaker)}});
  return Slip{weaker + foreign, what, run.initial->bench.tick, run.cost(Cause::titrant_strength)};
}

std::optional<Slip> pipette_rinsed(const Case& marked, const RunView& run) {
  if (run.story->from_pipette.empty()) return std::nullopt;
  const double weaker = share_weaker(strength_mol_cm3(run.story->from_pipette, Component::analyte),
                                     bottle_mol_cm3(marked, run.final->bench.ledger, Account::sample_bottle));
  if (weaker <= kUndiluted) return std::nullopt;
  return Slip{weaker, say("find.pipette_rinsed.wrong", {{"share", percent_text(weaker)}}),
              run.initial->bench.tick, run.cost(Cause::aliquot)};
}

std::optional<Slip> last_drop_left(const Case&, const RunView& run) {
  const double blown_cm3 = run.story->blown_out.volume_cm3();
  if (blown_cm3 <= 0.0) return std::nullopt;
  return Slip{blown_cm3, say("find.last_drop_left.wrong", {{"blown", cm3_text(blown_cm3)}}),
              run.initial->bench.tick, run.cost(Cause::aliquot)};
}

RunRule burette_rule(double of) {
  return {Score::hand,
          "burette-rinsed",
          of,
          Needs::initial,
          Shown::initial,
          false,
          "find.burette_rinsed.right",
          "find.burette_rinsed.advice",
          burette_rinsed};
}

RunRule pipette_rule(double of) {
  return {Score::hand,
          "pipette-rinsed",
          of,
          Needs::both,
          Shown::initial,
          false,
          "find.pipette_rinsed.right",
          "find.pipette_rinsed.advice",
          pipette_rinsed};
}

RunRule last_drop_rule() {
  return {Score::hand,
          "last-drop-left",
          0.0,
          Needs::both,
          Shown::initial,
          false,
          "find.last_drop_left.right",
          "find.last_drop_left.advice",
          last_drop_left};
}

/// Where the glass stood dry, nothing is asked for; a fault is said all the same.
void judge_or_report(const Case& marked, const RunRule& rule, std::vector<Finding>& hand) {
  if (rule.of <= 0.0) return report_if(marked, rule, hand);
  hand.push_back(judge(marked, rule));
}

}  // namespace

void mark_rinsing(const Case& marked, std::vector<Finding>& hand) {
  const BenchSpec& spec = marked.session.spec();
  judge_or_report(marked, burette_rule(spec.burette.wet_cm3 > 0.0 ? 1.0 : 0.0), hand);
  judge_or_report(marked, pipette_rule(spec.pipette.wet_cm3 > 0.0 ? 0.5 : 0.0), hand);
  report_if(marked, last_drop_rule(), hand);
}

}  // namespace halfdrop

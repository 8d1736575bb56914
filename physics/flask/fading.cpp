#include "physics/flask/fading.h"

#include <algorithm>

#include "physics/chemistry/activity.h"
#include "physics/elementary.h"
#include "physics/flask/contents.h"
#include "physics/flask/gas_exchange.h"

namespace halfdrop {

namespace {

/// Broensted and Bjerrum: two ions meet through a state that carries the charge of both; times so much.
double salt_effect(int charge, const Equilibrium& solution, const SolverOptions& options) {
  if (options.ideal) return 1.0;
  const double unit = davies_log10_gamma(1, solution.ionic_strength_mol_dm3, options.temperature_c);
  constexpr int kHydroxide = -1;
  return elementary::exp10(-2.0 * charge * kHydroxide * unit);
}

/// An indicator, coloured and faded, in the books and in the solver.
struct Dye {
  Component coloured, faded;
  Solute solute;
};
constexpr Dye kFirst{Component::indicator, Component::faded_indicator, Solute::indicator};
constexpr Dye kSecond{Component::second_indicator, Component::faded_second_indicator,
                      Solute::second_indicator};

void fade_all(const BenchSpec& spec, const Indicator& indicator, const Dye& dye, Ledger& ledger) {
  const Fading& fading = indicator.fading;
  const Parcel& liquid = ledger.balance(Account::flask);
  const Quanta coloured = liquid.amount(dye.coloured);
  const Quanta faded = liquid.amount(dye.faded);
  if (liquid.empty() || coloured + faded == 0) return;
  const SolverOptions& options = solver_options(spec);
  const Equilibrium solution = equilibrium_of(spec, liquid);
  const double share = indicator_forms(spec, solution, dye.solute)[static_cast<std::size_t>(fading.form)];
  const int charge = indicator.system.protonated_charge - fading.form;
  const double forward_per_s = fading.per_mol_s * salt_effect(charge, solution, options) *
                               hydroxide_mol_dm3(solution, options) * share;
  const double backward_per_s = fading.per_mol_s * elementary::exp10(fading.half_at_ph - options.pkw);
  const double net =
      forward_per_s * static_cast<double>(coloured) - backward_per_s * static_cast<double>(faded);
  const double change = kGasStep_s * net / (1.0 + kGasStep_s * (forward_per_s + backward_per_s));
  const Quanta amount = std::clamp(static_cast<Quanta>(change), -faded, coloured);
  if (amount > 0) ledger.convert(Account::flask, dye.coloured, dye.faded, amount);
  if (amount < 0) ledger.convert(Account::flask, dye.faded, dye.coloured, -amount);
}

}  // namespace

void fade(const BenchSpec& spec, BenchState& state) {
  if (state.tick % kGasTicks != 0) return;
  const auto fades = [](const Indicator& indicator) { return indicator.fading.per_mol_s > 0.0; };
  if (fades(spec.indicator)) fade_all(spec, spec.indicator, kFirst, state.ledger);
  if (spec.then && fades(spec.then->indicator)) fade_all(spec, spec.then->indicator, kSecond, state.ledger);
}

}  // namespace halfdrop

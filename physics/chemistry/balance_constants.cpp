#include <algorithm>
#include <cassert>

#include "physics/chemistry/activity.h"
#include "physics/chemistry/charge_balance.h"
#include "physics/elementary.h"

namespace halfdrop {

BalanceConstants::BalanceConstants(const SolverOptions& options)
    : options_(options), shift_(options.temperature_c), kw_(elementary::exp10(-options.pkw)) {}

std::size_t BalanceConstants::add(const AcidSystem& acid) {
  assert(acid.steps >= 1 && acid.steps <= 3);
  const auto known =
      std::find_if(acids_.begin(), acids_.end(), [&](const AcidSystem& a) { return a.same_acid(acid); });
  const auto place = static_cast<std::size_t>(known - acids_.begin());
  if (known != acids_.end()) return place;
  System system;
  system.steps = acid.steps;
  system.protonated_charge = acid.protonated_charge;
  for (int i = 0; i <= acid.steps; ++i) {
    const auto form = static_cast<std::size_t>(i);
    const int charge = acid.protonated_charge - i;
    system.charge_square[form] = charge * charge;
    system.activity_power[form] = i * (i + 1 - 2 * acid.protonated_charge);
    if (i == acid.steps) break;
    system.k[form] = elementary::exp10(-shift_.pk(acid, form));
    const Loss loss{place, system.k[form]};
    const auto weaker =
        std::find_if(losses_.begin(), losses_.end(), [&](const Loss& other) { return other.k < loss.k; });
    losses_.insert(weaker, loss);
  }
  acids_.push_back(acid);
  systems_.push_back(system);
  return place;
}

Medium medium_of(const Equilibrium& equilibrium, const SolverOptions& options) {
  const double log10_gamma = davies_log10_gamma(1, equilibrium.ionic_strength_mol_dm3, options.temperature_c);
  return {equilibrium.h_mol_dm3, options.ideal ? 1.0 : elementary::exp10(log10_gamma)};
}

}  // namespace halfdrop

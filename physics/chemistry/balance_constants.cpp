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

double activity_coefficient(double ionic_strength_mol_dm3, const SolverOptions& options) {
  if (options.ideal) return 1.0;
  return elementary::exp10(davies_log10_gamma(1, ionic_strength_mol_dm3, options.temperature_c));
}

// The acid of charge z has K' = K g^(z^2) / (g^((z-1)^2) g) = K g^(2z - 2) in concentrations.
FormShares form_shares(const BalanceConstants::System& system, double h_mol_dm3, double g) {
  const double square = g * g;
  const double inverse_square = 1.0 / square;
  double factor = 1.0 / h_mol_dm3;
  for (int z = system.protonated_charge; z > 1; --z) factor *= square;
  for (int z = system.protonated_charge; z < 1; ++z) factor *= inverse_square;
  const double first = system.k[0] * factor;
  const double second = first * system.k[1] * (factor * inverse_square);
  const double third = second * system.k[2] * (factor * inverse_square * inverse_square);
  const double scale = 1.0 / ((1.0 + first) + (second + third));
  return {scale, first * scale, second * scale, third * scale};
}

}  // namespace halfdrop

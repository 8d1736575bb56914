#include "physics/chemistry/solver.h"

#include <cassert>

namespace halfdrop {

Solver::Solver(const SolverOptions& options) : constants_(options) {}

std::size_t Solver::add(const Substance& substance) {
  Ingredient ingredient{substance.strong_charge(), substance.strong_ions(), shares_.size(),
                        substance.systems.size()};
  for (const AcidSystem& system : substance.systems)
    shares_.push_back({constants_.add(system), system.count});
  ingredients_.push_back(ingredient);
  return ingredients_.size() - 1;
}

std::size_t Solver::add(const AcidSystem& system) {
  ingredients_.push_back({0.0, 0.0, shares_.size(), 1});
  shares_.push_back({constants_.add(system), system.count});
  return ingredients_.size() - 1;
}

bool Solver::holds(std::size_t ingredient, const Substance& substance) const {
  assert(ingredient < ingredients_.size());
  const Ingredient& held = ingredients_[ingredient];
  if (held.strong_charge != substance.strong_charge() || held.strong_ions != substance.strong_ions() ||
      held.shares != substance.systems.size())
    return false;
  for (std::size_t k = 0; k < held.shares; ++k) {
    const Share& share = shares_[held.first_share + k];
    if (share.count != substance.systems[k].count ||
        !constants_.acids()[share.system].same_acid(substance.systems[k]))
      return false;
  }
  return true;
}

Amounts Solver::amounts_of(std::span<const double> mol_dm3) const {
  assert(mol_dm3.size() == ingredients_.size());
  Amounts amounts(constants_.systems().size());
  double* const systems = amounts.systems.data();
  for (std::size_t i = 0; i < ingredients_.size(); ++i) {
    assert(mol_dm3[i] >= 0.0);
    const Ingredient& ingredient = ingredients_[i];
    amounts.strong_charge += ingredient.strong_charge * mol_dm3[i];
    amounts.strong_ions += ingredient.strong_ions * mol_dm3[i];
    for (std::size_t k = 0; k < ingredient.shares; ++k) {
      const Share& share = shares_[ingredient.first_share + k];
      systems[share.system] += share.count * mol_dm3[i];
    }
  }
  return amounts;
}

Equilibrium Solver::solve(std::span<const double> mol_dm3) const {
  return equilibrium_of(constants_, amounts_of(mol_dm3));
}

Equilibrium Solver::solve(std::span<const double> mol_dm3, const Equilibrium& near) const {
  return equilibrium_near(constants_, amounts_of(mol_dm3), near);
}

FormShares Solver::form_fractions(std::size_t ingredient, const Equilibrium& equilibrium) const {
  assert(ingredient < ingredients_.size() && ingredients_[ingredient].shares > 0);
  const std::size_t system = shares_[ingredients_[ingredient].first_share].system;
  return form_shares(constants_.systems()[system], medium_of(equilibrium, constants_.options()));
}

}  // namespace halfdrop

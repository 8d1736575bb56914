#include "physics/chemistry/acid_base.h"

#include <cassert>

#include "physics/chemistry/charge_balance.h"
#include "physics/elementary.h"

namespace halfdrop {

void Mixture::add(const Substance& substance, double mol_dm3) {
  assert(mol_dm3 >= 0.0);
  strong_charge_mol_dm3 += substance.strong_charge() * mol_dm3;
  strong_ions_mol_dm3 += substance.strong_ions() * mol_dm3;
  for (const AcidSystem& system : substance.systems) add(system, mol_dm3);
}

void Mixture::add(const AcidSystem& system, double mol_dm3) {
  assert(mol_dm3 >= 0.0);
  parts.push_back({system, system.count * mol_dm3});
}

double hydroxide_mol_dm3(const Equilibrium& equilibrium, const SolverOptions& options) {
  const double h = equilibrium.h_mol_dm3;
  const double gamma = options.ideal ? 1.0 : elementary::exp10(-equilibrium.ph) / h;
  return elementary::exp10(-options.pkw) / (h * (gamma * gamma));
}

Equilibrium solve(const Mixture& mixture, const SolverOptions& options) {
  BalanceConstants constants(options);
  Amounts amounts(mixture.parts.size());
  amounts.strong_charge = mixture.strong_charge_mol_dm3;
  amounts.strong_ions = mixture.strong_ions_mol_dm3;
  for (const Mixture::Part& part : mixture.parts) {
    if (part.mol_dm3 > 0.0) amounts.systems[constants.add(part.system)] += part.mol_dm3;
  }
  return equilibrium_of(constants, amounts);
}

FormShares form_fractions(const AcidSystem& acid, const Equilibrium& equilibrium,
                          const SolverOptions& options) {
  BalanceConstants constants(options);
  return form_shares(constants.systems()[constants.add(acid)], medium_of(equilibrium, options));
}

}  // namespace halfdrop

#include "physics/chemistry/substance.h"

#include <algorithm>

#include "physics/chemistry/water.h"

namespace halfdrop {

double Substance::strong_charge() const {
  double sum = 0.0;
  for (const StrongIon& ion : ions) sum += ion.charge * ion.count;
  return sum;
}

double Substance::strong_ions() const {
  double sum = 0.0;
  for (const StrongIon& ion : ions) sum += ion.charge * ion.charge * ion.count;
  return sum;
}

Substance with_beside(const Substance& substance, double mol_dm3, const std::vector<Beside>& beside) {
  Substance whole = substance;
  for (const Beside& other : beside) {
    const double per_mol = other.mol_dm3 / mol_dm3;
    for (StrongIon ion : other.substance.ions) {
      ion.count *= per_mol;
      whole.ions.push_back(ion);
    }
    for (AcidSystem system : other.substance.systems) {
      system.count *= per_mol;
      whole.systems.push_back(system);
    }
  }
  return whole;
}

bool can_be_made(const Substance& substance, double mol_dm3) {
  for (const double limit_mol_dm3 : {substance.solubility_mol_dm3, substance.pure_mol_dm3}) {
    if (limit_mol_dm3 > 0.0 && mol_dm3 > limit_mol_dm3) return false;
  }
  return true;
}

double mass_percent(const Substance& substance, double mol_dm3) {
  const double solution_g_dm3 = water::density_kg_m3(20.0) + substance.density_rise_kg_m3 * mol_dm3;
  return 100.0 * substance.molar_mass_g_mol * mol_dm3 / solution_g_dm3;
}

std::vector<std::string> hazard_statements(const Substance& substance, double mol_dm3) {
  const double percent = mass_percent(substance, mol_dm3);
  std::vector<std::string> found;
  for (const Hazard& hazard : substance.hazards) {
    if (!(percent >= hazard.from_percent && percent < hazard.below_percent)) continue;
    for (const std::string& statement : hazard.statements) {
      if (std::find(found.begin(), found.end(), statement) == found.end()) found.push_back(statement);
    }
  }
  return found;
}

}  // namespace halfdrop

#include "physics/chemistry/indicator.h"

#include <cmath>

namespace halfdrop {

Substance substance_of(const Indicator& indicator) {
  Substance salt;
  salt.name = indicator.name;
  if (indicator.strong_charge != 0.0)
    salt.ions.push_back(
        {"counter-ion", indicator.strong_charge > 0.0 ? 1 : -1, std::abs(indicator.strong_charge)});
  salt.systems.push_back(indicator.system);
  return salt;
}

void add(Mixture& mixture, const Indicator& indicator, double mol_dm3) {
  mixture.add(substance_of(indicator), mol_dm3);
}

}  // namespace halfdrop

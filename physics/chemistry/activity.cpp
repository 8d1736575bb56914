#include "physics/chemistry/activity.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {
namespace {

double debye_hueckel(double temperature_c) { return 0.5092 + (temperature_c - 25.0) * 8.5e-4; }

}  // namespace

double davies_log10_gamma(int charge, double ionic_strength_mol_dm3, double temperature_c) {
  const double strength = std::clamp(ionic_strength_mol_dm3, 0.0, kDaviesLimit_mol_dm3);
  const double root = std::sqrt(strength);
  return -debye_hueckel(temperature_c) * charge * charge * (root / (1.0 + root) - 0.3 * strength);
}

double davies_log10_gamma_slope(double root_strength, double temperature_c) {
  if (root_strength * root_strength >= kDaviesLimit_mol_dm3) return 0.0;
  const double whole = 1.0 + root_strength;
  return -debye_hueckel(temperature_c) * (1.0 / (whole * whole) - 0.6 * root_strength);
}

}  // namespace halfdrop

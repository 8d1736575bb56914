#include "physics/chemistry/activity.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {

double davies_log10_gamma(int charge, double ionic_strength_mol_dm3, double temperature_c) {
  const double strength = std::clamp(ionic_strength_mol_dm3, 0.0, 0.5);
  const double a = 0.5092 + (temperature_c - 25.0) * 8.5e-4;
  const double root = std::sqrt(strength);
  return -a * charge * charge * (root / (1.0 + root) - 0.3 * strength);
}

}  // namespace halfdrop

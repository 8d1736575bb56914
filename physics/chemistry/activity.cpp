#include "physics/chemistry/activity.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {
namespace {

double debye_hueckel(double temperature_c) { return 0.5092 + (temperature_c - 25.0) * 8.5e-4; }

}  // namespace

double davies_log10_gamma(int charge, double ionic_strength_mol_dm3, double temperature_c) {
  const double root = std::sqrt(std::max(ionic_strength_mol_dm3, 0.0));
  return charge * charge * davies_at_root(root, temperature_c).log10_gamma;
}

DaviesAtRoot davies_at_root(double root_strength, double temperature_c) {
  constexpr double kLimit = 0.70710678118654752;  // square root of kDaviesLimit_mol_dm3
  const double root = std::min(root_strength, kLimit);
  const double share = 1.0 / (1.0 + root);
  const double a = debye_hueckel(temperature_c);
  return {-a * (root * share - 0.3 * root * root),
          root_strength < kLimit ? -a * (share * share - 0.6 * root) : 0.0};
}

}  // namespace halfdrop

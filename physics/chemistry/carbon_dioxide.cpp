#include "physics/chemistry/carbon_dioxide.h"

#include <cmath>

#include "physics/elementary.h"

namespace halfdrop::carbon_dioxide {
namespace {

constexpr double kZeroCelsius_k = 273.15;
constexpr double kReference_k = 298.15;

/// A rate or a mobility at 25 C carried to another temperature by ln k = const - slope / T.
double arrhenius(double at_25, double slope_k, double temperature_c) {
  const double t = temperature_c + kZeroCelsius_k;
  return at_25 * elementary::exp(-slope_k * (1.0 / t - 1.0 / kReference_k));
}

}  // namespace

double solubility_mol_dm3_atm(double temperature_c) {
  const double hundreds_k = (temperature_c + kZeroCelsius_k) / 100.0;
  return elementary::exp(-58.0931 + 90.5069 / hundreds_k + 22.2940 * elementary::log(hundreds_k));
}

double saturated_mol_dm3(double temperature_c) { return kInAir * solubility_mol_dm3_atm(temperature_c); }

double air_over_water(double temperature_c) {
  constexpr double kGas_dm3_atm_k = 0.082057;
  const double kelvin = temperature_c + kZeroCelsius_k;
  return 1.0 / (solubility_mol_dm3_atm(temperature_c) * kGas_dm3_atm_k * kelvin);
}

double diffusion_m2_s(double temperature_c) {
  constexpr double kActivation_j_mol = 19510.0;
  constexpr double kGas_j_k_mol = 8.31446;
  return arrhenius(1.91e-9, kActivation_j_mol / kGas_j_k_mol, temperature_c);
}

double hydration_per_s(double temperature_c) { return arrhenius(0.037, 7799.0, temperature_c); }

double hydroxylation_dm3_mol_s(double temperature_c) { return arrhenius(7.0e3, 6666.0, temperature_c); }

// Goldberg, Kishore and Lennen 2002, carbonic acid counted as dissolved carbon dioxide; the first heat and
// heat capacity from memory of the same table.
const AcidSystem& carbonic_acid() {
  static const AcidSystem acid{2, {6.351, 10.329}, 0, {9.15, 14.70}, {-371.0, -249.0}};
  return acid;
}

bool is_carbonic(const AcidSystem& system) {
  constexpr double kNear = 0.05;
  const AcidSystem& own = carbonic_acid();
  return system.steps == 2 && system.protonated_charge == 0 && std::abs(system.pk[0] - own.pk[0]) < kNear &&
         std::abs(system.pk[1] - own.pk[1]) < kNear;
}

double pk_first(double temperature_c) { return pk_at(carbonic_acid(), 0, temperature_c); }

const AcidSystem& carbonate_pair() {
  static const AcidSystem pair{1,
                               {carbonic_acid().pk[1]},
                               -1,
                               {carbonic_acid().heat_kj_mol[1]},
                               {carbonic_acid().heat_capacity_j_k_mol[1]}};
  return pair;
}

Kinetics::Kinetics(const SolverOptions& options)
    : ideal_(options.ideal),
      hydration_per_s_(hydration_per_s(options.temperature_c)),
      hydroxylation_dm3_mol_s_(hydroxylation_dm3_mol_s(options.temperature_c)),
      kw_(elementary::exp10(-options.pkw)),
      k_first_(elementary::exp10(-pk_first(options.temperature_c))),
      k_second_(elementary::exp10(-pk_at(carbonic_acid(), 1, options.temperature_c))) {}

Rates Kinetics::rates_at(const Equilibrium& solution) const {
  const double h = solution.h_mol_dm3;
  const double gamma = ideal_ ? 1.0 : elementary::exp10(-solution.ph) / h;
  const double square = gamma * gamma;
  const double hydroxide = kw_ / (h * square);
  const double hydrogencarbonate = 1.0 / (1.0 + k_second_ / (h * square * square));  // of all carbonate
  Rates rates;
  rates.forward_per_s = hydration_per_s_ + hydroxylation_dm3_mol_s_ * hydroxide;
  rates.backward_per_s = rates.forward_per_s * h * square / k_first_ * hydrogencarbonate;
  return rates;
}

}  // namespace halfdrop::carbon_dioxide

#include "physics/chemistry/acid_system.h"

#include <cassert>

#include "physics/elementary.h"

namespace halfdrop {
namespace {

constexpr double kZeroCelsius_k = 273.15;
constexpr double kReference_k = 298.15;
constexpr double kGas_j_k_mol = 8.31451;
constexpr double kLn10 = 2.302585092994046;

}  // namespace

PkShift::PkShift(double temperature_c) {
  const double t = temperature_c + kZeroCelsius_k;
  if (t == kReference_k) return;
  inverse_difference_k_ = 1.0 / t - 1.0 / kReference_k;
  log_ratio_ = elementary::log(t / kReference_k);
}

double PkShift::pk(const AcidSystem& system, std::size_t step) const {
  assert(step < static_cast<std::size_t>(system.steps));
  const double heat_j_mol = system.heat_kj_mol[step] * 1000.0;
  const double heat_capacity = system.heat_capacity_j_k_mol[step];
  const double shift_j_k_mol =
      (heat_j_mol - heat_capacity * kReference_k) * inverse_difference_k_ - heat_capacity * log_ratio_;
  return system.pk[step] + shift_j_k_mol / (kGas_j_k_mol * kLn10);
}

double pk_at(const AcidSystem& system, std::size_t step, double temperature_c) {
  return PkShift(temperature_c).pk(system, step);
}

}  // namespace halfdrop

#pragma once
// A mixed flask with indicator whose pH, or whose indicator's form, someone holds: what colour is it?

#include <array>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/chemistry/activity.h"
#include "physics/flask/contents.h"
#include "physics/light/colour.h"

namespace halfdrop::test {

inline constexpr double kIonicStrength_mol_dm3 = 0.05;  // 25 cm3 each of a 0.1 mol/dm3 acid and alkali
inline constexpr double kVolume_cm3 = 50.0;
inline constexpr int kDrops = 3;

/// A flask of 50 cm3 with three drops of indicator, whose pH someone holds.
class HeldFlask {
 public:
  explicit HeldFlask(const Indicator& indicator) : indicator_(indicator) {
    const BenchSpec bench;
    mol_dm3_ = indicator.stock_mol_dm3 * kDrops * bench.indicator_drop_cm3 / kVolume_cm3;
    path_cm_ = sight_path_cm(bench.flask, kVolume_cm3);
  }

  [[nodiscard]] Lab colour(const std::array<double, 4>& forms) const {
    Spectrum absorbance = absorbance_per_cm(indicator_, mol_dm3_, forms);
    for (double& a : absorbance) a *= path_cm_;
    return to_lab(seen_through(white_tile(), absorbance));
  }
  [[nodiscard]] Lab colour_at(double ph) const {
    const SolverOptions solver;
    Equilibrium held;
    held.ph = ph;
    held.ionic_strength_mol_dm3 = kIonicStrength_mol_dm3;
    held.h_mol_dm3 = std::pow(10.0, -ph - davies_log10_gamma(1, kIonicStrength_mol_dm3, 25.0));
    return colour(form_fractions(indicator_.system, held, solver));
  }
  [[nodiscard]] Lab colour_of_form(std::size_t form) const {
    std::array<double, 4> forms{};
    forms[form] = 1.0;
    return colour(forms);
  }
  [[nodiscard]] double path_cm() const { return path_cm_; }

 private:
  const Indicator& indicator_;
  double mol_dm3_ = 0.0, path_cm_ = 0.0;
};

}  // namespace halfdrop::test

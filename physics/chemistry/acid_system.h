#pragma once
// One mono- to triprotic acid system and how its constants move with temperature.

#include <array>
#include <cstddef>

namespace halfdrop {

/// One mono- to triprotic acid system, e.g. ethanoic acid/ethanoate or ammonium/ammonia.
struct AcidSystem {
  int steps = 1;                        ///< 1 to 3 protons
  std::array<double, 3> pk{};           ///< at 25 C, I = 0, ascending; only the first `steps` count
  int protonated_charge = 0;            ///< of the fully protonated form (ammonium: +1, ethanoic acid: 0)
  std::array<double, 3> heat_kj_mol{};  ///< enthalpy of each step at 25 C; 0 where none is known
  std::array<double, 3> heat_capacity_j_k_mol{};  ///< change with each step; 0 where none is known
  double count = 1.0;  ///< of it in one mole of a substance (borax: 4 of boric acid)

  /// Whether both are the same acid; how much of it there is does not matter.
  [[nodiscard]] bool same_acid(const AcidSystem& other) const {
    return steps == other.steps && pk == other.pk && protonated_charge == other.protonated_charge &&
           heat_kj_mol == other.heat_kj_mol && heat_capacity_j_k_mol == other.heat_capacity_j_k_mol;
  }
};

/// Carries constants from 25 C to another temperature, with a heat capacity that does not change on the way:
/// pK(T) = pK + [(dH - dCp Tr)(1/T - 1/Tr) - dCp ln(T/Tr)]/(R ln 10), R 8.31451 J/K/mol (Goldberg, Kishore
/// and Lennen, J. Phys. Chem. Ref. Data 31 (2002) 231). Meant for 5 to 40 C.
class PkShift {
 public:
  explicit PkShift(double temperature_c);
  /// pK of a step (0: the first proton) at zero ionic strength.
  [[nodiscard]] double pk(const AcidSystem& system, std::size_t step) const;

 private:
  double inverse_difference_k_ = 0.0;  ///< 1/T - 1/Tr
  double log_ratio_ = 0.0;             ///< ln(T/Tr)
};

/// The same for a single constant.
[[nodiscard]] double pk_at(const AcidSystem& system, std::size_t step, double temperature_c);

}  // namespace halfdrop

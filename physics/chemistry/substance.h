#pragma once
// What a bottle brings into water: strong ions, acid systems, and what its label has to warn of.

#include <string>
#include <vector>

#include "physics/chemistry/acid_system.h"

namespace halfdrop {

/// An ion that neither takes up nor gives off protons.
struct StrongIon {
  std::string name;    ///< "Na+"
  int charge = 1;      ///< -3 to 3, not 0
  double count = 1.0;  ///< per formula unit
};

/// What a solution has to be labelled with in one band of mass fraction.
struct Hazard {
  double from_percent = 0.0, below_percent = 101.0;  ///< g of substance in 100 g of solution
  std::vector<std::string> statements;               ///< "H314 1A"
};

/// What one mole of a substance brings. The form its acid systems come in follows from the charge of the
/// strong ions: ethanoic acid none, sodium ethanoate one Na+, sodium carbonate two; with the ammonium system,
/// ammonium chloride one Cl- and ammonia none.
struct Substance {
  std::string name;
  std::vector<StrongIon> ions;
  std::vector<AcidSystem> systems;
  std::string formula{};  ///< as on the bottle, water of crystallisation included
  double molar_mass_g_mol = 0.0;
  /// How much heavier than water a solution is, kg/m3 for each mol/dm3, near 20 C; 0 where it is not known.
  double density_rise_kg_m3 = 0.0;
  double solubility_mol_dm3 = 0.0;  ///< in water near 20 C; 0 where it is not known or has no limit
  double pure_mol_dm3 = 0.0;        ///< of the pure liquid near 20 C; 0 where it is none, or not known
  std::vector<Hazard> hazards{};
  std::vector<std::string> also_called{};  ///< other names in use: "acetic acid"

  /// mol of charge of the strong ions per mol.
  [[nodiscard]] double strong_charge() const;
  /// Sum of z^2 over the strong ions per mol, for the ionic strength.
  [[nodiscard]] double strong_ions() const;
};

/// Something dissolved in the same bottle, at a strength of its own.
struct Beside {
  Substance substance;
  double mol_dm3 = 0.0;  ///< >= 0
};

/// One substance that brings, per mole of `substance`, what a bottle of `mol_dm3` of it (> 0) holds with
/// everything beside it. Name, formula and label stay the substance's own.
[[nodiscard]] Substance with_beside(const Substance& substance, double mol_dm3,
                                    const std::vector<Beside>& beside);

/// Whether there is so strong a solution (>= 0): so much dissolves, and the pure liquid holds no less. Yes
/// where neither limit is known.
[[nodiscard]] bool can_be_made(const Substance& substance, double mol_dm3);
/// g of substance in 100 g of its solution in water at 20 C.
[[nodiscard]] double mass_percent(const Substance& substance, double mol_dm3);
/// Statements that a solution's label has to carry, each once, in the order of the data. Empty: none.
[[nodiscard]] std::vector<std::string> hazard_statements(const Substance& substance, double mol_dm3);

}  // namespace halfdrop

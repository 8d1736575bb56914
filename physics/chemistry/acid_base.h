#pragma once
// Charge balance over any number of mono- to triprotic systems and strong ions. Constants are those of 25 C
// unless the caller shifts them; strong ions count as monovalent; ion pairs and precipitates are left out.
// Davies activity coefficients are good to about 0.5 mol/dm3 of ionic strength and held constant above it.

#include <array>
#include <string>
#include <vector>

namespace halfdrop {

/// One mono- to triprotic acid system, e.g. ethanoic acid/ethanoate or ammonium/ammonia.
struct AcidSystem {
  int steps = 1;               ///< 1 to 3 protons
  std::array<double, 3> pk{};  ///< at 25 C, I = 0, ascending; only the first `steps` count
  int protonated_charge = 0;   ///< charge of the fully protonated form (ammonium: +1, ethanoic acid: 0)
};

/// What one mole of a substance brings: charge of strong ions (Na+ of NaOH: +1, Cl- of HCl: -1) and weak
/// systems. The form it comes in follows from the charge: ethanoic acid 0, sodium ethanoate +1, sodium
/// carbonate +2; with the ammonium system, ammonium chloride -1 and ammonia 0.
struct Substance {
  std::string name;
  double strong_charge = 0.0;  ///< mol of charge per mol
  std::vector<AcidSystem> systems;
};

/// A solution as the solver sees it, all in mol/dm3.
struct Mixture {
  struct Part {
    AcidSystem system;
    double mol_dm3 = 0.0;
  };
  double strong_charge_mol_dm3 = 0.0;  ///< net charge of the strong ions
  /// Sum of |z| c of the strong ions, all taken as monovalent; for the ionic strength.
  double strong_ions_mol_dm3 = 0.0;
  std::vector<Part> parts;

  /// Adds a substance at a concentration >= 0.
  void add(const Substance& substance, double mol_dm3);
  void add(const AcidSystem& system, double mol_dm3);
};

struct SolverOptions {
  bool ideal = false;    ///< true: activity coefficients are 1 (textbook comparison)
  double pkw = 13.9945;  ///< IAPWS R11-07 at 25 C
  double temperature_c = 25.0;
};

struct Equilibrium {
  double ph = 7.0;          ///< -log10 of the activity of H+
  double h_mol_dm3 = 1e-7;  ///< concentration of H+
  double ionic_strength_mol_dm3 = 0.0;
  double residual_mol_dm3 = 0.0;  ///< what is left of the charge balance
};

/// Solves the charge balance by a bracketed Newton iteration in ln[H+]; always converges.
Equilibrium solve(const Mixture& mixture, const SolverOptions& options);

/// Share of each form, most protonated first (steps + 1 values, sum 1), at a solved equilibrium.
std::array<double, 4> form_fractions(const AcidSystem& system, const Equilibrium& equilibrium,
                                     const SolverOptions& options);

}  // namespace halfdrop

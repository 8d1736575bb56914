#pragma once
// Charge balance over any number of mono- to triprotic systems and strong ions, at 5 to 40 C. Ion pairs and
// precipitates are left out; a molar amount stands for a molal one. Davies activity coefficients are good to
// about 0.5 mol/dm3 of ionic strength and held constant above it.

#include <array>
#include <vector>

#include "physics/chemistry/acid_system.h"
#include "physics/chemistry/substance.h"

namespace halfdrop {

/// A solution as the solver sees it, all in mol/dm3.
struct Mixture {
  struct Part {
    AcidSystem system;
    double mol_dm3 = 0.0;
  };
  double strong_charge_mol_dm3 = 0.0;  ///< net charge of the strong ions
  double strong_ions_mol_dm3 = 0.0;    ///< sum of z^2 c of the strong ions, for the ionic strength
  std::vector<Part> parts;

  /// Adds a substance at a concentration >= 0.
  void add(const Substance& substance, double mol_dm3);
  /// Adds `system.count` times as much of an acid system.
  void add(const AcidSystem& system, double mol_dm3);
};

struct SolverOptions {
  bool ideal = false;           ///< true: activity coefficients are 1 (textbook comparison)
  double pkw = 13.9945;         ///< IAPWS R11-07 at 25 C; the caller gives that of its temperature
  double temperature_c = 25.0;  ///< for the constants and the activity coefficients
};

struct Equilibrium {
  double ph = 7.0;          ///< -log10 of the activity of H+
  double h_mol_dm3 = 1e-7;  ///< concentration of H+
  double ionic_strength_mol_dm3 = 0.0;
};

/// Share of each form of a system, most protonated first (steps + 1 values, sum 1; the rest 0).
using FormShares = std::array<double, 4>;

/// OH- at a solved equilibrium, mol/dm3.
[[nodiscard]] double hydroxide_mol_dm3(const Equilibrium& equilibrium, const SolverOptions& options);

/// Solves the charge balance; always converges. For many mixtures of the same few things Solver is quicker.
[[nodiscard]] Equilibrium solve(const Mixture& mixture, const SolverOptions& options);

/// At a solved equilibrium.
[[nodiscard]] FormShares form_fractions(const AcidSystem& system, const Equilibrium& equilibrium,
                                        const SolverOptions& options);

}  // namespace halfdrop

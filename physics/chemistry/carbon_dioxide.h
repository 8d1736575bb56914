#pragma once
// Carbon dioxide in water: solubility, hydration, and the constants that tie them together. Two dissolved
// forms are told apart, because they turn into each other slowly: carbon dioxide itself, and carbonate
// (hydrogencarbonate and carbonate ion, at equilibrium with each other at all times). Carbonic acid itself,
// one part in some 400 of the carbon dioxide, is left out.

#include "physics/chemistry/acid_base.h"

namespace halfdrop::carbon_dioxide {

/// Part of the air by volume: 420 ppm (outdoor air of the 2020s; a full classroom has two to five times
/// more).
inline constexpr double kInAir = 420e-6;

/// mol/dm3 per atmosphere of carbon dioxide, 0 to 40 C. Weiss, Marine Chemistry 2 (1974) 203, salinity 0.
[[nodiscard]] double solubility_mol_dm3_atm(double temperature_c);
/// Dissolved carbon dioxide of water that has stood in air, mol/dm3.
[[nodiscard]] double saturated_mol_dm3(double temperature_c);

/// Carbon dioxide in air over that in water in equilibrium with it, by volume.
[[nodiscard]] double air_over_water(double temperature_c);
/// Of carbon dioxide in water, m2/s, 10 to 35 C, carried on to 5 and 40: 1.91e-9 at 25 C, activation
/// 19.51 kJ/mol. Jaehne, Heinz and Dietrich, J. Geophys. Res. 92 (1987) 10767.
[[nodiscard]] double diffusion_m2_s(double temperature_c);

/// CO2 + H2O -> H+ + HCO3-, s^-1: 0.037 at 25 C (Johnson 1982), slope as Soli and Byrne 2002 found it in
/// brine.
[[nodiscard]] double hydration_per_s(double temperature_c);
/// CO2 + OH- -> HCO3-, dm3 mol^-1 s^-1: 7.0e3 at 25 C (Johnson 1982), slope of Pinsent and others 1956 from
/// memory.
[[nodiscard]] double hydroxylation_dm3_mol_s(double temperature_c);
/// -log10 of [H+][HCO3-]/[CO2], zero ionic strength.
[[nodiscard]] double pk_first(double temperature_c);
/// Both steps: for a solution in which all of it has met water.
[[nodiscard]] const AcidSystem& carbonic_acid();
/// Whether a substance's acid system is this one, by its constants at 25 C (to 0.05).
[[nodiscard]] bool is_carbonic(const AcidSystem& system);
/// Hydrogencarbonate and carbonate ion, as one acid system.
[[nodiscard]] const AcidSystem& carbonate_pair();

/// How fast the two forms turn into each other, s^-1: d[CO2]/dt = backward [carbonate] - forward [CO2].
struct Rates {
  double forward_per_s = 0.0;   ///< of the carbon dioxide
  double backward_per_s = 0.0;  ///< of the carbonate, both ions together
};
/// The constants of both ways, made ready for one temperature.
class Kinetics {
 public:
  explicit Kinetics(const SolverOptions& options);
  /// In a solution at equilibrium in all else. The backward rate follows from the forward one and the
  /// constants, so that both vanish together at equilibrium.
  [[nodiscard]] Rates rates_at(const Equilibrium& solution) const;

 private:
  bool ideal_;
  double hydration_per_s_, hydroxylation_dm3_mol_s_;
  double kw_, k_first_, k_second_;  ///< zero ionic strength
};

}  // namespace halfdrop::carbon_dioxide

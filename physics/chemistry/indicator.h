#pragma once
// An acid-base indicator: a weak acid that takes part in the balance, whose forms absorb light.

#include <string>
#include <vector>

#include "physics/chemistry/acid_base.h"

namespace halfdrop {

/// A Gaussian absorption band of one form, or of a dye that comes with the indicator and never changes.
struct AbsorptionBand {
  static constexpr int kEveryForm = -1;
  int form = 0;  ///< 0: fully protonated form, 1: one proton lost, ...; or kEveryForm
  double peak_nm = 550.0;
  double width_nm = 40.0;  ///< standard deviation in wavelength
  double epsilon_dm3_mol_cm = 0.0;
  double mol_per_mol = 1.0;  ///< of what absorbs, per mol of indicator (1 but for a dye)
};

/// A handbook's range of change; for comparison and for words, nothing is computed from it.
struct ColourRange {
  double low_ph = 0.0, high_ph = 14.0;
  std::string acid_colour, base_colour;
};

/// A coloured form that hydroxide slowly turns into a colourless one: form + OH- <-> colourless.
struct Fading {
  int form = 0;
  double per_mol_s = 0.0;    ///< dm3 mol^-1 s^-1 forward, zero ionic strength; 0: does not fade
  double half_at_ph = 14.0;  ///< where half of it is colourless in the end, zero ionic strength
};

struct Indicator {
  std::string name;
  AcidSystem system;
  double strong_charge = 0.0;  ///< of the monovalent ions its salt brings (Na+: 1), mol per mol
  std::vector<AbsorptionBand> bands;
  double stock_mol_dm3 = 0.0;  ///< strength of the dropping bottle
  std::vector<ColourRange> ranges;
  Fading fading;
  std::vector<std::string> also_called{};  ///< other names in use
};

/// The indicator as the solver sees it, with the ions of its salt.
[[nodiscard]] Substance substance_of(const Indicator& indicator);
/// Adds an indicator, with the ions of its salt, at a concentration >= 0.
void add(Mixture& mixture, const Indicator& indicator, double mol_dm3);

}  // namespace halfdrop

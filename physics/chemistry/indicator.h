#pragma once
// An acid-base indicator: a weak acid that takes part in the balance, whose forms absorb light.

#include <string>
#include <vector>

#include "physics/chemistry/acid_base.h"

namespace halfdrop {

/// A Gaussian absorption band of one form.
struct AbsorptionBand {
  int form = 0;  ///< 0: fully protonated form, 1: one proton lost, ...
  double peak_nm = 550.0;
  double width_nm = 40.0;  ///< standard deviation in wavelength
  double epsilon_dm3_mol_cm = 0.0;
};

struct Indicator {
  std::string name;
  AcidSystem system;
  std::vector<AbsorptionBand> bands;
  double stock_mol_dm3 = 0.0;            ///< strength of the dropping bottle
  std::string acid_colour, base_colour;  ///< in words, as a handbook says them
};

}  // namespace halfdrop

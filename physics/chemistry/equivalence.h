#pragma once
// At which ratios a titrant is equivalent to an analyte, from formulas and constants alone.

#include <vector>

#include "physics/chemistry/substance.h"

namespace halfdrop {

/// Moles of titrant per mole of analyte at each equivalence, ascending: whole numbers of protons have passed
/// from one to the other, and what then lies in the flask would not pass on half a unit of pK further. A step
/// that is listed may be too weak to show (the third of phosphoric acid). Empty: they do not neutralise one
/// another. Constants are taken at 25 C and zero ionic strength.
[[nodiscard]] std::vector<double> equivalence_ratios(const Substance& analyte, const Substance& titrant);

}  // namespace halfdrop

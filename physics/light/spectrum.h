#pragma once
// Visible spectra on a fixed grid: 380 to 780 nm in steps of 5 nm.

#include <array>
#include <vector>

#include "physics/chemistry/indicator.h"

namespace halfdrop {

inline constexpr int kWavelengths = 81;
inline constexpr double kFirstWavelength_nm = 380.0;
inline constexpr double kWavelengthStep_nm = 5.0;
using Spectrum = std::array<double, kWavelengths>;

/// Relative power of CIE illuminant D65, 100 at 560 nm (CIE 15; the tests compare it with colord-data's
/// table).
const Spectrum& d65();
/// CIE 1931 2 degree colour matching functions.
const Spectrum& cie_x();
const Spectrum& cie_y();
const Spectrum& cie_z();

/// Decadic absorbance per cm of an indicator at `mol_dm3` whose forms have the given shares.
Spectrum absorbance_per_cm(const Indicator& indicator, double mol_dm3,
                           const std::array<double, 4>& fractions);
/// The same at one wavelength.
double absorbance_per_cm_at(double nm, const Indicator& indicator, double mol_dm3,
                            const std::array<double, 4>& fractions);

/// The same for one indicator many times: its bands are worked out once.
class IndicatorSpectra {
 public:
  IndicatorSpectra() = default;
  explicit IndicatorSpectra(const Indicator& indicator);
  /// Decadic absorbance of `mol_dm3_cm`, concentration times path.
  [[nodiscard]] Spectrum absorbance(double mol_dm3_cm, const std::array<double, 4>& fractions) const;

 private:
  std::array<Spectrum, 4> forms_{};  ///< of 1 mol/dm3 through 1 cm
  Spectrum every_form_{};
  std::array<bool, 4> absorbs_{};
};

/// What lies behind the liquid: its reflectance by wavelength, both our own assumption. The tile is a neutral
/// 0.90 (a real glaze falls off in the violet); the bench a dull brown grey, 0.15 in the violet to 0.28 in
/// the red.
Spectrum white_tile();
Spectrum bare_bench();

}  // namespace halfdrop

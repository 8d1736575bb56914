#include "physics/light/spectrum.h"

#include <cassert>

#include "physics/elementary.h"

namespace halfdrop {
namespace {

double wavelength_nm(std::size_t i) {
  return kFirstWavelength_nm + kWavelengthStep_nm * static_cast<double>(i);
}

/// A Gaussian band as it absorbs.
struct Lobe {
  double height, peak_nm, per_nm;

  [[nodiscard]] double at(double nm) const {
    const double x = (nm - peak_nm) * per_nm;
    return height * elementary::exp(-0.5 * x * x);
  }
};

Lobe lobe_of(const AbsorptionBand& band, double mol_dm3, const std::array<double, 4>& fractions) {
  assert(band.form >= AbsorptionBand::kEveryForm && band.form <= 3 && band.width_nm > 0.0);
  const double share =
      band.form == AbsorptionBand::kEveryForm ? 1.0 : fractions[static_cast<std::size_t>(band.form)];
  return {band.epsilon_dm3_mol_cm * band.mol_per_mol * mol_dm3 * share, band.peak_nm, 1.0 / band.width_nm};
}

}  // namespace

// CIE 15, as in the package colord-data; 100 at 560 nm.
const Spectrum& d65() {
  static const Spectrum table{
      49.9755,  52.3118,  54.6482,  68.7015,  82.7549,  87.1204,  91.4860,  92.4589,  93.4318,
      90.0570,  86.6823,  95.7736,  104.8650, 110.9360, 117.0080, 117.4100, 117.8120, 116.3360,
      114.8610, 115.3920, 115.9230, 112.3670, 108.8110, 109.0820, 109.3540, 108.5780, 107.8020,
      106.2960, 104.7900, 106.2390, 107.6890, 106.0470, 104.4050, 104.2250, 104.0460, 102.0230,
      100.0000, 98.1671,  96.3342,  96.0611,  95.7880,  92.2368,  88.6856,  89.3459,  90.0062,
      89.8026,  89.5991,  88.6489,  87.6987,  85.4936,  83.2886,  83.4939,  83.6992,  81.8630,
      80.0268,  80.1207,  80.2146,  81.2462,  82.2778,  80.2810,  78.2842,  74.0027,  69.7213,
      70.6652,  71.6091,  72.9790,  74.3490,  67.9765,  61.6040,  65.7448,  69.8856,  72.4863,
      75.0870,  69.3398,  63.5927,  55.0054,  46.4182,  56.6118,  66.8054,  65.0941,  63.3828};
  return table;
}

double absorbance_per_cm_at(double nm, const Indicator& indicator, double mol_dm3,
                            const std::array<double, 4>& fractions) {
  double sum = 0.0;
  for (const AbsorptionBand& band : indicator.bands) sum += lobe_of(band, mol_dm3, fractions).at(nm);
  return sum;
}

Spectrum absorbance_per_cm(const Indicator& indicator, double mol_dm3,
                           const std::array<double, 4>& fractions) {
  Spectrum absorbance{};
  for (const AbsorptionBand& band : indicator.bands) {
    const Lobe lobe = lobe_of(band, mol_dm3, fractions);
    if (lobe.height == 0.0) continue;
    for (std::size_t i = 0; i < absorbance.size(); ++i) absorbance[i] += lobe.at(wavelength_nm(i));
  }
  return absorbance;
}

IndicatorSpectra::IndicatorSpectra(const Indicator& indicator) {
  const std::array<double, 4> whole{1.0, 1.0, 1.0, 1.0};
  for (const AbsorptionBand& band : indicator.bands) {
    const Lobe lobe = lobe_of(band, 1.0, whole);
    const auto form = static_cast<std::size_t>(band.form);
    Spectrum& spectrum = band.form == AbsorptionBand::kEveryForm ? every_form_ : forms_[form];
    if (band.form != AbsorptionBand::kEveryForm) absorbs_[form] = true;
    for (std::size_t i = 0; i < spectrum.size(); ++i) spectrum[i] += lobe.at(wavelength_nm(i));
  }
}

Spectrum IndicatorSpectra::absorbance(double mol_dm3_cm, const std::array<double, 4>& fractions) const {
  Spectrum absorbance;
  for (std::size_t i = 0; i < absorbance.size(); ++i) absorbance[i] = mol_dm3_cm * every_form_[i];
  for (std::size_t form = 0; form < forms_.size(); ++form) {
    const double amount = mol_dm3_cm * fractions[form];
    if (!absorbs_[form] || amount == 0.0) continue;
    for (std::size_t i = 0; i < absorbance.size(); ++i) absorbance[i] += amount * forms_[form][i];
  }
  return absorbance;
}

Spectrum white_tile() {
  Spectrum tile;
  tile.fill(0.90);
  return tile;
}

Spectrum bare_bench() {
  Spectrum bench{};
  for (std::size_t i = 0; i < bench.size(); ++i) {
    bench[i] = 0.15 + 0.13 * static_cast<double>(i) / (kWavelengths - 1);
  }
  return bench;
}

}  // namespace halfdrop

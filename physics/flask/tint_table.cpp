#include "physics/flask/tint_table.h"

#include <algorithm>
#include <cstring>

#include "physics/flask/binary_axis.h"
#include "physics/light/colour.h"

namespace halfdrop {

namespace {

using Amount = BinaryAxis<10, 3>;  ///< of indicator in the line of sight, of the most
constexpr std::size_t kTints = 65;

/// Four numbers that are reckoned with at once; g++ and clang++ both know how.
using Four = float __attribute__((vector_size(16)));
using FourWhole = std::int32_t __attribute__((vector_size(16)));

Four four_at(const float* from) {
  Four four;
  std::memcpy(&four, from, sizeof four);
  return four;
}
Four mixed(const Four& from, const Four& to, float part) { return from + part * (to - from); }

}  // namespace

TintTable::TintTable(const Indicator& indicator, double most_mol_dm3_cm, Backdrop backdrop)
    : most_amount_(most_mol_dm3_cm), per_amount_(most_mol_dm3_cm > 0.0 ? 1.0 / most_mol_dm3_cm : 0.0) {
  choose_tint(indicator);
  const Spectrum behind = backdrop == Backdrop::white_tile ? white_tile() : bare_bench();
  const IndicatorSpectra spectra(indicator);
  colours_.reserve(kTints * Amount::kNodes);
  for (std::size_t tint = 0; tint < kTints; ++tint) {
    const FormShares forms = forms_of(most_tint_ * static_cast<double>(tint) / (kTints - 1));
    for (std::size_t node = 0; node < Amount::kNodes; ++node) {
      const Spectrum absorbance = spectra.absorbance(most_amount_ * Amount::value_at(node), forms);
      const Rgb rgb = to_rgb(seen_through(behind, absorbance));
      const auto exact = [](double linear) { return static_cast<float>(exact_code(linear)); };
      colours_.push_back({exact(rgb.r), exact(rgb.g), exact(rgb.b), 255.0F});
    }
  }
}

void TintTable::choose_tint(const Indicator& indicator) {
  std::array<bool, 4> coloured{};
  for (const AbsorptionBand& band : indicator.bands) {
    if (band.form >= 0) coloured[static_cast<std::size_t>(band.form)] = true;
  }
  const bool single = std::count(coloured.begin(), coloured.end(), true) == 1;
  for (std::size_t form = 0; form < 4; ++form) {
    if (single)
      tint_of_form_[form] = coloured[form] ? 1.0 : 0.0;
    else
      tint_of_form_[form] = static_cast<double>(form);
  }
  most_tint_ = single ? 1.0 : std::max(indicator.system.steps, 1);
  rows_per_tint_ = static_cast<float>((kTints - 1.0001) / most_tint_);
}

FormShares TintTable::forms_of(double tint) const {
  FormShares forms{};
  if (tint_of_form_[1] == 1.0 && tint_of_form_[2] == 2.0) {  // protons off
    const auto below = static_cast<std::size_t>(std::min(tint, most_tint_ - 0.5));
    forms[below + 1] = tint - static_cast<double>(below);
    forms[below] = 1.0 - forms[below + 1];
    return forms;
  }
  for (std::size_t form = 0; form < 4; ++form) {
    if (tint_of_form_[form] == 1.0) forms[form] = tint;
  }
  return forms;
}

double TintTable::tint_of(const FormShares& shares) const {
  double tint = 0.0;
  for (std::size_t form = 0; form < 4; ++form) tint += shares[form] * tint_of_form_[form];
  return tint;
}

Code TintTable::code(double tint, double mol_dm3_cm) const {
  const float row = static_cast<float>(tint) * rows_per_tint_;
  const auto whole = static_cast<std::size_t>(row);
  const Found found = Amount::find(std::min(mol_dm3_cm * per_amount_, 1.0));
  const float* const corner = colours_[whole * Amount::kNodes + found.node].data();
  const float* const next = corner + 4 * Amount::kNodes;
  const Four blend =
      mixed(mixed(four_at(corner), four_at(corner + 4), found.part),
            mixed(four_at(next), four_at(next + 4), found.part), row - static_cast<float>(whole));
  const FourWhole code = __builtin_convertvector(blend + 0.5F, FourWhole);
  return {static_cast<std::uint8_t>(code[0]), static_cast<std::uint8_t>(code[1]),
          static_cast<std::uint8_t>(code[2])};
}

}  // namespace halfdrop

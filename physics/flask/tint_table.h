#pragma once
// Colours of one indicator's mixtures of forms, worked out beforehand: quick enough for every point of a
// picture.

#include <array>
#include <cstdint>
#include <vector>

#include "physics/chemistry/indicator.h"
#include "physics/flask/contents.h"

namespace halfdrop {

struct Code {
  std::uint8_t r = 255, g = 255, b = 255;  ///< sRGB
};

class TintTable {
 public:
  /// `most_mol_dm3_cm`: the most indicator in a line of sight, concentration times path; more counts as that.
  TintTable(const Indicator& indicator, double most_mol_dm3_cm, Backdrop backdrop);

  /// One number for a mixture of forms: the coloured form's share where only one is coloured, else how many
  /// protons a mean molecule has lost (exact where no more than two neighbouring forms count).
  [[nodiscard]] double tint_of(const FormShares& shares) const;
  /// Colour of light that has crossed `mol_dm3_cm` of indicator with that tint.
  [[nodiscard]] Code code(double tint, double mol_dm3_cm) const;
  [[nodiscard]] double most_mol_dm3_cm() const { return most_amount_; }

 private:
  using Colour =
      std::array<float, 4>;  ///< 0 to 255; the last is not used, but four are added as quickly as one
  void choose_tint(const Indicator& indicator);
  [[nodiscard]] FormShares forms_of(double tint) const;

  std::array<double, 4> tint_of_form_{};
  double most_tint_ = 1.0, most_amount_ = 0.0, per_amount_ = 0.0;
  float rows_per_tint_ = 1.0F;
  std::vector<Colour> colours_;  ///< by tint, then amount of indicator in the line of sight
};

}  // namespace halfdrop

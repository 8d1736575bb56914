#pragma once
// What forms the indicators take in all mixtures of two liquids, from a line of solved ones that refines
// itself where it is asked.

#include <array>
#include <cstddef>
#include <vector>

#include "physics/bench/bench_spec.h"
#include "physics/chemistry/acid_base.h"

namespace halfdrop {

/// mol/dm3 of each solute, in the order of Solute.
using Solutes = std::array<double, kSolutes>;
/// Of the first indicator and of the second, where there is one.
using BothForms = std::array<FormShares, 2>;

[[nodiscard]] BothForms both_forms(const BenchSpec& spec, const Equilibrium& there);

/// Shares lie within 2 kFormsOff of the solver's: between two neighbours the pH differs by kStep_ph at most
/// (it rises or falls all along the line), and half-way between them a straight line was found to be right to
/// kFormsOff.
class MixingLine {
 public:
  static constexpr double kFormsOff = 5e-5, kStep_ph = 0.25;

  /// `spec` must outlive the line.
  MixingLine(const BenchSpec& spec, const Solutes& from, const Solutes& into);

  /// Where `share` (0 to 1) of the mixture's volume is `into`.
  [[nodiscard]] BothForms at(double share);
  [[nodiscard]] std::size_t solved() const { return places_.size(); }

 private:
  struct Place {
    Equilibrium there;
    BothForms forms{};
  };
  /// Of the line, between two places; halved once it has been looked at and found too long.
  struct Piece {
    double low, high;
    std::size_t low_place, high_place;
    std::size_t lower_half = 0;  ///< the upper one follows it; 0: not halved
    bool straight = false;
  };
  [[nodiscard]] Place solve(double share, const Equilibrium* near) const;
  [[nodiscard]] double worst(const BothForms& one, const BothForms& other) const;
  [[nodiscard]] BothForms between(const BothForms& low, const BothForms& high, double part) const;
  void halve(std::size_t piece);

  const BenchSpec& spec_;
  Solutes from_, into_;
  std::size_t indicators_;
  std::vector<Place> places_;
  std::vector<Piece> pieces_;
  std::size_t last_ = 0;  ///< piece that was asked for last
};

}  // namespace halfdrop

#pragma once
// The equation behind solve() and Solver: the charge balance written as a proton condition. Charges count
// from a reference form of each acid system, chosen so that nearly all of the strong ions' charge cancels.
// Each side then rises or falls steeply with [H+], and ln(positive / negative) is nearly straight in ln[H+],
// which suits Newton's method.

#include <array>
#include <cstddef>
#include <vector>

#include "physics/chemistry/acid_base.h"

namespace halfdrop {

/// Constants of the acid systems of a mixture at one temperature; equal acids are pooled.
class BalanceConstants {
 public:
  struct System {
    int steps = 0;
    int protonated_charge = 0;
    std::array<double, 3> k{};               ///< thermodynamic
    std::array<double, 4> charge_square{};   ///< of each form
    std::array<double, 4> activity_power{};  ///< form i goes as g^-power, g: coefficient of charge 1
  };
  struct Loss {
    std::size_t system = 0;
    double k = 0.0;
  };

  explicit BalanceConstants(const SolverOptions& options);
  /// The place of the acid among the systems.
  std::size_t add(const AcidSystem& acid);

  [[nodiscard]] const std::vector<System>& systems() const { return systems_; }
  [[nodiscard]] const std::vector<AcidSystem>& acids() const { return acids_; }
  /// Every proton of every system, the strongest acid first.
  [[nodiscard]] const std::vector<Loss>& losses() const { return losses_; }
  [[nodiscard]] const SolverOptions& options() const { return options_; }
  [[nodiscard]] double kw() const { return kw_; }

 private:
  SolverOptions options_;
  PkShift shift_;
  double kw_ = 0.0;
  std::vector<AcidSystem> acids_;
  std::vector<System> systems_;
  std::vector<Loss> losses_;
};

/// What surrounds the acid systems: concentration of H+ and activity coefficient g of an ion of charge 1.
struct Medium {
  Medium(double h_mol_dm3, double g)
      : h(h_mol_dm3), inverse_h(1.0 / h), square(g * g), inverse_square(1.0 / square) {}
  double h, inverse_h;
  double square, inverse_square;  ///< of g
};
/// At a solved equilibrium.
[[nodiscard]] Medium medium_of(const Equilibrium& equilibrium, const SolverOptions& options);

/// The acid of charge z has K' = K g^(z^2) / (g^((z-1)^2) g) = K g^(2z - 2) in concentrations.
[[nodiscard]] inline FormShares form_shares(const BalanceConstants::System& system, const Medium& medium) {
  double factor = medium.inverse_h;
  for (int z = system.protonated_charge; z > 1; --z) factor *= medium.square;
  for (int z = system.protonated_charge; z < 1; ++z) factor *= medium.inverse_square;
  const double first = system.k[0] * factor;
  if (system.steps == 1) {
    const double scale = 1.0 / (1.0 + first);
    return {scale, first * scale, 0.0, 0.0};
  }
  factor *= medium.inverse_square;
  const double second = first * (system.k[1] * factor);
  const double third = second * (system.k[2] * (factor * medium.inverse_square));
  const double scale = 1.0 / ((1.0 + first) + (second + third));
  return {scale, first * scale, second * scale, third * scale};
}

/// As many values as there are systems, without a trip to the heap when they are few.
template <class T>
class PerSystem {
 public:
  explicit PerSystem(std::size_t systems) : size_(systems) {
    if (systems > kFew) many_.resize(systems);
  }
  [[nodiscard]] std::size_t size() const { return size_; }
  [[nodiscard]] T* data() { return many_.empty() ? few_.data() : many_.data(); }
  [[nodiscard]] const T* data() const { return many_.empty() ? few_.data() : many_.data(); }
  T& operator[](std::size_t i) { return data()[i]; }
  const T& operator[](std::size_t i) const { return data()[i]; }

 private:
  static constexpr std::size_t kFew = 8;
  std::size_t size_;
  std::array<T, kFew> few_{};
  std::vector<T> many_;
};

/// What is in one dm3 of a solution, in mol.
struct Amounts {
  explicit Amounts(std::size_t count) : systems(count) {}
  double strong_charge = 0.0;
  double strong_ions = 0.0;  ///< sum of z^2 c
  PerSystem<double> systems;
};

[[nodiscard]] Equilibrium equilibrium_of(const BalanceConstants& constants, const Amounts& amounts);
/// Starts at [H+] and ionic strength of `near`.
[[nodiscard]] Equilibrium equilibrium_near(const BalanceConstants& constants, const Amounts& amounts,
                                           const Equilibrium& near);

}  // namespace halfdrop

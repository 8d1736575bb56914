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

/// Of an ion of charge 1; 1 in an ideal solution.
[[nodiscard]] double activity_coefficient(double ionic_strength_mol_dm3, const SolverOptions& options);

/// Shares of the forms at a concentration of H+, with g the activity coefficient of an ion of charge 1.
[[nodiscard]] FormShares form_shares(const BalanceConstants::System& system, double h_mol_dm3, double g);

/// As many values as there are systems, without a trip to the heap when they are few.
template <class T>
class PerSystem {
 public:
  explicit PerSystem(std::size_t systems) : size_(systems) {
    if (systems > kFew) many_.resize(systems);
  }
  [[nodiscard]] std::size_t size() const { return size_; }
  T& operator[](std::size_t i) { return many_.empty() ? few_[i] : many_[i]; }
  const T& operator[](std::size_t i) const { return many_.empty() ? few_[i] : many_[i]; }

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

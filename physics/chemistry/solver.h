#pragma once
// The charge balance for many solutions of the same few things: what does not change is made ready once.

#include <cstddef>
#include <span>
#include <vector>

#include "physics/chemistry/acid_base.h"
#include "physics/chemistry/charge_balance.h"

namespace halfdrop {

/// Ingredients are numbered from 0 in the order in which they were added; a solution is one concentration
/// (mol/dm3, >= 0) for each of them. Gives what solve(Mixture) gives, to rounding.
class Solver {
 public:
  explicit Solver(const SolverOptions& options);

  std::size_t add(const Substance& substance);
  std::size_t add(const AcidSystem& system);
  [[nodiscard]] std::size_t ingredients() const { return ingredients_.size(); }
  [[nodiscard]] const SolverOptions& options() const { return constants_.options(); }
  /// Whether that ingredient brings what this substance brings.
  [[nodiscard]] bool holds(std::size_t ingredient, const Substance& substance) const;

  [[nodiscard]] Equilibrium solve(std::span<const double> mol_dm3) const;
  /// Starts from the equilibrium of a similar solution: the nearer, the quicker. Same result, to 1e-9 in pH.
  [[nodiscard]] Equilibrium solve(std::span<const double> mol_dm3, const Equilibrium& near) const;

  /// Of the first acid system of an ingredient, at an equilibrium that this solver found.
  [[nodiscard]] FormShares form_fractions(std::size_t ingredient, const Equilibrium& equilibrium) const;

 private:
  struct Share {
    std::size_t system = 0;
    double count = 1.0;
  };
  struct Ingredient {
    double strong_charge = 0.0, strong_ions = 0.0;
    std::size_t first_share = 0, shares = 0;
  };
  [[nodiscard]] Amounts amounts_of(std::span<const double> mol_dm3) const;

  BalanceConstants constants_;
  std::vector<Ingredient> ingredients_;
  std::vector<Share> shares_;
};

}  // namespace halfdrop

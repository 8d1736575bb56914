#pragma once
// First-order budget of a measurement's uncertainty (JCGM 100:2008, the GUM, 5.1.2): u² = Σ (cᵢ uᵢ)², with cᵢ
// from central differences, expanded with k = 2. Left out: correlation between inputs (5.2), higher orders,
// and effective degrees of freedom (annex G): where the spread of two or three titres rules, k = 2 covers
// less than 95 %.

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace halfdrop {

/// What is known of a quantity beyond its best value.
enum class Shape { rectangular, triangular, normal };

struct Quantity {
  std::string name;
  std::string unit;
  double value = 0.0;     ///< best estimate; 0 for a correction whose size is not known
  double standard = 0.0;  ///< standard uncertainty u, in `unit`
  Shape shape = Shape::normal;
};

/// u of a value as likely anywhere within ± a: a/√3 (JCGM 100:2008, 4.3.7).
[[nodiscard]] double rectangular(double half_width);
/// u of a value within ± a, the more likely the nearer the middle: a/√6 (JCGM 100:2008, 4.3.9).
[[nodiscard]] double triangular(double half_width);
/// u of a normal value that is given with an expanded uncertainty: U/k (JCGM 100:2008, 4.3.3).
[[nodiscard]] double normal(double expanded, double k);

/// Coverage factor: about 95 % where the sum is nearly normal (JCGM 100:2008, 6.3.3).
inline constexpr double kCoverage = 2.0;

struct BudgetLine {
  Quantity quantity;
  double sensitivity = 0.0;   ///< ∂f/∂x, result's unit per the quantity's
  double contribution = 0.0;  ///< |sensitivity| u, result's unit
  double share = 0.0;  ///< of the combined variance; all add up to 1, or are 0 where nothing is uncertain
};

struct UncertaintyBudget {
  double value = 0.0;
  std::string unit;
  std::vector<BudgetLine> lines;  ///< in the order of the inputs
  double standard = 0.0;          ///< combined u
  double expanded = 0.0;          ///< kCoverage u
  double relative = 0.0;          ///< u / |value|; infinite where the value is 0
};

/// Its lines, the largest share first.
[[nodiscard]] std::vector<BudgetLine> by_share(const UncertaintyBudget& budget);

/// The result from the inputs' values, in their order. A quantity that occurs twice in the formula is one
/// input.
using MeasurementFunction = std::function<double(std::span<const double>)>;

/// Nothing where the result, or a sensitivity, is no finite number.
[[nodiscard]] std::optional<UncertaintyBudget> uncertainty_budget(const std::vector<Quantity>& inputs,
                                                                  const MeasurementFunction& result,
                                                                  const std::string& unit);

}  // namespace halfdrop

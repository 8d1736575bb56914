#include "game/marking/uncertainty_budget.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {

namespace {

/// A step well inside u, where the formula is straight, and well above the last digit of a double.
double step_for(const Quantity& quantity) {
  constexpr double kPartOfU = 1.0 / 64.0;
  constexpr double kPartOfValue = 1e-5;
  if (quantity.standard > 0.0) return kPartOfU * quantity.standard;
  return quantity.value != 0.0 ? kPartOfValue * std::fabs(quantity.value) : kPartOfValue;
}

double sensitivity(const std::vector<double>& at, std::size_t i, double step,
                   const MeasurementFunction& result) {
  std::vector<double> moved = at;
  moved[i] = at[i] + step;
  const double above = result(moved), up = moved[i];
  moved[i] = at[i] - step;
  return (above - result(moved)) / (up - moved[i]);
}

void add_up(UncertaintyBudget& budget) {
  double variance = 0.0;
  for (const BudgetLine& line : budget.lines) variance += line.contribution * line.contribution;
  for (BudgetLine& line : budget.lines) {
    line.share = variance > 0.0 ? line.contribution * line.contribution / variance : 0.0;
  }
  budget.standard = std::sqrt(variance);
  budget.expanded = kCoverage * budget.standard;
  budget.relative = budget.standard / std::fabs(budget.value);
}

}  // namespace

std::vector<BudgetLine> by_share(const UncertaintyBudget& budget) {
  std::vector<BudgetLine> lines = budget.lines;
  std::stable_sort(lines.begin(), lines.end(),
                   [](const BudgetLine& a, const BudgetLine& b) { return a.share > b.share; });
  return lines;
}

double rectangular(double half_width) { return half_width / std::sqrt(3.0); }

double triangular(double half_width) { return half_width / std::sqrt(6.0); }

double normal(double expanded, double k) { return expanded / k; }

std::optional<UncertaintyBudget> uncertainty_budget(const std::vector<Quantity>& inputs,
                                                    const MeasurementFunction& result,
                                                    const std::string& unit) {
  std::vector<double> at;
  for (const Quantity& quantity : inputs) at.push_back(quantity.value);
  UncertaintyBudget budget;
  budget.value = result(at);
  budget.unit = unit;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    BudgetLine line{inputs[i], sensitivity(at, i, step_for(inputs[i]), result), 0.0, 0.0};
    line.contribution = std::fabs(line.sensitivity) * inputs[i].standard;
    budget.lines.push_back(std::move(line));
  }
  add_up(budget);
  const bool finite = std::isfinite(budget.value) && std::isfinite(budget.standard);
  return finite ? std::optional(std::move(budget)) : std::nullopt;
}

}  // namespace halfdrop

#include "game/records/uncertainty_text.h"

#include <algorithm>

#include "game/marking/wording.h"
#include "game/records/text_layout.h"

namespace halfdrop {

namespace {

std::string per_cent(double share) { return figure_text(100.0 * share, 1) + " %"; }

std::string row(const BudgetLine& line) {
  const Quantity& quantity = line.quantity;
  return "  " + left(quantity.name, 26) + right(significant_text(quantity.value, 5), 9) +
         right(significant_text(quantity.standard, kUncertaintyFigures), 10) + " " + left(quantity.unit, 9) +
         right(significant_text(line.sensitivity, 3), 11) +
         right(significant_text(line.contribution, kUncertaintyFigures), 12) +
         right(per_cent(line.share), 9) + "\n";
}

}  // namespace

std::string uncertainty_text(const OwnUncertainty& own) {
  const UncertaintyBudget& budget = own.budget;
  const std::string plus_minus = " ± " + rounded_like(budget.expanded, budget.expanded) + " " + budget.unit;
  const std::string best = rounded_like(own.perfect_hands_expanded, own.perfect_hands_expanded);
  std::string out = "\nHow well it is known (u standard uncertainty, c sensitivity)\n";
  out += wrapped("", "Your titres give " + rounded_like(budget.value, budget.expanded) + plus_minus +
                         " (k = " + figure_text(kCoverage, 0) + ", " + per_cent(kCoverage * budget.relative) +
                         "). Perfect hands could have got ± " + best + " with this glass.");
  out += "  " + left("quantity", 26) + right("value", 9) + right("u", 10) + " " + left("unit", 9) +
         right("c", 11) + right("|c| u", 12) + right("share", 9) + "\n";
  for (const BudgetLine& line : by_share(budget)) out += row(line);
  return out;
}

}  // namespace halfdrop

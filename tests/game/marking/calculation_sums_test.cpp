// Lines of the working with sums, and constants that they name: evaluated, and judged on the figures above.

#include <doctest/doctest.h>

#include "game/marking/calculation.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

/// mean -> spared = 50 x 2 / 4 + 3 - mean - 1, twice = spared x 2.
Level with_sums() {
  Level level = test::good_level();
  level.constants = {{"blank", 50.0, "cm³", "the blank"}};
  CalculationStep mean = level.calculation.front();
  CalculationStep spared{"calculation/spared", "spared", "cm³", {}, {}, {}, {}, 3};
  spared.multiply = {"blank", 2.0};
  spared.divide = {4.0};
  spared.plus = {3.0};
  spared.minus = {"calculation/mean titre", 1.0};
  CalculationStep twice{"calculation/twice", "twice", "cm³", {}, {}, {}, {}, 3};
  twice.multiply = {"calculation/spared", 2.0};
  level.calculation = {mean, spared, twice};
  return level;
}

ResultsSheet sheet_of(const std::vector<std::array<const char*, 2>>& cells) {
  ResultsSheet sheet;
  for (const auto& [cell, text] : cells) sheet.write(1, {cell, text});
  return sheet;
}

}  // namespace

TEST_CASE("a line is its product over its divisors, plus and minus its sums") {
  // By hand: 25 + 3 - 7 - 1 = 20, twice 40.
  CHECK_NEAR(result_from_mean(with_sums(), 7.0).value(), 40.0, 1e-12);
  Level level = with_sums();
  level.calculation[1].multiply.clear();
  level.calculation[1].divide.clear();
  CHECK_NEAR(result_from_mean(level, 7.0).value(), -10.0, 1e-12);  // without factors the sums alone
  level.calculation[1].plus = {std::string("calculation/twice")};
  CHECK_FALSE(result_from_mean(level, 7.0).has_value());  // a term that is not known yet
}

TEST_CASE("a slip in a difference costs that line; the next is judged on what was written") {
  const Level level = with_sums();
  const auto right = [&](const char* spared, const char* twice) {
    std::string words;
    for (const WorkedStep& step : check_working(level,
                                                sheet_of({{"calculation/mean titre", "7.00"},
                                                          {"calculation/spared", spared},
                                                          {"calculation/twice", twice}}),
                                                7.0))
      words += step.right ? "right " : "wrong ";
    return words;
  };
  CHECK(right("20.0", "40.0") == "right right ");
  CHECK(right("34.0", "68.0") == "wrong right ");  // the titre added, not taken away
  CHECK(right("34.0", "40.0") == "wrong wrong ");
}

}  // namespace halfdrop

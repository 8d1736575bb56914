#include "game/marking/results_sheet.h"

#include <doctest/doctest.h>

#include "game/marking/calculation.h"
#include "tests/support/bench_hands.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

TEST_CASE("the sheet remembers what stood in a cell before") {
  ResultsSheet sheet;
  sheet.write(10, {"1/initial", "0.10"});
  sheet.write(20, {"1/initial", "0.15"});
  sheet.write(30, {"1/initial", "0.15"});
  CHECK(sheet.text("1/initial") == "0.15");
  CHECK(sheet.written_at("1/initial") == 30);
  CHECK(sheet.corrections("1/initial") == 1);
  CHECK(sheet.history("1/initial").size() == 3);
  CHECK(sheet.corrections("1/final") == 0);
  CHECK(sheet.begun("1"));
  CHECK(!sheet.begun("2"));
}

TEST_CASE("striking a cell out is a correction; writing into the empty cell again is not another") {
  ResultsSheet sheet;
  sheet.write(1, {"1/final", "20.10"});
  sheet.write(2, {"1/final", ""});
  sheet.write(3, {"1/final", "20.15"});
  CHECK(sheet.corrections("1/final") == 1);
}

TEST_CASE("a line of the working is product over product") {
  // 21.25 cm3 of 0.1 mol/dm3 against 25 cm3, ten times diluted: 0.085 and 0.85 mol/dm3 (worked by hand).
  const Level level = test::spirit_vinegar();
  REQUIRE(result_from_mean(level, 21.25));
  CHECK_NEAR(*result_from_mean(level, 21.25), 0.85, 1e-12);
}

TEST_CASE("a line that divides by nought or lacks a factor has no value") {
  const Level level = test::spirit_vinegar();
  CalculationStep step;
  step.multiply = {1.0};
  step.divide = {std::string("calculation/mean titre")};
  CHECK(!evaluate(level, step, {}));
  CHECK(!evaluate(level, step, {{"calculation/mean titre", 0.0}}));
  CHECK(!evaluate(level, step, {{"calculation/mean titre", 1e-320}}));
  CHECK(evaluate(level, step, {{"calculation/mean titre", 2.0}}) == 0.5);
}

}  // namespace
}  // namespace halfdrop

// ln(reported/true) in parts, for an unknown in the flask and one in the burette.

#include "game/marking/result_split.h"

#include <cmath>

#include "game/marking/calculation.h"
#include "game/marking/criteria.h"
#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"
#include "tests/support/made_titres.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

using test::made_run;

Level level_named(const std::string& name) {
  auto level = read_level(test::source_file("levels/" + name + ".json"));
  REQUIRE(level.has_value());
  return *level;
}

/// What the player writes: the working of a mean, each line to so many figures.
ResultsSheet worked(const Level& level, const std::string& mean, int figures = 12) {
  ResultsSheet sheet;
  sheet.write(1, {kMeanTitre, mean});
  CellValues cells = {{kMeanTitre, *number_written(mean)}};
  for (const CalculationStep& step : level.calculation) {
    if (step.cell == kMeanTitre) continue;
    char text[40];
    std::snprintf(text, sizeof text, "%.*g", figures, *evaluate(level, step, cells));
    sheet.write(1, {step.cell, text});
    cells[step.cell] = *number_written(text);
  }
  return sheet;
}

double sum_of(const ResultSplit& split) {
  double sum = 0.0;
  for (const ResultPart& part : split.parts) sum += part.percent;
  return sum;
}

double part_of(const ResultSplit& split, Cause cause) {
  for (const ResultPart& part : split.parts) {
    if (part.cause == cause) return part.percent;
  }
  return 0.0;
}

double part_of(const ResultSplit& split, ResultPartOf of) {
  double sum = 0.0;
  for (const ResultPart& part : split.parts) {
    if (part.of == of) sum += part.percent;
  }
  return sum;
}

double reported(const Level& level, const ResultsSheet& sheet) {
  return *sheet.number(level.calculation.back().cell);
}

}  // namespace

TEST_CASE("with the unknown in the flask the parts add up to ln(reported/true), each with its titre's sign") {
  const Level level = level_named("01-spirit-vinegar");
  const double unknown = 0.0853, ideal_cm3 = unknown * 25.0 / 0.1;
  const std::vector<TitreRow> rows = {
      made_run("1", ideal_cm3, {{Cause::jet_air, 0.20}, {Cause::rounding, -0.015}}, true),
      made_run("2", ideal_cm3, {{Cause::jet_air, 0.14}, {Cause::parallax_final, -0.06}}, true)};
  const ResultsSheet sheet = worked(level, "21.46", 4);
  const auto split = result_split(level, sheet, rows, ideal_cm3);
  REQUIRE(split.has_value());
  // By hand: the vinegar in the drum is ten times as strong as the diluted one.
  CHECK_NEAR(split->percent, 100.0 * std::log(reported(level, sheet) / (10.0 * unknown)), 1e-9);
  CHECK_NEAR(sum_of(*split), split->percent, 1e-9);
  CHECK(split->larger_with_titre);
  CHECK(part_of(*split, Cause::jet_air) > 0.0);
  CHECK(part_of(*split, Cause::parallax_final) < 0.0);
  // A result in proportion to the titre: ln(T/T*) is shared by size.
  const double mean_cm3 = ideal_cm3 + 0.1325;
  CHECK_NEAR(part_of(*split, Cause::jet_air), 100.0 * std::log(mean_cm3 / ideal_cm3) * 0.17 / 0.1325, 1e-9);
}

TEST_CASE("with the unknown in the burette they add up as well, each with the other sign") {
  const Level level = level_named("02-standard-alkali");
  const double unknown = 0.1011, ideal_cm3 = 0.101851 * 25.0 / unknown;
  const std::vector<TitreRow> rows = {
      made_run("1", ideal_cm3, {{Cause::jet_air, 0.20}, {Cause::rounding, 0.01}}, true),
      made_run("2", ideal_cm3, {{Cause::jet_air, 0.20}, {Cause::aliquot, -0.03}}, true)};
  const ResultsSheet sheet = worked(level, "25.37", 4);
  const auto split = result_split(level, sheet, rows, ideal_cm3);
  REQUIRE(split.has_value());
  // The label's six figures stand for 5.200 g in 250 cm³: 1e-6 off.
  CHECK_NEAR(split->percent, 100.0 * std::log(reported(level, sheet) / unknown), 1e-3);
  CHECK_NEAR(sum_of(*split), split->percent, 1e-9);
  CHECK(!split->larger_with_titre);
  CHECK(part_of(*split, Cause::jet_air) < 0.0);
  CHECK(part_of(*split, Cause::aliquot) > 0.0);
}

TEST_CASE("in every level the parts add up") {
  for (const char* name :
       {"03-standard-acid", "04-washing-soda", "06-citric-descaler", "10-aspirin-tablets"}) {
    CAPTURE(name);
    const Level level = level_named(name);
    const std::vector<TitreRow> rows = {made_run("1", 24.0, {{Cause::overshoot, 0.11}}, true),
                                        made_run("2", 24.0, {{Cause::hanging_drop, 0.05}}, true)};
    const ResultsSheet sheet = worked(level, "24.08", 4);
    const auto split = result_split(level, sheet, rows, 24.0);
    REQUIRE(split.has_value());
    CHECK_NEAR(sum_of(*split), 100.0 * std::log(reported(level, sheet) / *result_from_mean(level, 24.0)),
               1e-9);
  }
}

TEST_CASE("causes that cancel leave the result where it was and keep their own sizes") {
  const Level level = level_named("01-spirit-vinegar");
  const std::vector<TitreRow> rows = {
      made_run("1", 20.0, {{Cause::jet_air, 0.10}, {Cause::funnel_drips, -0.10}}, true)};
  const auto split = result_split(level, worked(level, "20.00"), rows, 20.0);
  REQUIRE(split.has_value());
  CHECK_NEAR(split->percent, 0.0, 1e-9);
  CHECK_NEAR(part_of(*split, Cause::jet_air), 100.0 * 0.10 / 20.0, 1e-6);  // d ln T = dT/T
  CHECK_NEAR(part_of(*split, Cause::funnel_drips), -0.5, 1e-6);
}

TEST_CASE("a trial taken in, a subtraction, a mean and a slip of the pen have parts of their own") {
  const Level level = level_named("01-spirit-vinegar");
  std::vector<TitreRow> rows = {made_run("trial", 20.0, {{Cause::overshoot, 0.60}}, true),
                                made_run("1", 20.0, {}, true), made_run("2", 20.0, {}, true)};
  rows[2].written_titre_cm3 = 20.30;
  ResultsSheet sheet = worked(level, "20.40");
  sheet.write(2, {"calculation/spirit vinegar", "8.160"});  // ten times too much
  const auto split = result_split(level, sheet, rows, 20.0);
  REQUIRE(split.has_value());
  CHECK_NEAR(part_of(*split, ResultPartOf::titres), 0.0, 1e-12);
  CHECK_NEAR(part_of(*split, ResultPartOf::choice), 100.0 * std::log(20.20 / 20.0), 1e-9);
  CHECK_NEAR(part_of(*split, ResultPartOf::subtraction), 100.0 * std::log(20.30 / 20.20), 1e-9);
  CHECK_NEAR(part_of(*split, ResultPartOf::mean), 100.0 * std::log(20.40 / 20.30), 1e-9);
  CHECK_NEAR(part_of(*split, ResultPartOf::slip), 100.0 * std::log(10.0), 1e-6);
  CHECK_NEAR(sum_of(*split), 100.0 * std::log(8.160 / 0.8), 1e-9);
}

TEST_CASE("a slip high up in the working is its own line's, whatever follows from it") {
  const Level level = level_named("01-spirit-vinegar");
  const std::vector<TitreRow> rows = {made_run("1", 20.0, {}, true)};
  ResultsSheet sheet;
  sheet.write(1, {kMeanTitre, "20.00"});
  sheet.write(1, {"calculation/moles of alkali", "0.02000"});
  sheet.write(1, {"calculation/moles of acid", "0.02000"});
  sheet.write(1, {"calculation/diluted vinegar", "0.8000"});
  sheet.write(1, {"calculation/spirit vinegar", "8.00"});
  const auto split = result_split(level, sheet, rows, 20.0);
  REQUIRE(split.has_value());
  REQUIRE(split->parts.size() == 1);
  CHECK(split->parts[0].cell == "calculation/moles of alkali");
  CHECK_NEAR(split->parts[0].percent, 100.0 * std::log(10.0), 1e-9);
}

TEST_CASE("where a figure has no logarithm, or no run was read, nothing is split") {
  const Level level = level_named("01-spirit-vinegar");
  const std::vector<TitreRow> rows = {made_run("1", 20.0, {}, true)};
  for (const char* text : {"0", "-0.8", "nan", "", "1e999"}) {
    CAPTURE(text);
    ResultsSheet sheet = worked(level, "20.00");
    sheet.write(2, {"calculation/spirit vinegar", text});
    CHECK(!result_split(level, sheet, rows, 20.0));
  }
  CHECK(!result_split(level, worked(level, "20.00"), {}, 20.0));
  CHECK(!result_split(level, worked(level, "-3"), rows, 20.0));
}

TEST_CASE("a marked attempt's split is its own result against the true one") {
  test::BenchHands hands;
  test::RunPlan plan;
  plan.past_cm3 = 0.15;
  hands.whole_attempt(plan);
  const MarkedAttempt marked = mark(hands.hand_in());
  REQUIRE(marked.result_split);
  CHECK_NEAR(sum_of(*marked.result_split), 100.0 * std::log(*marked.reported / marked.true_value), 1e-9);
}

}  // namespace halfdrop

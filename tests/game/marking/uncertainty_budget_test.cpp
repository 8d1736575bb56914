#include "game/marking/uncertainty_budget.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numeric>

#include "tests/support/monte_carlo.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

/// Eurachem/CITAC guide CG4 (QUAM), examples A2 and A3: inputs, half-widths and distributions as printed
/// there. Results to more figures, and each contribution: the GUM Tree Calculator's worked copies of both
/// examples, recomputed by hand from the inputs.
///
/// The page of A3 prints u = 0.00016, but its own components give 0.000184: 0.00016 is what comes of
/// dividing the repeatability by √3. Both are checked, each against what belongs to it.
std::vector<Quantity> weighed_phthalate() {
  const auto atom = [](const char* name, double weight, double within) {
    return Quantity{name, "g/mol", weight, rectangular(within), Shape::rectangular};
  };
  return {{"m, linearity twice", "g", 0.3888, triangular(0.0003), Shape::triangular},
          {"P", "", 1.0, rectangular(0.0005), Shape::rectangular},
          atom("C", 12.0107, 0.0008),
          atom("H", 1.00794, 0.00007),
          atom("O", 15.9994, 0.0003),
          atom("K", 39.0983, 0.0001)};
}

constexpr std::size_t kWeighed = 6;

/// R 1000 m P / M, in mmol; x begins as weighed_phthalate does.
double phthalate_mmol(std::span<const double> x) {
  return 1000.0 * x[0] * x[1] / (8.0 * x[2] + 5.0 * x[3] + 4.0 * x[4] + x[5]);
}

Quantity calibrated(const char* name, double cm3, double within) {
  return {name, "cm³", cm3, triangular(within), Shape::triangular};
}

Quantity warmed(const char* name, double cm3) {
  return {name, "cm³", 0.0, rectangular(cm3 * 2.1e-4 * 4.0), Shape::rectangular};
}

std::vector<Quantity> with(std::vector<Quantity> inputs, const std::vector<Quantity>& more) {
  inputs.insert(inputs.end(), more.begin(), more.end());
  return inputs;
}

std::vector<Quantity> inputs_a2() {
  return with(weighed_phthalate(), {calibrated("V_T", 18.64, 0.03),
                                    {"V_T, temperature", "cm³", 0.0, 0.006, Shape::normal},
                                    {"R", "", 1.0, 0.0005, Shape::normal}});
}

double alkali(std::span<const double> x) { return x[8] * phthalate_mmol(x) / (x[6] + x[7]); }

std::vector<Quantity> inputs_a3(double repeatability) {
  return with(weighed_phthalate(), {calibrated("V_T1", 18.64, 0.03),
                                    warmed("V_T1, temperature", 19.0),
                                    calibrated("V_T2", 14.89, 0.03),
                                    warmed("V_T2, temperature", 15.0),
                                    calibrated("V_HCl", 15.0, 0.02),
                                    warmed("V_HCl, temperature", 15.0),
                                    {"R", "", 1.0, repeatability, Shape::normal}});
}

double acid(std::span<const double> x) {
  return x[12] * phthalate_mmol(x) * (x[8] + x[9]) / ((x[6] + x[7]) * (x[10] + x[11]));
}

/// Root of the sum of squares of some lines' contributions.
double together(const UncertaintyBudget& budget, std::size_t from, std::size_t to) {
  double sum = 0.0;
  for (std::size_t i = from; i < to; ++i) sum += std::pow(budget.lines[i].contribution, 2);
  return std::sqrt(sum);
}

double shares(const UncertaintyBudget& budget) {
  return std::accumulate(budget.lines.begin(), budget.lines.end(), 0.0,
                         [](double sum, const BudgetLine& line) { return sum + line.share; });
}

UncertaintyBudget of(const std::vector<Quantity>& inputs, const MeasurementFunction& result) {
  const auto budget = uncertainty_budget(inputs, result, "mol dm⁻³");
  REQUIRE(budget.has_value());
  return *budget;
}

}  // namespace

TEST_CASE("half-widths become the guide's standard uncertainties") {
  // CG4, A2: purity ±0.0005 gives 0.00029, linearity ±0.15 mg gives 0.09 mg, twice 0.12 mg (0.13 in the
  // guide, from the rounded 0.09), calibration ±0.03 cm³ gives 0.012 cm³. JCGM 100:2008, 4.3.3: 240 µg at
  // three standard deviations of the 1 kg standard are 80 µg.
  CHECK_NEAR(rectangular(0.0005), 0.00029, 0.000005);
  CHECK_NEAR(rectangular(0.15), 0.09, 0.005);
  CHECK_NEAR(triangular(0.30), 0.122, 0.0005);
  CHECK_NEAR(triangular(0.03), 0.012, 0.0005);
  CHECK_NEAR(normal(240.0, 3.0), 80.0, 1e-12);
}

TEST_CASE("the guide's example A2, alkali against phthalate, comes out") {
  const UncertaintyBudget a2 = of(inputs_a2(), alkali);
  CHECK_NEAR(a2.value, 0.1021361597, 5e-11);
  CHECK_NEAR(a2.standard, 0.00010, 0.000005);  // as the guide prints it
  CHECK_NEAR(a2.standard, 0.000100500722, 5e-13);
  CHECK_NEAR(a2.expanded, 0.0002, 0.00005);
  CHECK_NEAR(together(a2, kWeighed, kWeighed + 2), 7.47292e-5, 5e-11);  // V_T
  CHECK_NEAR(together(a2, 8, 9), 5.10681e-5, 5e-11);                    // R
  CHECK_NEAR(together(a2, 0, 1), 3.21735e-5, 5e-11);                    // m
  CHECK_NEAR(together(a2, 1, 2), 2.94842e-5, 5e-11);                    // P
  CHECK_NEAR(together(a2, 2, kWeighed), 1.88312e-6, 5e-12);             // M
}

TEST_CASE(
    "the guide's example A3, acid against alkali against phthalate, comes out from its own components") {
  const UncertaintyBudget a3 = of(inputs_a3(0.001), acid);
  CHECK_NEAR(a3.value, 0.1013871612, 5e-11);
  CHECK_NEAR(a3.standard, 0.00018434, 5e-9);
  CHECK_NEAR(together(a3, 12, 13), 1.01387e-4, 5e-10);       // R
  CHECK_NEAR(together(a3, 8, 10), 9.69953e-5, 5e-11);        // V_T2
  CHECK_NEAR(together(a3, 6, 8), 8.33653e-5, 5e-11);         // V_T1
  CHECK_NEAR(together(a3, 10, 12), 7.39151e-5, 5e-11);       // V_HCl
  CHECK_NEAR(together(a3, 0, 1), 3.19376e-5, 5e-11);         // m
  CHECK_NEAR(together(a3, 1, 2), 2.9268e-5, 5e-10);          // P
  CHECK_NEAR(together(a3, 2, kWeighed), 1.86931e-6, 5e-12);  // M
}

TEST_CASE("what A3's page prints, 0.00016, belongs to a repeatability over √3") {
  const UncertaintyBudget printed = of(inputs_a3(0.001 / std::sqrt(3.0)), acid);
  CHECK_NEAR(printed.standard, 0.00016, 0.000005);
  CHECK_NEAR(printed.standard, 0.00016471, 5e-9);
  CHECK_NEAR(printed.lines[12].contribution, 5.85359e-5, 5e-11);
  CHECK(of(inputs_a3(0.001), acid).standard > 0.00018);
}

TEST_CASE("A3 with an indicator's excess of 0.05 cm³ comes out") {
  std::vector<Quantity> inputs = inputs_a3(0.001 / std::sqrt(3.0));
  for (const std::size_t titre : {std::size_t{6}, std::size_t{8}}) {
    inputs[titre].value -= 0.05;
    inputs[titre].standard = std::hypot(inputs[titre].standard, 0.03);
  }
  const UncertaintyBudget corrected = of(inputs, acid);
  CHECK_NEAR(corrected.value, 0.10132, 5e-6);
  CHECK_NEAR(corrected.standard, 0.0003096, 5e-8);
}

TEST_CASE("drawing A2 and A3 finds what the slopes found") {
  const UncertaintyBudget a2 = of(inputs_a2(), alkali);
  const test::Drawn drawn_a2 = test::monte_carlo(inputs_a2(), alkali, a2, 2012);
  CAPTURE(drawn_a2.sd / a2.standard);
  CHECK_DRAWN_LIKE(drawn_a2, a2);
  const UncertaintyBudget a3 = of(inputs_a3(0.001), acid);
  const test::Drawn drawn_a3 = test::monte_carlo(inputs_a3(0.001), acid, a3, 2013);
  CAPTURE(drawn_a3.sd / a3.standard);
  CHECK_DRAWN_LIKE(drawn_a3, a3);
  // It would notice what the trap of A3 hides.
  CHECK(std::fabs(drawn_a3.sd - 0.00016471) > 20.0 * drawn_a3.sd_error);
}

TEST_CASE("shares add up to one, and are the squares of the contributions") {
  for (const UncertaintyBudget& budget : {of(inputs_a2(), alkali), of(inputs_a3(0.001), acid)}) {
    CHECK_NEAR(shares(budget), 1.0, 1e-12);
    for (const BudgetLine& line : budget.lines) {
      CHECK_NEAR(line.share, std::pow(line.contribution / budget.standard, 2), 1e-12);
    }
    CHECK_NEAR(budget.relative * budget.value, budget.standard, 1e-15);
    CHECK_NEAR(budget.expanded, 2.0 * budget.standard, 1e-15);
  }
}

TEST_CASE("a quantity that occurs twice enters once") {
  // By hand: u(x²) = 2 x u, not √2 x u; and x − x is known exactly.
  const std::vector<Quantity> x = {{"x", "cm³", 25.0, 0.02, Shape::normal}};
  CHECK_NEAR(of(x, [](std::span<const double> at) { return at[0] * at[0]; }).standard, 1.0, 1e-9);
  const UncertaintyBudget nothing = of(x, [](std::span<const double> at) { return at[0] - at[0]; });
  CHECK(nothing.standard == 0.0);
  CHECK(nothing.lines[0].share == 0.0);
}

TEST_CASE("an exact quantity has a slope and no share") {
  const std::vector<Quantity> inputs = {{"a", "", 3.0, 0.0, Shape::normal},
                                        {"b", "", 4.0, 0.1, Shape::normal}};
  const UncertaintyBudget budget = of(inputs, [](std::span<const double> x) { return x[0] / x[1]; });
  CHECK_NEAR(budget.lines[0].sensitivity, 0.25, 1e-9);
  CHECK(budget.lines[0].share == 0.0);
  CHECK_NEAR(budget.lines[1].sensitivity, -3.0 / 16.0, 1e-6);
  CHECK_NEAR(budget.lines[1].share, 1.0, 1e-15);
}

TEST_CASE("a result that is no number has no budget") {
  const std::vector<Quantity> x = {{"x", "cm³", 0.0, 0.02, Shape::normal}};
  const auto one_over = [](std::span<const double> at) { return 1.0 / at[0]; };
  CHECK_FALSE(uncertainty_budget(x, one_over, "").has_value());
  const auto never = [](std::span<const double>) { return std::numeric_limits<double>::quiet_NaN(); };
  CHECK_FALSE(uncertainty_budget(x, never, "").has_value());
}

}  // namespace halfdrop

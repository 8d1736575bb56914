#include "game/marking/own_uncertainty.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "game/marking/calculation.h"
#include "game/marking/marks.h"
#include "game/marking/statistics.h"
#include "physics/burette/column.h"
#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"
#include "tests/support/monte_carlo.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

constexpr std::array kTwo = {21.50, 21.60};

UncertaintyBudget budget_of(const Level& level, std::span<const double> titres_cm3,
                            const AssumedOfTheBench& assumed = {}) {
  const auto own = own_uncertainty(level, titres_cm3, assumed);
  REQUIRE(own.has_value());
  return own->budget;
}

const BudgetLine& line(const UncertaintyBudget& budget, const std::string& name) {
  for (const BudgetLine& one : budget.lines) {
    if (one.quantity.name.starts_with(name)) return one;
  }
  throw std::runtime_error("no quantity " + name);
}

double square(double value) { return value * value; }

/// The unknown is in the burette, and nothing was diluted.
Level alkali_of_unknown_strength() {
  Level level;
  level.unknown_in_flask = false;
  level.sample.label = "Sulfuric acid, 0,0500 mol dm⁻³, 25 cm³";
  level.sample.label_mol_dm3 = 0.05;
  level.ratio = 2.0;
  level.aliquot_cm3 = 25.0;
  level.calculation = {{kMeanTitre, "", "cm³", {}, {}, {}, {}, 4},
                       {"calculation/alkali",
                        "",
                        "mol dm⁻³",
                        {"sample_mol_dm3", "ratio", "aliquot_cm3"},
                        {kMeanTitre},
                        {},
                        {},
                        3}};
  return level;
}

}  // namespace

TEST_CASE("at level one the budget is what a hand calculation gives") {
  // A product of powers: relative variances add up (JCGM 100:2008, 5.1.6). Burette class A ±0.05 cm³,
  // pipettes ±0.06, flask ±0.30 (ISO 385, 648, 1042); label printed to 0.0001; water 2.1e-4 per °C within 3
  // °C.
  const UncertaintyBudget budget = budget_of(test::good_level(), kTwo);
  const double titre_cm3 = 21.55;
  const double spread = square(0.05), scale = square(0.05) / 6.0, readings = square(0.05) / 6.0;
  const double endpoint = square(0.025) / 3.0;
  double relative = (spread + scale + readings + endpoint) / square(titre_cm3);
  relative += 2.0 * square(2.1e-4 * 3.0) / 3.0;                              // titrant, sample
  relative += 2.0 * square(0.06 / 25.0) / 3.0 + square(0.30 / 250.0) / 3.0;  // pipettes, flask
  relative += square(0.00005 / 0.1) / 3.0;                                   // label
  CHECK_NEAR(budget.value, 0.1 * titre_cm3 / 25.0 * 10.0, 1e-12);
  CHECK_NEAR(budget.relative, std::sqrt(relative), 1e-7);
  CHECK(budget.unit == "mol dm⁻³");
  CHECK(budget.lines.size() == 10);
}

TEST_CASE("drawing a level one result finds what the slopes found") {
  const Level level = test::good_level();
  for (const std::vector<double>& titres : {std::vector{21.50, 21.60}, std::vector{21.55}}) {
    const OwnMeasurement own = own_measurement(level, titres);
    const UncertaintyBudget budget = budget_of(level, titres);
    const test::Drawn drawn = test::monte_carlo(own.inputs, own.result, budget, 385);
    CAPTURE(drawn.sd / budget.standard);
    CHECK_DRAWN_LIKE(drawn, budget);
  }
}

TEST_CASE("more titres shrink the repeatability and nothing else") {
  const Level level = test::good_level();
  const std::array four = {21.50, 21.60, 21.50, 21.60};
  const UncertaintyBudget few = budget_of(level, kTwo), many = budget_of(level, four);
  REQUIRE(few.lines.size() == many.lines.size());
  // By hand: s = 0.0707 of two, 0.0577 of four.
  CHECK_NEAR(few.lines[0].quantity.standard, 0.05, 1e-12);
  CHECK_NEAR(many.lines[0].quantity.standard, 0.05 / std::sqrt(3.0), 1e-12);
  for (std::size_t i = 1; i < few.lines.size(); ++i) {
    CAPTURE(few.lines[i].quantity.name);
    CHECK_NEAR(many.lines[i].contribution, few.lines[i].contribution, 1e-12);
  }
  std::vector<double> hundreds;
  for (int n = 0; n < 500; ++n) hundreds.insert(hundreds.end(), kTwo.begin(), kTwo.end());
  CHECK(budget_of(level, hundreds).standard > line(few, "burette").contribution);
}

TEST_CASE("the player's own spread enters; two identical titres are not certain") {
  const Level level = test::good_level();
  const std::array same = {21.55, 21.55}, wide = {21.35, 21.75};
  const UncertaintyBudget certain = budget_of(level, same);
  CHECK(line(certain, "mean titre").contribution == 0.0);
  CHECK(certain.relative > 0.002);  // pipettes of ±0.06 alone: √2 · 0.06/25/√3 = 0.00196
  const UncertaintyBudget scattered = budget_of(level, wide);
  // By hand: half the difference of two is the standard error of their mean.
  CHECK_NEAR(line(scattered, "mean titre").quantity.standard, 0.20, 1e-12);
  CHECK_NEAR(square(scattered.standard) - square(certain.standard), square(0.20 * 0.04), 1e-10);
}

TEST_CASE("a single titre gets the trade's scatter, two readings of 0.022 cm³") {
  const std::array one = {21.55};
  const UncertaintyBudget budget = budget_of(test::good_level(), one);
  CHECK_NEAR(line(budget, "mean titre").quantity.standard, 0.0311, 0.0001);
}

TEST_CASE("perfect hands are held by the glass alone") {
  const Level level = test::good_level();
  const auto own = own_uncertainty(level, kTwo);
  REQUIRE(own.has_value());
  CHECK(own->perfect_hands_expanded < own->budget.expanded);
  double glass = 0.0;
  for (const char* name :
       {"burette", "pipette", "flask", "standard", "titrant's", "sample's", "pipette of"}) {
    glass += square(line(own->budget, name).contribution);
  }
  CHECK(own->perfect_hands_expanded > 2.0 * std::sqrt(glass));
  // By hand: two readings to 0.01 and a quarter of a drop of 0.05, in cm³ of titre, times 0.04.
  const double hands = square(0.04) * (square(0.01) / 6.0 + square(0.0125) / 3.0);
  CHECK_NEAR(own->perfect_hands_expanded, 2.0 * std::sqrt(glass + hands), 1e-9);
  // However badly the player scattered, perfect hands would have got the same.
  const std::array wide = {21.35, 21.75};
  CHECK_NEAR(own_uncertainty(level, wide)->perfect_hands_expanded, own->perfect_hands_expanded, 1e-12);
}

TEST_CASE("with the unknown in the burette the standard is what stands in the flask") {
  const UncertaintyBudget budget = budget_of(alkali_of_unknown_strength(), kTwo);
  CHECK(budget.lines.size() == 8);  // nothing was diluted
  CHECK_NEAR(budget.value, 0.05 * 2.0 * 25.0 / 21.55, 1e-12);
  const BudgetLine& label = line(budget, "standard");
  CHECK_NEAR(label.quantity.standard, 0.00005 / std::sqrt(3.0), 1e-15);  // 0,0500 on the label
  CHECK_NEAR(label.sensitivity, budget.value / 0.05, 1e-6);
  CHECK_NEAR(line(budget, "burette").sensitivity, -budget.value / 21.55, 1e-6);
}

TEST_CASE("a label that does not print the strength is taken to four figures, unless it is said") {
  Level level = alkali_of_unknown_strength();
  level.sample.label = "Sulfuric acid, a twentieth molar, batch 0.5";
  CHECK_NEAR(line(budget_of(level, kTwo), "standard").quantity.standard, 0.000005 / std::sqrt(3.0), 1e-15);
  AssumedOfTheBench assumed;
  assumed.standard_within_mol_dm3 = 0.0002;
  CHECK_NEAR(line(budget_of(level, kTwo, assumed), "standard").quantity.standard, 0.0002 / std::sqrt(3.0),
             1e-15);
}

TEST_CASE("no titre, no calculation or no number: no budget") {
  CHECK_FALSE(own_uncertainty(test::good_level(), {}).has_value());
  CHECK_FALSE(own_uncertainty(Level{}, kTwo).has_value());
  const std::array nought = {0.0};
  CHECK_FALSE(own_uncertainty(alkali_of_unknown_strength(), nought).has_value());
}

TEST_CASE("the glass that a bench draws is off by no more than the budget says") {
  const Level level = test::good_level();
  const UncertaintyBudget budget = budget_of(level, kTwo);
  std::vector<double> scale_cm3, pipette_cm3;
  for (std::uint64_t seed = 0; seed < 2000; ++seed) {
    const BenchSpec spec = drawn_bench_spec(level, seed);
    const double delivered = true_volume_cm3(spec.burette, 21.65) - true_volume_cm3(spec.burette, 0.10);
    scale_cm3.push_back(delivered - 21.55);
    pipette_cm3.push_back(spec.pipette.true_cm3 - 25.0);
  }
  const SampleStatistics scale = statistics_of(scale_cm3), pipette = statistics_of(pipette_cm3);
  const double allowed = line(budget, "burette").quantity.standard;
  CHECK(scale.sd < allowed);
  CHECK(scale.sd > 0.5 * allowed);
  CHECK_NEAR(pipette.sd, line(budget, "pipette").quantity.standard, 4.0 * pipette.sd_error);
}

TEST_CASE("a marked attempt has the budget of its own ticked titres, and none without a result") {
  test::BenchHands hands;
  hands.whole_attempt();
  const Attempt attempt = hands.hand_in();
  const MarkedAttempt marked = mark(attempt);
  REQUIRE(marked.uncertainty.has_value());
  REQUIRE(marked.reported.has_value());
  const UncertaintyBudget& budget = marked.uncertainty->budget;
  CHECK(agrees(marked.reported_text, *marked.reported, budget.value));
  std::vector<double> titres;
  for (const TitreRow& row : marked.titres) {
    if (row.used) titres.push_back(*row.written_titre_cm3);
  }
  REQUIRE(titres.size() == 2);
  CHECK_NEAR(line(budget, "mean titre").quantity.standard, std::fabs(titres[0] - titres[1]) / 2.0, 1e-12);
  // The bench's own drop: about 0.05 cm³ from a tip of 3 mm.
  CHECK_NEAR(line(budget, "endpoint").quantity.standard, rectangular(0.025), 0.002);
  // Right hands: the truth lies within what they may claim.
  CHECK_NEAR(*marked.reported, marked.true_value, budget.expanded);
  const MarkedAttempt unreported = mark(test::with_text(attempt, "calculation/spirit vinegar", ""));
  CHECK_FALSE(unreported.uncertainty.has_value());
}

}  // namespace halfdrop

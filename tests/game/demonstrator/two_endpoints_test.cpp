// One flask with two endpoints, performed: both titres' books close, the result is known as well as it says,
// and what is done wrong at the first endpoint pushes the second unknown the other way.

#include <doctest/doctest.h>

#include <cmath>

#include "game/demonstrator/demonstrator.h"
#include "game/demonstrator/mistakes.h"
#include "game/marking/calculation.h"
#include "game/marking/marks.h"
#include "tests/support/against_faultless.h"
#include "tests/support/good_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

namespace halfdrop {
namespace {

using test::AgainstFaultless;

Level two_endpoints() {
  Result<Level> level = read_level(test::source_file("levels/09-baked-baking-soda.json"));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  level->flask.fineness = 0.5;  // quicker than a player's
  return *level;
}

const MarkedAttempt& faultless() {
  static const MarkedAttempt marked = mark(perform(two_endpoints(), 3, "tester").attempt);
  return marked;
}

double sum_of(const TitreBreakdown& breakdown) {
  double sum_cm3 = 0.0;
  for (const double cause_cm3 : breakdown.causes_cm3) sum_cm3 += cause_cm3;
  return sum_cm3;
}

constexpr double kDrop_cm3 = 0.05, kConcordant_cm3 = 0.10;
constexpr double kGrams = 84.01;          ///< of a mole of sodium hydrogencarbonate
constexpr double kWritten_g_dm3 = 0.015;  ///< what a result of three figures and its lines are rounded by

const AgainstFaultless& two_runs() {
  static const AgainstFaultless bench("levels/09-baked-baking-soda.json");
  return bench;
}

double carbonate_mol_dm3(const MarkedAttempt& marked) { return 0.1 * *marked.mean_first_titre_cm3 / 25.0; }

/// On average over the accurate runs.
double changed_in_first_cm3(const AgainstFaultless& bench, const MarkedAttempt& wrong, Cause cause) {
  double sum_cm3 = 0.0;
  for (const char* run : {"1", "2"}) {
    const TitreRow &right_row = test::titre(bench.right(), run), &wrong_row = test::titre(wrong, run);
    REQUIRE(right_row.first->breakdown);
    REQUIRE(wrong_row.first->breakdown);
    sum_cm3 += wrong_row.first->breakdown->of(cause) - right_row.first->breakdown->of(cause);
  }
  return sum_cm3 / 2.0;
}

/// Rounding aside.
Cause changed_most_in_first(const AgainstFaultless& bench, const MarkedAttempt& wrong) {
  const auto size = [&](Cause cause) { return std::fabs(changed_in_first_cm3(bench, wrong, cause)); };
  Cause most = Cause::misreading;
  for (std::size_t i = 0; i < kCauses; ++i) {
    const auto cause = static_cast<Cause>(i);
    if (cause != Cause::rounding && size(cause) > size(most)) most = cause;
  }
  return most;
}

void check_sign_of_result(const AgainstFaultless& bench, const MarkedAttempt& wrong, int sign) {
  CHECK((*wrong.reported - *bench.right().reported) * sign > 0.0);
}

}  // namespace

TEST_CASE("both titres of every run are their ideal titres and their causes") {
  for (const TitreRow& row : faultless().titres) {
    CAPTURE(row.run);
    REQUIRE(row.breakdown);
    REQUIRE(row.first);
    REQUIRE(row.first->breakdown);
    CHECK_NEAR(*row.recorded_cm3 - faultless().ideal_titre_cm3, sum_of(*row.breakdown), 1e-9);
    CHECK_NEAR(*row.first->recorded_cm3 - *faultless().ideal_first_titre_cm3, sum_of(*row.first->breakdown),
               1e-9);
    CHECK(*row.first->recorded_cm3 < *row.recorded_cm3);
  }
}

// Textbook relation: total = 2 P + hydrogencarbonate, P the titre to phenolphthalein.
TEST_CASE("both ideal titres together give both unknowns back through the level's own working") {
  const Level level = two_endpoints();
  for (const std::uint64_t seed : {1u, 2u, 7u}) {
    const BenchSpec spec = drawn_bench_spec(level, seed);
    const double carbonate = spec.sample.true_mol_dm3;
    const double hydrogencarbonate = (spec.then->titrant_per_analyte - 2.0) * carbonate;
    CHECK(hydrogencarbonate > 0.018 - 1e-9);
    CHECK(hydrogencarbonate < 0.026 + 1e-9);
    const double first_cm3 = ideal_titre_cm3(spec, 25.0),
                 whole_cm3 = ideal_titre_cm3(spec, 25.0, Endpoint::second);
    CHECK_NEAR(first_cm3, carbonate * 250.0, 1e-9);
    CHECK_NEAR(whole_cm3, 2.0 * first_cm3 + hydrogencarbonate * 250.0, 1e-9);
    const auto result = result_from_means(level, {whole_cm3, first_cm3});
    REQUIRE(result);
    CHECK_NEAR(*result, 84.01 * hydrogencarbonate, 1e-9);
    // Na+ by hand: two of carbonate, one of hydrogencarbonate.
    CHECK_NEAR(spec.sample.substance.strong_charge() * carbonate, 2.0 * carbonate + hydrogencarbonate, 1e-12);
    CHECK_NEAR(spec.sample.carbonate_per_mol * carbonate, carbonate + hydrogencarbonate, 1e-12);
  }
}

TEST_CASE("faultless hands lose no mark, and the result is right to what it says of itself") {
  CHECK(test::unmet(faultless()) == "");
  REQUIRE(faultless().reported);
  REQUIRE(faultless().uncertainty);
  CHECK_NEAR(*faultless().reported, faultless().true_value, faultless().uncertainty->budget.expanded);
}

TEST_CASE("where the result came from adds up over both titres") {
  const auto& split = faultless().result_split;
  REQUIRE(split);
  double sum = 0.0;
  bool first = false, whole = false;
  for (const ResultPart& part : split->parts) {
    sum += part.percent;
    first = first || part.name.starts_with("First titre: ");
    whole = whole || part.name.starts_with("Whole titre: ");
  }
  CHECK(first);
  CHECK(whole);
  CHECK_NEAR(sum, split->percent, 1e-9);
  CHECK_NEAR(split->percent, 100.0 * std::log(*faultless().reported / faultless().true_value), 1e-9);
}

// Titre equations by hand, c the acid's strength, V the aliquot, P the first titre, T the whole one:
// carbonate = c P / V, hydrogencarbonate = c (T - 2 P) / V. So what moves P alone moves the carbonate with it
// and the hydrogencarbonate twice as far the other way; T alone moves the hydrogencarbonate.

TEST_CASE(
    "the first endpoint overshot makes the carbonate large and the hydrogencarbonate small, twice over") {
  const AgainstFaultless& bench = two_runs();
  const MarkedAttempt wrong = bench.with("first-endpoint-overshot");
  const double more_cm3 = changed_in_first_cm3(bench, wrong, Cause::overshoot);
  CHECK_NEAR(more_cm3, find_mistake("first-endpoint-overshot")->typical_cm3, kDrop_cm3);
  CHECK(cause_id(changed_most_in_first(bench, wrong)) == "overshoot");
  CHECK(carbonate_mol_dm3(wrong) > carbonate_mol_dm3(bench.right()));
  check_sign_of_result(bench, wrong, -1);
  // The whole titre is what it was.
  CHECK_NEAR(*wrong.mean_titre_cm3, *bench.right().mean_titre_cm3, kConcordant_cm3);
  for (const TitreRow& row : wrong.titres) CHECK_NEAR(row.first->breakdown->remainder_cm3, 0.0, 1e-9);
}

// Its yellow lies over the last pink.
TEST_CASE("the second indicator in too soon hides the last pink: carbonate small, hydrogencarbonate large") {
  const AgainstFaultless& bench = two_runs();
  const MarkedAttempt wrong = bench.with("second-indicator-too-soon");
  CHECK_FALSE(test::finding(wrong, "second-indicator").met);
  const double change_cm3 = changed_in_first_cm3(bench, wrong, Cause::indicator_blank);
  CHECK_NEAR(change_cm3, -find_mistake("second-indicator-too-soon")->typical_cm3, kDrop_cm3);
  CHECK(change_cm3 < 0.0);
  CHECK(carbonate_mol_dm3(wrong) < carbonate_mol_dm3(bench.right()));
  check_sign_of_result(bench, wrong, 1);
}

TEST_CASE("whoever forgets the carbonate's second proton finds its amount of hydrogencarbonate besides") {
  const AgainstFaultless& bench = two_runs();
  const MarkedAttempt wrong = bench.with("first-titre-taken-off-once");
  CHECK(test::unmet(wrong) == "calculation/acid for hydrogencarbonate");
  CHECK_NEAR(carbonate_mol_dm3(wrong), carbonate_mol_dm3(bench.right()), 1e-9);
  CHECK_NEAR(*wrong.reported - *bench.right().reported, kGrams * carbonate_mol_dm3(wrong), kWritten_g_dm3);
}

TEST_CASE("a whole titre counted from the first endpoint leaves less than no hydrogencarbonate") {
  const AgainstFaultless& bench = two_runs();
  const MarkedAttempt wrong = bench.with("titre-from-first-endpoint");
  CHECK_FALSE(test::finding(wrong, "titres-subtracted").met);
  CHECK_NEAR(carbonate_mol_dm3(wrong), carbonate_mol_dm3(bench.right()), 1e-9);
  CHECK_NEAR(*wrong.reported - *bench.right().reported, -kGrams * carbonate_mol_dm3(wrong), kWritten_g_dm3);
  CHECK(*wrong.reported < 0.0);
}

}  // namespace halfdrop

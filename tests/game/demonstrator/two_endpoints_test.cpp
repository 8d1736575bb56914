// One flask with two endpoints, performed: both titres' books close, the result is known as well as it says,
// and what is done wrong at the first endpoint pushes the second unknown the other way.

#include <doctest/doctest.h>

#include <cmath>

#include "game/demonstrator/demonstrator.h"
#include "game/demonstrator/routine.h"
#include "game/marking/calculation.h"
#include "game/marking/marks.h"
#include "tests/support/good_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

namespace halfdrop {
namespace {

Level two_endpoints() {
  Result<Level> level = read_level(test::source_file("levels/09-baked-baking-soda.json"));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  level->flask.fineness = 0.5;  // quicker than a player's
  return *level;
}

MarkedAttempt played(const Habits& habits, std::uint64_t seed) {
  Session session(two_endpoints(), seed, "tester");
  AtBench bench(session);
  Routine routine(bench, habits);
  routine.dress();
  routine.trial();
  routine.accurate_runs();
  routine.finish();
  session.end("handed in");
  return mark(session.attempt());
}

const MarkedAttempt& faultless() {
  static const MarkedAttempt marked = played({}, 3);
  return marked;
}

double sum_of(const TitreBreakdown& breakdown) {
  double sum_cm3 = 0.0;
  for (const double cause_cm3 : breakdown.causes_cm3) sum_cm3 += cause_cm3;
  return sum_cm3;
}

double mean_first_cm3(const MarkedAttempt& marked, Cause cause) {
  double sum_cm3 = 0.0;
  int count = 0;
  for (const TitreRow& row : marked.titres) {
    if (!row.used || !row.first || !row.first->breakdown) continue;
    sum_cm3 += row.first->breakdown->of(cause);
    ++count;
  }
  return sum_cm3 / count;
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

// Practice: acid run past the first endpoint counts as carbonate, and twice over against hydrogencarbonate.
TEST_CASE("the first endpoint overshot makes the first titre large and the hydrogencarbonate small") {
  Habits habits;
  habits.drops_past_first_endpoint = 4;
  const MarkedAttempt marked = played(habits, 3);
  CHECK(mean_first_cm3(marked, Cause::overshoot) > mean_first_cm3(faultless(), Cause::overshoot) + 0.1);
  CHECK(*marked.mean_first_titre_cm3 > *faultless().mean_first_titre_cm3 + 0.1);
  CHECK(*marked.reported < *faultless().reported - 0.05);
  for (const TitreRow& row : marked.titres) CHECK_NEAR(row.first->breakdown->remainder_cm3, 0.0, 1e-9);
}

TEST_CASE("a second indicator that is in from the start is seen") {
  Habits habits;
  habits.second_indicator_at_start = true;
  habits.repeats = Repeats::once;
  const MarkedAttempt marked = played(habits, 3);
  CHECK_FALSE(test::finding(marked, "second-indicator").met);
}

}  // namespace halfdrop

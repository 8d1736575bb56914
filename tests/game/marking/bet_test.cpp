// A bet on somebody's mean titre.

#include "game/marking/bet.h"

#include "tests/support/made_titres.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

using test::made_run;

/// Two ticked titres of an ideal 21.23, and a mean as written.
MarkedAttempt paper(double first_off_cm3, double second_off_cm3, double mean_cm3) {
  MarkedAttempt marked =
      test::made_attempt({made_run("1", 21.23, {{Cause::parallax_final, first_off_cm3}}, true),
                          made_run("2", 21.23, {{Cause::parallax_final, second_off_cm3}}, true)});
  marked.ideal_titre_cm3 = 21.23;
  marked.mean_titre_cm3 = mean_cm3;
  return marked;
}

MeanTruth truth_of(const MarkedAttempt& marked) { return mean_truth(marked, 0.1).value(); }

}  // namespace

TEST_CASE("titres that agree to the last figure can both be too low") {
  const MeanTruth truth = truth_of(paper(-0.28, -0.28, 20.95));
  CHECK(truth.mean == MeanIs::too_low);
  CHECK_NEAR(truth.off_cm3(), -0.28, 1e-9);
  CHECK_NEAR(truth.spread_cm3, 0.0, 1e-9);
  REQUIRE(truth.causes.size() == 1);
  CHECK(truth.causes[0].cause == Cause::parallax_final);
  CHECK_NEAR(truth.causes[0].mean_cm3, -0.28, 1e-9);
}

TEST_CASE("a mean at the limit is right, one just beyond it is not") {
  CHECK(truth_of(paper(0.1, 0.1, 21.33)).mean == MeanIs::right);
  CHECK(truth_of(paper(0.1, 0.1, 21.34)).mean == MeanIs::too_high);
  CHECK(truth_of(paper(-0.1, -0.1, 21.13)).mean == MeanIs::right);
  CHECK(truth_of(paper(-0.1, -0.1, 21.12)).mean == MeanIs::too_low);
}

TEST_CASE("an eye at one height lowers every titre twice, and both are told") {
  MarkedAttempt marked = paper(-0.11, -0.11, 20.95);
  for (TitreRow& row : marked.titres)
    row.breakdown->causes_cm3[static_cast<std::size_t>(Cause::parallax_initial)] = -0.17;
  const MeanTruth truth = truth_of(marked);
  REQUIRE(truth.causes.size() == 2);
  CHECK(truth.causes[0].cause == Cause::parallax_initial);
  CHECK(truth.causes[1].cause == Cause::parallax_final);
}

TEST_CASE("what was staked is won or lost") {
  const MeanTruth truth = truth_of(paper(-0.28, -0.28, 20.95));
  CHECK(bet_points({MeanIs::too_low, 3}, truth) == 3);
  CHECK(bet_points({MeanIs::right, 3}, truth) == -3);
  CHECK(bet_points({MeanIs::too_high, 1}, truth) == -1);
}

TEST_CASE("there is no bet on a mean that nobody wrote, or on titres of which none counts") {
  MarkedAttempt no_mean = paper(0.0, 0.0, 21.23);
  no_mean.mean_titre_cm3.reset();
  CHECK_FALSE(mean_truth(no_mean, 0.1));
  MarkedAttempt none_ticked = paper(0.0, 0.0, 21.23);
  for (TitreRow& row : none_ticked.titres) row.used = false;
  CHECK_FALSE(mean_truth(none_ticked, 0.1));
}

}  // namespace halfdrop

// An attempt as a whole: done rightly, not done at all, broken off, tampered with.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "game/marking/cause_titles.h"
#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::unmet;

TEST_CASE("an attempt done rightly meets every criterion and has full marks") {
  BenchHands hands;
  hands.whole_attempt();
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(marked.outcome.reproduced);
  CHECK(unmet(marked) == "");
  CHECK(marked.marks.safe);
  CHECK_NEAR(marked.marks.total, marked.marks.of, 0.0);
  CHECK(marked.marks.of > 0.0);
  for (const Finding& finding : marked.findings) {
    CAPTURE(finding.criterion);
    CHECK(!finding.seen.empty());
    CHECK(finding.advice.empty());
    CHECK(finding.tick <= hands.bench().tick);
  }
}

TEST_CASE(
    "the true result is the ideal titre put through the level's calculation: the unknown's own strength") {
  BenchHands hands;
  hands.whole_attempt();
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK_NEAR(marked.true_value, hands.spec().sample.true_mol_dm3 * hands.session().level().dilution, 1e-12);
  CHECK_NEAR(marked.ideal_titre_cm3, hands.spec().sample.true_mol_dm3 * 25.0 / 0.1, 1e-12);
  CHECK(marked.unit == "mol dm⁻³");
  REQUIRE(marked.reported);
  CHECK_NEAR(*marked.reported, marked.true_value, 0.01 * marked.true_value);
}

TEST_CASE("recorded minus ideal is the sum of the causes in every run of a marked attempt") {
  BenchHands hands;
  hands.whole_attempt();
  const MarkedAttempt marked = mark(hands.hand_in());
  REQUIRE(marked.titres.size() == 3);
  for (const TitreRow& row : marked.titres) {
    REQUIRE(row.breakdown);
    double sum_cm3 = 0.0;
    for (const double cause_cm3 : row.breakdown->causes_cm3) sum_cm3 += cause_cm3;
    CHECK_NEAR(*row.recorded_cm3 - marked.ideal_titre_cm3, sum_cm3, 1e-9);
  }
}

TEST_CASE(
    "an attempt in which nothing was done is marked without a figure and without a point for the hand") {
  Attempt attempt{test::spirit_vinegar(), 3, "", {}};
  const MarkedAttempt marked = mark(attempt);
  CHECK(marked.titres.empty());
  CHECK(!marked.mean_titre_cm3);
  CHECK(!marked.reported);
  CHECK_NEAR(marked.marks.total, 0.0, 0.0);
  CHECK(!test::finding(marked, "handed-in").met);
  CHECK(test::unmet(marked) ==
        "hand-not-judged, eye-not-judged, record-not-judged, handed-in, closing-line, arithmetic-not-judged");
  for (const Finding& finding : marked.findings) {
    CAPTURE(finding.criterion);
    if (finding.score != Score::safety) CHECK(!finding.met);
    CHECK(std::isfinite(finding.points));
  }
}

TEST_CASE("a final reading put right after the flask was emptied changes the figure and not what happened") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(-0.3);
  hands.fill_jet();
  hands.run("trial");  // rinses the flask at its end
  const double read_cm3 = *test::titre(mark(hands.session().attempt()), "trial").final_cm3;
  const TitreBreakdown before = *test::titre(mark(hands.session().attempt()), "trial").breakdown;
  char text[16];
  std::snprintf(text, sizeof text, "%.2f", read_cm3 + 0.15);
  hands.write("trial/final", text);
  const TitreBreakdown after = *test::titre(mark(hands.session().attempt()), "trial").breakdown;
  CHECK_NEAR(after.recorded_cm3 - before.recorded_cm3, 0.15, 1e-9);
  CHECK_NEAR(after.remainder_cm3, 0.0, 1e-9);
  for (const Cause cause : {Cause::aliquot, Cause::flask_residue, Cause::overshoot, Cause::parallax_final}) {
    CAPTURE(std::string(cause_id(cause)));
    CHECK_NEAR(after.of(cause), before.of(cause), 1e-9);
  }
}

TEST_CASE("an attempt broken off after one initial reading is marked as it stands") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.read("1/initial");
  const MarkedAttempt marked = mark(hands.session().attempt());
  CHECK(marked.outcome.reproduced);
  REQUIRE(marked.titres.size() == 1);
  CHECK(marked.titres[0].initial_cm3);
  CHECK(!marked.titres[0].final_cm3);
  CHECK(!marked.titres[0].recorded_cm3);
  CHECK(!marked.titres[0].breakdown);
  CHECK(test::finding(marked, "jet-filled").met);
  CHECK(test::find(marked, "swirled") == nullptr);
  CHECK(test::finding(marked, "hand-not-judged")
            .seen.starts_with("No accurate run has both readings: the other 11 "));
  CHECK(!test::finding(marked, "table-complete").met);
}

TEST_CASE("an attempt whose last line was forged is marked, but not called reproduced") {
  BenchHands hands;
  hands.whole_attempt();
  Attempt attempt = hands.hand_in();
  std::get<Ending>(attempt.changes.back().what).state_hash = "0000000000000000";
  const MarkedAttempt marked = mark(attempt);
  CHECK(!marked.outcome.reproduced);
  CHECK(marked.titres.size() == 3);
}

TEST_CASE("a deed that the bench refuses does not count as done") {
  BenchHands hands;
  hands.whole_attempt();
  Attempt attempt = hands.hand_in();
  const auto delivered =
      std::find_if(attempt.changes.begin(), attempt.changes.end(), [](const Change& change) {
        const auto* deed = std::get_if<Deed>(&change.what);
        return deed && *deed == Deed::deliver_aliquot;
      });
  REQUIRE(delivered != attempt.changes.end());
  attempt.changes.insert(delivered, *delivered);  // the second time the pipette is empty
  const MarkedAttempt marked = mark(attempt);
  CHECK(!marked.outcome.reproduced);
  CHECK(test::finding(marked, "one-aliquot").met);
}

TEST_CASE("absurd figures on the sheet leave every mark a number") {
  BenchHands hands;
  hands.whole_attempt();
  const Attempt attempt = hands.hand_in();
  for (const char* text :
       {"1e308", "-1e308", "nan", "inf", "", "abc", "0", "1e-320", "99999999999999999999"}) {
    CAPTURE(text);
    Attempt changed = attempt;
    for (Change& change : changed.changes) {
      if (auto* writing = std::get_if<Writing>(&change.what); writing && writing->text != "yes")
        writing->text = text;
    }
    const MarkedAttempt marked = mark(changed);
    CHECK(std::isfinite(marked.marks.total));
    const Finding* decimals = test::find(marked, "two-decimals");
    CHECK((decimals == nullptr || !decimals->met));
    CHECK(!test::finding(marked, "table-complete").met == !marked.mean_titre_cm3);
  }
}

TEST_CASE("safety not met leaves a total of 0 while the four scores still stand") {
  BenchHands hands;
  hands.whole_attempt();
  Attempt attempt = hands.hand_in();
  std::erase_if(attempt.changes, [](const Change& change) {
    const auto* deed = std::get_if<Deed>(&change.what);
    return deed && *deed == Deed::put_on_goggles;
  });
  const MarkedAttempt marked = mark(attempt);
  CHECK(!marked.marks.safe);
  CHECK_NEAR(marked.marks.total, 0.0, 0.0);
  for (const Score score : {Score::hand, Score::eye, Score::record, Score::arithmetic}) {
    CHECK(test::points(marked, score) > 0.0);
  }
}

TEST_CASE("every cause has a title of its own") {
  for (std::size_t i = 0; i < kCauses; ++i) {
    for (std::size_t j = 0; j < i; ++j)
      CHECK(cause_title(static_cast<Cause>(i)) != cause_title(static_cast<Cause>(j)));
    CHECK(!cause_title(static_cast<Cause>(i)).empty());
  }
}

}  // namespace
}  // namespace halfdrop

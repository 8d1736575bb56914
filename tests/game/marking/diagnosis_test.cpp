// What went wrong, said before it is seen: points beside the marks.

#include "game/marking/diagnosis.h"

#include "tests/support/bench_hands.h"
#include "tests/support/made_titres.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

using test::made_attempt;
using test::made_run;

MarkedAttempt one_run(const test::Parts& causes) { return made_attempt({made_run("1", 21.23, causes)}); }

/// "2+1"
std::string earned(const Diagnosis& said, const MarkedAttempt& marked) {
  const auto points = diagnosis_points(said, marked);
  return points ? std::to_string(points->cause) + "+" + std::to_string(points->way) : "not judged";
}

}  // namespace

TEST_CASE("the largest cause is that of the accurate runs; the trial's overshoot is no matter") {
  const auto largest = largest_cause(
      made_attempt({made_run("trial", 21.23, {{Cause::overshoot, 0.40}}),
                    made_run("1", 21.23, {{Cause::jet_air, 0.12}, {Cause::overshoot, 0.02}}),
                    made_run("2", 21.23, {{Cause::jet_air, 0.08}, {Cause::overshoot, -0.03}})}));
  REQUIRE(largest.has_value());
  CHECK(largest->cause == Cause::jet_air);
  CHECK_NEAR(largest->mean_cm3, 0.10, 1e-12);
}

TEST_CASE("a run that was left unticked is no matter either") {
  const auto largest = largest_cause(made_attempt({made_run("1", 21.23, {{Cause::overshoot, 0.30}}),
                                                   made_run("2", 21.23, {{Cause::jet_air, 0.06}}, true),
                                                   made_run("3", 21.23, {{Cause::jet_air, 0.06}}, true)}));
  REQUIRE(largest.has_value());
  CHECK(largest->cause == Cause::jet_air);
}

TEST_CASE("below a drop nothing went wrong, and without accurate runs nothing can be said to have") {
  CHECK_FALSE(largest_cause(one_run({{Cause::jet_air, 0.049}})).has_value());
  CHECK(largest_cause(one_run({{Cause::parallax_final, -0.051}})).has_value());
  CHECK_FALSE(largest_cause(made_attempt({made_run("trial", 21.23, {{Cause::jet_air, 0.3}})})).has_value());
}

TEST_CASE("two points for the cause and one for the way") {
  const MarkedAttempt air = one_run({{Cause::jet_air, 0.20}, {Cause::parallax_final, -0.08}});
  CHECK(earned({Cause::jet_air, true}, air) == "2+1");
  CHECK(earned({Cause::jet_air, false}, air) == "2+0");
  CHECK(earned({Cause::parallax_final, false}, air) == "1+1");  // there, though not the largest
  CHECK(earned({Cause::parallax_final, true}, air) == "1+0");
  CHECK(earned({Cause::overshoot, true}, air) ==
        "0+1");  // worth nothing; the titre was too high for all that
  CHECK(earned({Cause::overshoot, false}, air) == "0+0");
  CHECK(earned({}, air) == "0+0");
}

TEST_CASE("of two causes that are as good as alike either is the answer") {
  const MarkedAttempt both = one_run({{Cause::jet_air, 0.20}, {Cause::overshoot, 0.17}});
  CHECK(earned({Cause::jet_air, true}, both) == "2+1");
  CHECK(earned({Cause::overshoot, true}, both) == "2+1");
  CHECK(earned({Cause::overshoot, true}, one_run({{Cause::jet_air, 0.20}, {Cause::overshoot, 0.15}})) ==
        "1+1");
}

TEST_CASE("to say that nothing went wrong is right where nothing did, and a cause is wrong there") {
  const MarkedAttempt good = one_run({{Cause::overshoot, 0.02}});
  CHECK(earned({}, good) == "2+1");
  CHECK(earned({Cause::overshoot, true}, good) == "0+0");
  CHECK(earned({}, made_attempt({})) == "not judged");
}

TEST_CASE("the verdict tells cause and way apart") {
  const MarkedAttempt air = one_run({{Cause::jet_air, 0.10}, {Cause::parallax_final, -0.06}});
  CHECK(verdict({Cause::jet_air, true}, air).ends_with("You saw the cause and its way."));
  CHECK(verdict({Cause::jet_air, false}, air).ends_with("it pushed the other way."));
  CHECK(verdict({Cause::overshoot, true}, air).ends_with("Another cause, but the way is right."));
  CHECK(verdict({Cause::overshoot, false}, air).ends_with("Another cause, and the other way."));
  CHECK(verdict({Cause::parallax_final, false}, air).ends_with("−0.06 cm³, the way you said."));
  CHECK(verdict({}, one_run({})).ends_with("you were right."));
  CHECK(verdict({Cause::jet_air, true}, one_run({})).ends_with("no slip shows in them."));
  CHECK(verdict({}, one_run({{Cause::parallax_final, -0.08}})).find("down by 0.08") != std::string::npos);
  CHECK(verdict({}, MarkedAttempt{}) ==
        "You said: nothing went wrong. There is no accurate titre to judge that by.");
}

TEST_CASE("the answer is no part of the marks: nothing that marks an attempt takes one") {
  test::BenchHands hands;
  hands.whole_attempt();
  const MarkedAttempt marked = mark(hands.hand_in());
  double of = 0.0;
  for (const Marks::Part& part : marked.marks.parts) of += part.of;
  CHECK_NEAR(marked.marks.of, of, 0.0);
  const Marks before = marked.marks;
  (void)diagnosis_points({Cause::jet_air, true}, marked);
  CHECK_NEAR(marked.marks.total, before.total, 0.0);
}

}  // namespace halfdrop

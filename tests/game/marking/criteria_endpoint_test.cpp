#include <doctest/doctest.h>

#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::find;
using test::finding;
using test::held;
using test::RunPlan;

/// A trial done well and one accurate run; `before_final` is done when it has been titrated.
template <class Deeds>
MarkedAttempt one_run(const RunPlan& plan, Deeds before_final, const Level& level = test::spirit_vinegar()) {
  BenchHands hands(level);
  hands.protect();
  hands.run("trial");
  hands.fill_burette(0.5);
  hands.prepare_flask(plan.indicator_drops);
  hands.read("1/initial");
  hands.hold(held(&HandsChange::flask_x_cm, 0.0));
  hands.titrate(plan);
  before_final(hands);
  hands.read("1/final");
  return mark(hands.hand_in());
}

void let_a_drop_fall(BenchHands& hands) {
  hands.titrate(RunPlan{.past_cm3 = hands.past_equivalence_cm3() + 0.04, .drop_by_drop_cm3 = 1.0});
}

}  // namespace

TEST_CASE("a final reading ten seconds after the last titrant is taken after a wait, one after five is not") {
  CHECK(find(one_run(RunPlan{.waits_s = 10.5}, [](BenchHands&) {}), "waited") == nullptr);
  const MarkedAttempt marked = one_run(RunPlan{.waits_s = 4.0}, [](BenchHands&) {});
  CHECK(!finding(marked, "waited").met);
  CHECK(finding(marked, "waited").seen.find(" s after the last titrant came in") != std::string::npos);
  CHECK(finding(marked, "waited").advice.find("half a minute") != std::string::npos);
}

TEST_CASE(
    "a drop more when the colour has stood for half a minute chases what fades; before the colour, or at "
    "once, it does not") {
  const auto wait_and_a_drop = [](BenchHands& hands) {
    hands.wait(40.0);
    let_a_drop_fall(hands);
  };
  const MarkedAttempt chased = one_run(RunPlan{.past_cm3 = 0.05}, wait_and_a_drop);
  CHECK(!finding(chased, "fade-let-be").met);
  CHECK_NEAR(*finding(chased, "fade-let-be").cost_cm3, 0.05, 0.03);
  CHECK(find(one_run(RunPlan{.past_cm3 = -0.1}, wait_and_a_drop), "fade-let-be") == nullptr);
  CHECK(find(one_run(RunPlan{.past_cm3 = 0.05}, let_a_drop_fall), "fade-let-be") == nullptr);
}

TEST_CASE("a tap that leaks is named with what it let out; a tight one is not") {
  Level leaking = test::spirit_vinegar();
  leaking.tap.leak_cm3_min = 0.08;
  const auto nothing = [](BenchHands&) {};
  const MarkedAttempt marked = one_run(RunPlan{}, nothing, leaking);
  CHECK(!finding(marked, "tap-tight").met);
  REQUIRE(test::titre(marked, "1").breakdown.has_value());
  CHECK(*finding(marked, "tap-tight").cost_cm3 >= test::titre(marked, "1").breakdown->of(Cause::leak));
  CHECK(find(one_run(RunPlan{}, nothing), "tap-tight") == nullptr);
}

TEST_CASE("counted runs that end three drops apart end at another shade; a drop apart is work as it is") {
  const auto second_run_past = [](double past_cm3) {
    BenchHands hands(test::spirit_vinegar());
    hands.protect();
    hands.run("trial");
    hands.run("1");
    hands.run("2", RunPlan{.past_cm3 = past_cm3});
    hands.tick_and_calculate({"1", "2"});
    return mark(hands.hand_in());
  };
  const MarkedAttempt apart = second_run_past(0.17);
  CHECK(!finding(apart, "same-shade").met);
  CHECK(finding(apart, "same-shade").seen.starts_with("Run 2 went 0.1"));
  CHECK(find(second_run_past(0.0), "same-shade") == nullptr);
}

}  // namespace halfdrop

// The rule of filling height: seen both ways, told as advice, worth no points and no gate.

#include <doctest/doctest.h>

#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"

namespace halfdrop {
namespace {

Level ruled() {
  Level level = test::spirit_vinegar();
  level.filling_below_eye = true;
  return level;
}

/// Filled with the clamps at a height, over the edge where that is below the bench's reach; handed in at
/// once.
MarkedAttempt filled_at(const Level& level, double clamp_mm) {
  test::BenchHands hands(level);
  hands.protect();
  HandsChange shut, clamp;
  shut.tap = 0.0;
  hands.hold(shut);
  hands.act(Deed::swing_over_edge);
  clamp.clamp_mm = clamp_mm;
  hands.hold(clamp);
  hands.fill_burette(1.0);
  hands.session().end("handed in");
  return mark(hands.session().attempt());
}

// By hand: 856 mm from bench to rim as it stands (clamp_test), a standing eye 600 mm above the bench.
TEST_CASE("a burette filled with its top below eye level is told so, with both heights") {
  const MarkedAttempt marked = filled_at(ruled(), -270.0);
  const Finding& finding = test::finding(marked, "filled-below-eye");
  CHECK(finding.met);
  CHECK(finding.of == 0.0);
  CHECK(finding.seen ==
        "The burette was filled with its top below eye level: its top 586 mm above the bench at most (a "
        "standing "
        "eye is taken to be 600 mm above it).");
  CHECK(finding.advice.empty());
}

TEST_CASE("filled with its top above eye level it is told with advice, and costs nothing") {
  const MarkedAttempt low = filled_at(ruled(), -270.0), high = filled_at(ruled(), -100.0);
  const Finding& finding = test::finding(high, "filled-below-eye");
  CHECK_FALSE(finding.met);
  CHECK(finding.tick > 0);
  CHECK(finding.seen.find("its top 756 mm above the bench") != std::string::npos);
  CHECK_FALSE(finding.advice.empty());
  CHECK(high.marks.safe);
  CHECK(high.marks.total == low.marks.total);
  CHECK(high.marks.of == low.marks.of);
}

TEST_CASE("a level without the rule says nothing of it, and an unfilled burette is not judged") {
  CHECK(test::find(filled_at(test::spirit_vinegar(), -100.0), "filled-below-eye") == nullptr);
  test::BenchHands hands(ruled());
  hands.session().end("handed in");
  const MarkedAttempt unfilled = mark(hands.session().attempt());
  CHECK(test::find(unfilled, "filled-below-eye") == nullptr);  // among what could not be judged
  CHECK_FALSE(test::finding(unfilled, "hand-not-judged").judged);
}

}  // namespace
}  // namespace halfdrop

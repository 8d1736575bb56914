// What is seen of a standard that the player makes up.

#include <doctest/doctest.h>

#include "physics/bench/preparation.h"
#include "physics/burette/rinsing.h"
#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::finding;
using test::held;

/// Level three, with a coarser flask and dry glass: only the standard is looked at here.
Level acid() {
  Result<Level> level = read_level(test::source_file("levels/03-standard-acid.json"));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  level->flask.fineness = 0.25;
  level->pipette.by_hand = false;
  return *level;
}

BenchHands begun() {
  BenchHands hands(acid());
  hands.protect();
  return hands;
}

void tip_out(BenchHands& hands) {
  hands.hold(held(&HandsChange::tip, 1.0));
  while (tipped_out_g(hands.spec(), hands.bench()) < 1.25) hands.wait(0.1);
  hands.hold(held(&HandsChange::tip, 0.0));
}

void let_run(BenchHands& hands, double for_s) {
  hands.hold(held(&HandsChange::tap, 1.0));
  hands.wait(for_s);
  hands.hold(held(&HandsChange::tap, 0.0));
}

/// With titrant, turned about and let out.
void rinse_burette(BenchHands& hands) {
  hands.fill_burette(45.0);
  hands.hold(held(&HandsChange::tilt_degrees, kFlat_degrees));
  hands.wait(6.0);
  hands.hold(held(&HandsChange::tilt_degrees, 0.0));
  hands.act(Deed::put_beaker_under);
  let_run(hands, 40.0);
  hands.act(Deed::take_beaker_away);
}

void rinse_in(BenchHands& hands, int times) {
  for (int i = 0; i < times; ++i) hands.act(Deed::rinse_into_volumetric);
}

void dissolve_and_pour(BenchHands& hands) {
  hands.act(Deed::dissolve_standard);
  hands.act(Deed::pour_into_volumetric);
}

}  // namespace

TEST_CASE("two rinses after the solution are enough; two before there was any count for nothing") {
  BenchHands after = begun(), before = begun();
  tip_out(after);
  dissolve_and_pour(after);
  rinse_in(after, 2);
  CHECK(finding(mark(after.hand_in()), "washings-in").met);
  rinse_in(before, 2);
  tip_out(before);
  dissolve_and_pour(before);
  const Finding& seen = finding(mark(before.hand_in()), "washings-in");
  CHECK(seen.judged);
  CHECK_FALSE(seen.met);
}

TEST_CASE("a flask of water alone is no standard, and earns nothing for one") {
  BenchHands hands = begun();
  rinse_in(hands, 3);
  for (int i = 0; i < 10; ++i) hands.act(Deed::invert_volumetric);
  const MarkedAttempt marked = mark(hands.hand_in());
  for (const char* criterion : {"washings-in", "made-to-mark", "turned-over", "standard-weighed"})
    CHECK_MESSAGE(test::find(marked, criterion) == nullptr, criterion);
}

TEST_CASE("a burette that was read before the standard was made up is not called weaker for it") {
  BenchHands hands = begun();
  hands.hold(held(&HandsChange::fill, 1.0));
  hands.wait(2.0);
  hands.hold(held(&HandsChange::fill, 0.0));
  for (int i = 0; i < 2; ++i) rinse_burette(hands);
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.read("1/initial");
  hands.act(Deed::put_beaker_under);
  let_run(hands, 3.0);
  hands.read("1/final");
  CHECK(finding(mark(hands.hand_in()), "burette-rinsed").met);
}

TEST_CASE("solid tipped out with bare eyes counts for safety, as liquid does") {
  BenchHands bare(acid()), covered = begun();
  bare.act(Deed::put_on_coat);
  tip_out(bare);
  bare.act(Deed::put_on_goggles);
  tip_out(covered);
  CHECK_FALSE(mark(bare.hand_in()).marks.safe);
  CHECK(mark(covered.hand_in()).marks.safe);
}

}  // namespace halfdrop

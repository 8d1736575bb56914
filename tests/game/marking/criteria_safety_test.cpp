#include <doctest/doctest.h>

#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;

/// Pours past the tube, without a funnel.
void spill(BenchHands& hands, double seconds) {
  HandsChange change;
  change.tap = 0.0;
  change.pour = 1.0;
  hands.hold(change);
  hands.wait(seconds);
  change.pour = 0.0;
  hands.hold(change);
}

TEST_CASE("goggles put on before the first liquid and taken off after the last are enough") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(20.0);
  hands.act(Deed::take_off_goggles);
  hands.wait(1.0);
  CHECK(test::finding(mark(hands.hand_in()), "eye-protection").met);
}

TEST_CASE("goggles taken off and put on again between two liquids were off while the work went on") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(20.0);
  hands.act(Deed::take_off_goggles);
  const Tick off = hands.bench().tick;
  hands.wait(2.0);
  hands.act(Deed::put_on_goggles);
  hands.prepare_flask(2);
  const MarkedAttempt marked = mark(hands.hand_in());
  const Finding& finding = test::finding(marked, "eye-protection");
  CHECK(!finding.met);
  CHECK(finding.tick == off);
  CHECK(!finding.advice.empty());
}

TEST_CASE("the pipette is liquid too: goggles put on only before the burette is filled are late") {
  BenchHands hands;
  hands.act(Deed::put_on_coat);
  hands.prepare_flask(2);
  hands.act(Deed::put_on_goggles);
  hands.fill_burette(20.0);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!test::finding(marked, "eye-protection").met);
  CHECK(test::finding(marked, "coat").met);
}

TEST_CASE("goggles taken off in the same instant as the last deed were on while it was done") {
  BenchHands hands;
  hands.protect();
  hands.prepare_flask(2);
  hands.act(Deed::rinse_flask);
  hands.act(Deed::take_off_goggles);
  hands.wait(1.0);
  CHECK(test::finding(mark(hands.hand_in()), "eye-protection").met);
}

TEST_CASE("what leaks out of the wet burette before anything is touched is nobody's doing") {
  Level level = test::spirit_vinegar();
  level.tap.leak_cm3_min = 0.2;
  BenchHands hands(level);
  hands.wait(60.0);
  REQUIRE(hands.bench().ledger.moved(Account::column, Account::plug_drop).volume > 0);
  hands.protect();
  hands.fill_burette(20.0);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(test::finding(marked, "eye-protection").met);
  CHECK(test::finding(marked, "coat").met);
}

TEST_CASE("the coat has to be on before the first bottle is opened") {
  BenchHands hands;
  hands.act(Deed::put_on_goggles);
  hands.fill_burette(20.0);
  hands.act(Deed::put_on_coat);
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!test::finding(marked, "coat").met);
  CHECK(test::finding(marked, "eye-protection").met);
}

TEST_CASE("a spill left on the bench closes the gate; wiped up it does not") {
  for (const bool wiped : {false, true}) {
    BenchHands hands;
    hands.protect();
    spill(hands, 1.0);
    if (wiped) hands.act(Deed::wipe_bench);
    const MarkedAttempt marked = mark(hands.hand_in());
    CHECK(test::finding(marked, "spills-wiped").met == wiped);
    CHECK(marked.marks.safe == wiped);
  }
}

TEST_CASE("up to two drops on the bench are passed over") {
  BenchHands hands;
  hands.protect();
  spill(hands, 0.02);
  const double spilt_cm3 = hands.bench().ledger.balance(Account::bench_top).volume_cm3();
  REQUIRE(spilt_cm3 > 0.0);
  REQUIRE(spilt_cm3 < 0.1);
  CHECK(test::finding(mark(hands.hand_in()), "spills-wiped").met);
}

}  // namespace
}  // namespace halfdrop

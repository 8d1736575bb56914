// The clamps as an attempt has them: the eye stays in the room, what runs into something is refused in words.

#include <doctest/doctest.h>

#include "game/session/replay.h"
#include "game/session/view.h"
#include "tests/support/bench_hands.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

HandsChange clamp_at(double mm) {
  HandsChange change;
  change.clamp_mm = mm;
  return change;
}

HandsChange eye_at(double mm) {
  HandsChange change;
  change.eye_mm = mm;
  return change;
}

std::string refusal(Session& session, const HandsChange& change) {
  return session.set_hands(change).value_or("");
}

TEST_CASE("lowering the burette by 20 mm raises the eye over its scale by 20 mm") {
  test::BenchHands hands;
  hands.fill_burette(0.0);
  hands.hold(eye_at(-10.0));
  const View before = view(hands.session());
  hands.hold(clamp_at(-20.0));
  const View after = view(hands.session());
  CHECK_NEAR(after.eye_above_level_mm - before.eye_above_level_mm, 20.0, 1e-9);
  CHECK_NEAR(after.hands.eye_mm, -10.0, 1e-12);
  // The same sight as from an eye that was raised by as much.
  hands.hold(clamp_at(0.0));
  hands.hold(eye_at(10.0));
  CHECK(view(hands.session()).apparent_cm3 == after.apparent_cm3);
}

TEST_CASE("a lowered burette is stopped by the bench, and told in words; over the edge it goes down") {
  test::BenchHands hands;
  Session& session = hands.session();
  CHECK(refusal(session, clamp_at(-200.0)) ==
        "No lower: the jet would knock on the bench. Over the bench's edge there is room.");
  CHECK(session.hands().clamp_mm == 0.0);
  HandsChange shut;
  shut.tap = 0.0;
  hands.hold(shut);
  hands.act(Deed::swing_over_edge);
  CHECK(refusal(session, clamp_at(-290.0)).empty());
  CHECK(view(session).over_edge);
  CHECK(refusal(session, clamp_at(-301.0)) == "clamp is out of range: expected -300 to 30");
  CHECK(session.act(Deed::swing_back) ==
        "The jet hangs too low for that: raise the burette in its clamps first.");
}

TEST_CASE("an attempt with clamps and a swing replays to the same state") {
  test::BenchHands hands;
  HandsChange shut;
  shut.tap = 0.0;
  hands.hold(shut);
  hands.act(Deed::swing_over_edge);
  hands.hold(clamp_at(-290.0));
  hands.fill_burette(1.0);
  hands.hold(clamp_at(0.0));
  hands.act(Deed::swing_back);
  hands.wait(1.0);
  hands.session().end("handed in");
  const Replay again = replay(hands.session().attempt());
  CHECK(again.outcome.reproduced);
  CHECK(again.session.state() == hands.session().state());
}

}  // namespace
}  // namespace halfdrop

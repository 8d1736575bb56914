#include "game/scenes/grasps.h"

#include <doctest/doctest.h>

namespace halfdrop {

TEST_CASE("a key pressed and released between two pictures still acts for a twentieth of a second") {
  Grasps grasps;
  CHECK(grasps.take(Grasp::pour, 1.0, 1000).pour == 1.0);
  CHECK(grasps.release(Grasp::pour, 1000).empty());
  CHECK(grasps.due(1000 + kShortestHold - 1).empty());
  CHECK(grasps.due(1000 + kShortestHold).pour == 0.0);
  CHECK(grasps.due(1000 + kShortestHold + 1).empty());
}

TEST_CASE("what was held longer is let go at once") {
  Grasps grasps;
  (void)grasps.take(Grasp::swirl, 1.0, 0);
  CHECK(grasps.release(Grasp::swirl, kShortestHold).swirl == 0.0);
}

TEST_CASE("a keyboard that repeats itself does not make a hold begin again") {
  Grasps grasps;
  (void)grasps.take(Grasp::wash, 1.0, 0);
  (void)grasps.take(Grasp::wash, 1.0, 500);
  CHECK(grasps.release(Grasp::wash, 501).wash == 0.0);
}

TEST_CASE("one hand lets go while the other goes on swirling") {
  Grasps grasps;
  (void)grasps.take(Grasp::swirl, 1.0, 0);
  (void)grasps.take(Grasp::wash, 1.0, 10);
  const HandsChange change = grasps.release(Grasp::wash, 100);
  CHECK(change.wash == 0.0);
  CHECK_FALSE(change.swirl.has_value());
}

TEST_CASE("letting go of everything forgets a late release") {
  Grasps grasps;
  (void)grasps.take(Grasp::pour, 1.0, 0);
  (void)grasps.release(Grasp::pour, 0);
  Hands hands;
  hands.swirl = hands.wash = hands.pour = 1.0;
  const HandsChange change = grasps.release_all(hands);
  CHECK(change.swirl == 0.0);
  CHECK(change.wash == 0.0);
  CHECK(change.pour == 0.0);
  CHECK(grasps.due(1000).empty());
}

TEST_CASE("hands that hold nothing let go of nothing, so that no drill can refuse it") {
  Grasps grasps;
  CHECK(grasps.release_all(Hands{}).empty());
  Hands pouring;
  pouring.pour = 0.4;
  const HandsChange change = grasps.release_all(pouring);
  CHECK(change.pour == 0.0);
  CHECK_FALSE(change.swirl.has_value());
}

TEST_CASE("letting go of what was not held does nothing") {
  Grasps grasps;
  CHECK(grasps.release(Grasp::pour, 5).empty());
}

}  // namespace halfdrop

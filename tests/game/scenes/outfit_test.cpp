#include "game/scenes/outfit.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "game/scenes/things.h"
#include "game/session/action.h"
#include "tests/support/drill_level.h"

using namespace halfdrop;

namespace {

std::vector<Thing> things_of(const Level& level) {
  const Session session(level, 3, "tester");
  const View seen = view(session);
  const Outfit outfit = outfit_of(level);
  const TintTable tints(session.spec().indicator, 1e-3, Backdrop::white_tile);
  return things({seen, session.spec(), outfit, tints, 0.0, "", "", "", 1e9});
}

/// A hand that a grip moves.
HandsChange moved_by(Grip grip) {
  HandsChange change;
  if (grip == Grip::tap) change.tap = 0.5;
  if (grip == Grip::flask) change.flask_x_cm = 0.0;
  if (grip == Grip::far_eye || grip == Grip::eye_rail) change.eye_mm = 0.0;
  if (grip == Grip::card) change.card_mm = 0.0;
  if (grip == Grip::pour) change.pour = 1.0;
  if (grip == Grip::wash) change.wash = 1.0;
  return change;
}

}  // namespace

TEST_CASE("nothing lies on a bench that its level has no place for") {
  for (const DrillKind kind : {DrillKind::read_meniscus, DrillKind::deliver_exactly,
                               DrillKind::fill_without_air, DrillKind::know_apparatus}) {
    const Level level = test::drill_level(kind);
    for (const Thing& thing : things_of(level)) {
      CAPTURE(thing.name);
      if (thing.deed) CHECK_FALSE(not_in_level(level, *thing.deed).has_value());
      if (thing.other_deed) CHECK_FALSE(not_in_level(level, *thing.other_deed).has_value());
      CHECK_FALSE(not_in_level(level, moved_by(thing.grip)).has_value());
    }
  }
}

TEST_CASE("every deed and hand that a drill has, drill's own apart, can be had by mouse") {
  for (const DrillKind kind :
       {DrillKind::read_meniscus, DrillKind::deliver_exactly, DrillKind::fill_without_air}) {
    const Level level = test::drill_level(kind);
    const auto all = things_of(level);
    const auto offers = [&](const std::string& name) {
      return std::any_of(all.begin(), all.end(), [&](const Thing& thing) { return thing.name == name; });
    };
    CHECK(offers("eye-rail"));
    CHECK(offers("card"));
    CHECK(offers("tap") == (kind != DrillKind::read_meniscus));
    CHECK(offers("beaker") == (kind != DrillKind::read_meniscus));
    CHECK(offers("coat") == (kind != DrillKind::read_meniscus));
    CHECK(offers("titrant") == (kind == DrillKind::fill_without_air));
    CHECK(offers("funnel") == (kind == DrillKind::fill_without_air));
    CHECK_FALSE(offers("flask"));
  }
}

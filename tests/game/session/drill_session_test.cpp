#include <doctest/doctest.h>

#include "game/session/replay.h"
#include "tests/support/drill_level.h"

namespace halfdrop {

using namespace test;

namespace {

HandsChange hand(std::optional<double> HandsChange::*member, double value) {
  HandsChange change;
  change.*member = value;
  return change;
}

void tick(Session& session, int ticks) {
  for (int i = 0; i < ticks; ++i) session.tick();
}

}  // namespace

TEST_CASE("deeds of a titration are refused by name in a drill, and leave no line") {
  Session session(drill_level(DrillKind::read_meniscus), 3, "Wren");
  const auto refused = session.act(Deed::fill_pipette);
  REQUIRE(refused.has_value());
  CHECK(*refused == "\"fill pipette\" has no place in the drill \"read the meniscus\".");
  CHECK(session.act(Deed::close_volume).has_value());
  CHECK(session.act(Deed::put_in_funnel).has_value());
  CHECK(session.attempt().changes.empty());
}

TEST_CASE("hands that a drill has no use for are refused by name") {
  Session reading(drill_level(DrillKind::read_meniscus), 3, "");
  CHECK(*reading.set_hands(hand(&HandsChange::tap, 1.0)) ==
        "\"tap\" has no place in the drill \"read the meniscus\".");
  CHECK(!reading.set_hands(hand(&HandsChange::eye_mm, -100.0)));
  CHECK(!reading.set_hands(hand(&HandsChange::card_mm, -102.0)));
  Session delivering(drill_level(DrillKind::deliver_exactly), 3, "");
  CHECK(delivering.set_hands(hand(&HandsChange::pour, 1.0)).has_value());
  CHECK(delivering.set_hands(hand(&HandsChange::swirl, 1.0)).has_value());
  CHECK(!delivering.set_hands(hand(&HandsChange::tap, 0.2)));
  Session filling(drill_level(DrillKind::fill_without_air), 3, "");
  CHECK(!filling.set_hands(hand(&HandsChange::pour, 1.0)));
  CHECK(filling.set_hands(hand(&HandsChange::flask_x_cm, 0.0)).has_value());
}

TEST_CASE("a drill's own deeds are refused by name in a titration") {
  Session session(good_level(), 3, "");
  CHECK(*session.act(Deed::next_picture) == "\"next picture\" belongs to a drill; this is a titration.");
  CHECK(session.act(Deed::close_volume).has_value());
}

TEST_CASE(
    "a drill in reading has a cell for each picture, a drill in filling one, a drill in delivering none") {
  const auto reading = sheet_cells(drill_level(DrillKind::read_meniscus));
  CHECK(reading.size() == 30);
  CHECK(reading.front() == "reading/1");
  CHECK(reading.back() == "reading/30");
  CHECK(sheet_cells(drill_level(DrillKind::fill_without_air)) == std::vector<std::string>{"reading/1"});
  CHECK(sheet_cells(drill_level(DrillKind::deliver_exactly)).empty());
  CHECK(check_writing(drill_level(DrillKind::read_meniscus), {"reading/31", "1.00"}).has_value());
}

TEST_CASE("a drill replays to the same bench, and an altered one is noticed") {
  Session session(drill_level(DrillKind::read_meniscus), 8, "Wren");
  for (int i = 1; i <= 5; ++i) {
    tick(session, 100);
    CHECK(!session.set_hands(hand(&HandsChange::eye_mm, -20.0 * i)));
    CHECK(!session.write({reading_cell(i), "12.35"}));
    CHECK(!session.act(Deed::next_picture));
  }
  session.end("handed in");
  const Replay again = replay(session.attempt());
  CHECK(again.outcome.reproduced);
  CHECK(again.outcome.compared);
  CHECK(again.session.state() == session.state());
  Attempt altered = session.attempt();
  altered.seed = 9;  // other pictures
  CHECK(!replay(altered).outcome.reproduced);
}

TEST_CASE(
    "an attempt that slips a deed of a titration into a drill is not reproduced, and the deed is named") {
  Session session(drill_level(DrillKind::deliver_exactly), 8, "");
  tick(session, 10);
  session.end("handed in");
  Attempt altered = session.attempt();
  altered.changes.insert(altered.changes.begin(), Change{5, Deed::add_indicator});
  const Replay again = replay(altered);
  CHECK(!again.outcome.reproduced);
  CHECK(again.outcome.first_difference == 5);
  CHECK(again.outcome.message.find("add indicator") != std::string::npos);
}

}  // namespace halfdrop

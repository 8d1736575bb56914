#include "game/session/session.h"

#include <doctest/doctest.h>

#include "game/session/replay.h"
#include "game/session/view.h"
#include "physics/bench/state_hash.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

Session fresh() { return Session(test::good_level(), 5, "Wren"); }

HandsChange tap(double position) {
  HandsChange change;
  change.tap = position;
  return change;
}

TEST_CASE("what is done is logged with its tick, what changes nothing is not") {
  Session session = fresh();
  REQUIRE(!session.set_hands(tap(0.0)));
  REQUIRE(!session.set_hands(tap(0.0)));
  session.tick();
  REQUIRE(!session.act(Deed::put_on_coat));
  REQUIRE(!session.write({"trial/initial", "0.15"}));
  REQUIRE(session.attempt().changes.size() == 3);
  CHECK(session.attempt().changes[0] == Change{0, tap(0.0)});
  CHECK(session.attempt().changes[1] == Change{1, Deed::put_on_coat});
  CHECK(session.attempt().changes[2] == Change{1, Writing{"trial/initial", "0.15"}});
  CHECK(session.cell("trial/initial") == "0.15");
}

TEST_CASE("hands are kept to a ten-thousandth, and everybody sees the same hands at once") {
  Session session = fresh();
  REQUIRE(!session.set_hands(tap(0.123456)));
  CHECK(session.hands().tap == 0.1235);
  CHECK(session.state().hands == session.hands());
  CHECK(view(session).hands == session.hands());
  session.tick();
  CHECK(session.state().hands == session.hands());
}

TEST_CASE("what is refused leaves neither a line nor a trace on the bench") {
  Session session = fresh();
  const std::string before = state_hash(session.state());
  CHECK(session.act(Deed::deliver_aliquot).has_value());
  CHECK(session.set_hands(tap(2.0)).has_value());
  CHECK(session.write({"1/counts", "Yes"}).has_value());
  CHECK(session.write({"9/final", "1.00"}).has_value());
  CHECK(session.attempt().changes.empty());
  CHECK(state_hash(session.state()) == before);
}

TEST_CASE("the flask is not slid under the jet while the beaker stands there") {
  Session session = fresh();
  REQUIRE(!session.act(Deed::put_beaker_under));
  HandsChange change;
  change.flask_x_cm = 0.0;
  CHECK(session.set_hands(change).has_value());
  REQUIRE(!session.act(Deed::take_beaker_away));
  CHECK(!session.set_hands(change));
}

TEST_CASE("how a level is played is part of the attempt, and the bench never feels it") {
  std::string hash;
  for (const Way way : {Way::guided, Way::independent, Way::assessed}) {
    Session session(test::good_level(), 5, "Wren", way);
    CHECK(session.attempt().way == way);
    CHECK(way_from_name(way_name(way)) == way);
    REQUIRE(!session.act(Deed::put_on_coat));
    for (int i = 0; i < 240; ++i) session.tick();
    session.end("handed in");
    CHECK(replay(session.attempt()).session.way() == way);
    CHECK(replay(session.attempt()).outcome.reproduced);
    if (hash.empty()) hash = state_hash(session.state());
    CHECK(state_hash(session.state()) == hash);
  }
  CHECK_FALSE(way_from_name("Guided").has_value());
  CHECK(no_help_words(Way::guided).empty());
  CHECK_FALSE(no_help_words(Way::assessed).empty());
}

TEST_CASE("an attempt that is left stands where it was left, in a drill too") {
  const Result<Level> drill = read_level(test::source_file("levels/drills/02-deliver-exactly.json"));
  REQUIRE(drill.has_value());
  for (const Level& level : {test::good_level(), *drill}) {
    Session session(level, 5, "Wren", Way::assessed);
    for (int i = 0; i < 1000; ++i) session.tick();
    session.mark_time();
    const Replay again = replay(session.attempt());
    CHECK(again.outcome.reproduced);
    CHECK(again.session.state().tick == 1000);
    CHECK(state_hash(again.session.state()) == state_hash(session.state()));
  }
  const Result<Level> still = read_level(test::source_file("levels/drills/01-read-the-meniscus.json"));
  REQUIRE(still.has_value());
  Session session(*still, 5, "Wren");
  session.mark_time();
  CHECK(session.attempt().changes.empty());
}

TEST_CASE("after the end nothing can be done any more") {
  Session session = fresh();
  session.end("handed in");
  CHECK(session.act(Deed::put_on_coat).has_value());
  CHECK(session.set_hands(tap(0.0)).has_value());
  CHECK(session.write({"1/initial", "0.15"}).has_value());
  REQUIRE(session.attempt().changes.size() == 1);
  CHECK(std::get<Ending>(session.attempt().changes.back().what).state_hash == state_hash(session.state()));
}

}  // namespace
}  // namespace halfdrop

#include "game/session/session.h"

#include <doctest/doctest.h>

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

#include "game/session/apparatus.h"

#include <doctest/doctest.h>

#include <set>

#include "game/session/replay.h"
#include "tests/support/drill_level.h"

namespace halfdrop {
namespace {

Session begun(std::uint64_t seed) { return {test::drill_level(DrillKind::know_apparatus), seed, "Wren"}; }

void answer(Session& session, std::string_view text) {
  const int number = static_cast<int>(apparatus_round(session).now) + 1;
  REQUIRE_FALSE(session.write({piece_cell(number), std::string(text)}));
}

void hold(Session& session, std::optional<double> HandsChange::*hand, double value) {
  HandsChange change;
  change.*hand = value;
  REQUIRE_FALSE(session.set_hands(change));
}

/// Goes on, leaving out every use, until a piece is asked for.
void leave_out_until(Session& session, Piece piece) {
  while (apparatus_round(session).piece().piece != piece) {
    answer(session, piece_name(apparatus_round(session).piece().piece));
    if (!apparatus_round(session).to_pick()) answer(session, kDoNotKnow);
  }
}

TEST_CASE("every piece is asked for once, in another order for another seed") {
  std::set<std::vector<Piece>> orders;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const std::vector<Piece> asked = pieces_asked(seed);
    CHECK(std::set<Piece>(asked.begin(), asked.end()).size() == kPieces);
    CHECK(pieces_asked(seed) == asked);
    orders.insert(asked);
  }
  CHECK(orders.size() == 20);
}

TEST_CASE("each piece has a name of its own, and a purpose that does not give it away") {
  for (std::size_t i = 0; i < kPieces; ++i) {
    const auto piece = static_cast<Piece>(i);
    CHECK(piece_from_name(piece_name(piece)) == piece);
    CHECK(std::string(piece_purpose(piece)).find(piece_name(piece)) == std::string::npos);
  }
  CHECK_FALSE(piece_from_name("beaker"));
}

TEST_CASE("a wrong answer stays, and the same piece is asked for until it is found") {
  Session session = begun(3);
  const std::vector<Piece> asked = pieces_asked(3);
  answer(session, piece_name(asked[1]));
  answer(session, kDoNotKnow);
  answer(session, piece_name(asked[2]));
  ApparatusRound round = apparatus_round(session);
  CHECK(round.now == 0);
  CHECK(round.piece().wrong == std::vector<Piece>{asked[1], asked[2]});
  CHECK(round.piece().told);
  answer(session, piece_name(asked[0]));
  round = apparatus_round(session);
  CHECK(round.asked[0].picked);
  CHECK_FALSE(round.asked[0].first_try());
}

TEST_CASE("a tap is put to use by opening it in line and then shutting it across") {
  Session session = begun(3);
  leave_out_until(session, Piece::tap);
  hold(session, &HandsChange::tap, 0.0);
  answer(session, "tap");
  CHECK_FALSE(apparatus_round(session).to_pick());
  hold(session, &HandsChange::tap, 0.5);  // neither
  hold(session, &HandsChange::tap, 0.0);
  CHECK(apparatus_round(session).piece().piece == Piece::tap);
  hold(session, &HandsChange::tap, 1.0);
  CHECK(apparatus_round(session).piece().piece == Piece::tap);
  const std::size_t number = apparatus_round(session).now;
  hold(session, &HandsChange::tap, 0.0);
  CHECK(apparatus_round(session).asked[number].used);
}

TEST_CASE("a clamp is put to use over the edge with the top below eye level, and back") {
  Session session = begun(3);
  leave_out_until(session, Piece::clamp);
  answer(session, "clamp");
  const std::size_t number = apparatus_round(session).now;
  REQUIRE_FALSE(session.act(Deed::swing_over_edge));
  hold(session, &HandsChange::clamp_mm, -250.0);  // 856 - 250 = 606 mm: still above a standing eye
  hold(session, &HandsChange::clamp_mm, 0.0);
  REQUIRE_FALSE(session.act(Deed::swing_back));
  CHECK(apparatus_round(session).now == number);
  REQUIRE_FALSE(session.act(Deed::swing_over_edge));
  hold(session, &HandsChange::clamp_mm, -260.0);
  CHECK(apparatus_round(session).now == number);
  hold(session, &HandsChange::clamp_mm, 0.0);
  REQUIRE_FALSE(session.act(Deed::swing_back));
  CHECK(apparatus_round(session).asked[number].used);
}

TEST_CASE("a funnel goes in and out, and a beaker under the jet") {
  for (const Piece piece : {Piece::funnel, Piece::beaker}) {
    Session one = begun(5);
    leave_out_until(one, piece);
    answer(one, piece_name(piece));
    const std::size_t number = apparatus_round(one).now;
    if (piece == Piece::funnel) {
      REQUIRE_FALSE(one.act(Deed::put_in_funnel));
      CHECK(apparatus_round(one).now == number);
      REQUIRE_FALSE(one.act(Deed::lift_out_funnel));
    } else {
      REQUIRE_FALSE(one.act(Deed::put_beaker_under));
    }
    CHECK(apparatus_round(one).asked[number].used);
  }
}

TEST_CASE("an answer is a piece's name or a question mark, and no liquid is taken out of a bottle") {
  Session session = begun(3);
  CHECK(session.write({"piece/1", "thistle"}) == "no piece is called \"thistle\"");
  CHECK(session.write({"piece/12", "tap"}).has_value());
  CHECK(session.act(Deed::fill_pipette).has_value());
  CHECK(session.act(Deed::add_indicator).has_value());
  HandsChange pour;
  pour.pour = 1.0;
  CHECK(session.set_hands(pour).has_value());
}

TEST_CASE("the wrong answers are in the replay as they were in play") {
  Session session = begun(7);
  answer(session, piece_name(pieces_asked(7)[4]));
  for (int i = 0; i < 100; ++i) session.tick();
  answer(session, piece_name(pieces_asked(7)[0]));
  session.end("left");
  const Replay again = replay(session.attempt());
  CHECK(again.outcome.reproduced);
  const ApparatusRound round = apparatus_round(again.session);
  CHECK(round.asked[0].wrong == std::vector<Piece>{pieces_asked(7)[4]});
  CHECK(round.asked[0].picked);
}

}  // namespace
}  // namespace halfdrop

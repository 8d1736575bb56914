#include "game/marking/knowing_drill.h"

#include <doctest/doctest.h>

#include "game/marking/drill_marks.h"
#include "tests/support/drill_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

Session begun(std::uint64_t seed) { return {test::drill_level(DrillKind::know_apparatus), seed, "Wren"}; }

void answer(Session& session, std::string_view text) {
  const int number = static_cast<int>(apparatus_round(session).now) + 1;
  REQUIRE_FALSE(session.write({piece_cell(number), std::string(text)}));
}

MarkedAttempt marked(Session& session) {
  session.end("handed in");
  return mark(session.attempt());
}

/// Names every piece after `wrong` wrong answers each; no use is made of any.
MarkedAttempt named(std::uint64_t seed, std::size_t wrong) {
  Session session = begun(seed);
  while (!apparatus_round(session).over()) {
    const Piece piece = apparatus_round(session).piece().piece;
    const Piece other = piece == Piece::tap ? Piece::jet : Piece::tap;
    for (std::size_t i = 0; i < wrong; ++i) answer(session, piece_name(other));
    answer(session, piece_name(piece));
    const ApparatusRound round = apparatus_round(session);
    if (!round.over() && !round.to_pick()) answer(session, kDoNotKnow);
  }
  return marked(session);
}

// By hand: eleven pieces at a point each, eight of them with a use at another; half a point for later.
TEST_CASE("a piece found at first try is a point, later a half, and its use is another") {
  const MarkedAttempt first = named(3, 0), later = named(3, 2);
  CHECK_NEAR(test::points(first, Score::hand), 11.0, 1e-12);
  CHECK_NEAR(test::points(later, Score::hand), 5.5, 1e-12);
  CHECK_NEAR(first.marks.of, 19.0, 1e-12);
  CHECK(first.marks.safe);
  CHECK(test::finding(first, "piece/pipette").met);
  CHECK_FALSE(test::finding(first, "piece/funnel").met);
  CHECK(test::finding(first, "piece/funnel").seen == "Funnel: found at first try, not put to use.");
  CHECK(test::finding(later, "piece/pipette").seen == "Pipette: taken for it: tap.");
  CHECK(test::finding(later, "piece/pipette").advice ==
        "It is there to measure out one fixed volume, the same every time.");
  const KnowingDrill& drill = std::get<KnowingDrill>(*later.drill);
  CHECK(drill.known() == 0);
  CHECK(drill.wrong() == 22);
  CHECK(drill.used() == 0);
}

TEST_CASE("a piece that had to be told is worth nothing, and one that was not reached is not judged") {
  Session session = begun(3);
  const Piece first = pieces_asked(3)[0];
  answer(session, kDoNotKnow);
  answer(session, piece_name(first));
  const MarkedAttempt left = marked(session);
  const Finding& finding = test::finding(left, "piece/" + std::string(piece_name(first)));
  CHECK(finding.points == 0.0);
  CHECK(finding.judged);
  CHECK_FALSE(test::finding(left, "hand-not-judged").judged);
  CHECK_NEAR(left.marks.of, 19.0, 1e-12);
}

}  // namespace
}  // namespace halfdrop

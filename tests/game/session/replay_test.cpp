#include "game/session/replay.h"

#include <doctest/doctest.h>

#include "game/level/level.h"
#include "game/level/say.h"
#include "game/level/text_catalogue.h"
#include "physics/bench/state_hash.h"
#include "tests/support/bench_hands.h"

namespace halfdrop {
namespace {

using test::BenchHands;

/// Ten seconds at the bench, not ended.
BenchHands short_play() {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(20.0);
  hands.fill_jet();
  hands.read("trial/initial");
  hands.wait(1.0);
  return hands;
}

TEST_CASE("a replay ends in the state of the play, and says that it was compared") {
  BenchHands hands = short_play();
  const Attempt attempt = hands.hand_in();
  const Replay again = replay(attempt);
  CHECK(again.outcome.reproduced);
  CHECK(again.outcome.compared);
  CHECK(again.outcome.message.empty());
  CHECK(again.session.state() == hands.bench());
  CHECK(again.session.attempt().changes == attempt.changes);
}

TEST_CASE("a play in another language is the same attempt, and replays in any") {
  BenchHands hands = short_play();
  const Attempt english = hands.hand_in();
  const auto german = read_language(data_folder(), "de");
  REQUIRE(german);
  speak(*german);
  BenchHands others = short_play();
  CHECK(others.session().act(Deed::deliver_aliquot) ==
        "Die Pipette ist leer: F\u00fclle sie erst aus der Probe.");
  const Attempt in_german = others.hand_in();
  const Replay again = replay(english);
  speak_english();
  CHECK(in_german.changes == english.changes);
  CHECK(others.bench() == hands.bench());
  CHECK(state_hash(others.bench()) == state_hash(hands.bench()));
  CHECK(again.outcome.reproduced);
  CHECK(replay(in_german).outcome.reproduced);
}

TEST_CASE("without a closing line a replay contradicts nothing and proves nothing") {
  BenchHands hands = short_play();
  const Replay again = replay(hands.session().attempt());
  CHECK(again.outcome.reproduced);
  CHECK(!again.outcome.compared);
}

TEST_CASE("a hand moved otherwise ends in another state, and the replay says so") {
  BenchHands hands = short_play();
  Attempt attempt = hands.hand_in();
  for (Change& change : attempt.changes) {
    auto* moved = std::get_if<HandsChange>(&change.what);
    if (moved != nullptr && moved->pour == 1.0) moved->pour = 0.9;
  }
  const Replay again = replay(attempt);
  CHECK(!again.outcome.reproduced);
  CHECK(again.outcome.compared);
  CHECK(again.outcome.message.find("the bench ends as") != std::string::npos);
}

TEST_CASE("a figure altered on the sheet is an altered input: the hash is the bench's alone") {
  BenchHands hands = short_play();
  const Replay again = replay(test::with_text(hands.hand_in(), "trial/initial", "19.00"));
  CHECK(again.outcome.reproduced);
  CHECK(again.session.cell("trial/initial") == "19.00");
}

TEST_CASE("the first change that the bench refuses is named, and the rest goes on") {
  BenchHands hands = short_play();
  Attempt attempt = hands.hand_in();
  attempt.changes.insert(attempt.changes.begin(), Change{0, Deed::deliver_aliquot});
  attempt.changes.insert(attempt.changes.begin() + 1, Change{0, Deed::take_off_goggles});
  const Replay again = replay(attempt);
  CHECK(!again.outcome.reproduced);
  CHECK(again.outcome.first_difference == 0);
  CHECK(again.outcome.message == refusal_text(Refusal::pipette_empty));
  CHECK(again.session.ended());
}

TEST_CASE("a replay up to a tick leaves the bench as it stood then") {
  BenchHands hands;
  hands.protect();
  hands.fill_burette(40.0);
  const BenchState then = hands.bench();
  const Hands held = hands.session().hands();
  hands.wait(2.0);
  hands.read("trial/initial");
  const Replay again = replay(hands.hand_in(), {}, then.tick);
  CHECK(again.session.state().tick == then.tick);
  CHECK(again.session.state().ledger == then.ledger);
  CHECK(again.session.hands() == held);
  CHECK(!again.outcome.compared);
}

}  // namespace
}  // namespace halfdrop

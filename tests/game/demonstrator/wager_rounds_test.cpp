// The papers of the wager that ships: they agree, and the bench says which are right.

#include "game/demonstrator/wager_rounds.h"

#include "tests/support/near.h"
#include "tests/support/rounds.h"

namespace halfdrop {

namespace {

const PlayableWager& shipped() {
  static const PlayableWager kPlayable =
      read_playable_wager(data_folder() + "/levels/demonstrations/concordant-but-wrong.json").value();
  return kPlayable;
}

}  // namespace

TEST_CASE(
    "every paper to bet on is concordant; an eye at one height is too low, a flask rinsed with vinegar too "
    "high") {
  const Wager& wager = shipped().wager;
  const auto seeds = static_cast<std::uint64_t>(test::rounds(2, 10));
  for (std::uint64_t seed = 3; seed < 3 + seeds; ++seed) {
    const std::vector<std::size_t> order = round_order(wager, seed);
    for (std::size_t shown = 0; shown < order.size(); ++shown) {
      const std::vector<std::string>& mistakes = wager.rounds[order[shown]];
      CAPTURE(seed);
      CAPTURE(shown);
      const auto round = wager_round(shipped(), seed, shown);
      REQUIRE(round);
      const MeanTruth& truth = round->truth;
      CAPTURE(truth.off_cm3());
      CHECK(truth.titres_cm3.size() >= 2);
      CHECK(truth.spread_cm3 <= 0.1 + 1e-9);
      // Signs: common practice, as in the catalogue's tests.
      if (mistakes.empty()) CHECK_NEAR(truth.off_cm3(), 0.0, 0.15);
      if (!mistakes.empty() && mistakes.back() == "eye-never-moves") CHECK(truth.mean == MeanIs::too_low);
      if (!mistakes.empty() && mistakes.back() == "flask-rinsed-with-sample")
        CHECK(truth.mean == MeanIs::too_high);
    }
  }
}

TEST_CASE("a mistake that nobody knows is a fault at its place, with the nearest name") {
  Wager wager = shipped().wager;
  wager.rounds[1] = {"eye-never-move"};
  const auto faults = wager_faults(wager, shipped().level, "w.json");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].place == "/wager/rounds/1/mistakes/0");
  CHECK(faults[0].message.find("eye-never-moves") != std::string::npos);
}

}  // namespace halfdrop

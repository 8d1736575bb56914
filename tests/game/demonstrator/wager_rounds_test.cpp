// The papers of the wager that ships: they agree, and the bench says which are right.

#include "game/demonstrator/wager_rounds.h"

#include "game/level/wager.h"
#include "game/marking/bet.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

const Wager& shipped() {
  static const Wager kWager =
      read_wager(data_folder() + "/levels/demonstrations/concordant-but-wrong.json").value();
  return kWager;
}

Level level_of(const Wager& wager) {
  return read_level(data_folder() + "/levels/" + wager.level + ".json").value();
}

}  // namespace

TEST_CASE(
    "every paper to bet on is concordant; an eye at one height is too low, a flask rinsed with vinegar too "
    "high") {
  const Wager& wager = shipped();
  const Level level = level_of(wager);
  REQUIRE(wager_faults(wager, level, "w").empty());
  for (const std::uint64_t seed : {3U, 20U}) {
    const std::vector<std::size_t> order = round_order(wager, seed);
    for (std::size_t shown = 0; shown < order.size(); ++shown) {
      const std::vector<std::string>& mistakes = wager.rounds[order[shown]];
      CAPTURE(seed);
      CAPTURE(shown);
      const auto round = wager_round(wager, level, seed, shown);
      REQUIRE(round);
      const auto truth = mean_truth(round->marked, wager.within_cm3);
      REQUIRE(truth);
      CHECK(truth->titres_cm3.size() >= 2);
      CHECK(truth->spread_cm3 <= 0.1 + 1e-9);
      MESSAGE("off by " << truth->off_cm3() << " cm3, " << truth->spread_cm3 << " apart");
      // Signs: common practice, as in the catalogue's tests.
      if (mistakes.empty()) CHECK_NEAR(truth->off_cm3(), 0.0, 0.15);
      if (!mistakes.empty() && mistakes.back() == "eye-never-moves") CHECK(truth->mean == MeanIs::too_low);
      if (!mistakes.empty() && mistakes.back() == "flask-rinsed-with-sample")
        CHECK(truth->mean == MeanIs::too_high);
    }
  }
}

TEST_CASE("a mistake that nobody knows is a fault at its place, with the nearest name") {
  Wager wager = shipped();
  wager.rounds[1] = {"eye-never-move"};
  const auto faults = wager_faults(wager, level_of(wager), "w.json");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].place == "/wager/rounds/1/mistakes/0");
  CHECK(faults[0].message.find("eye-never-moves") != std::string::npos);
}

}  // namespace halfdrop

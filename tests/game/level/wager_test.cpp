#include "game/level/wager.h"

#include <algorithm>
#include <set>

#include "game/level/level.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

std::string wager_json(const std::string& rounds, const std::string& more = "") {
  return R"({"title":"T","story":"S","why":"W","closing":"C","wager":{"level":"01-spirit-vinegar","rounds":)" +
         rounds + more + "}}";
}

std::string first_fault(const std::string& json) {
  const auto wager = read_wager_text(json, "w.json");
  return wager ? "" : to_string(wager.error().front());
}

}  // namespace

TEST_CASE("a wager says which level was played and what each went wrong with") {
  const auto wager =
      read_wager_text(wager_json(R"([{"mistakes":[]},{"mistakes":["eye-never-moves"]}])"), "w.json");
  REQUIRE(wager);
  CHECK(wager->id == "w");
  CHECK(wager->level == "01-spirit-vinegar");
  REQUIRE(wager->rounds.size() == 2);
  CHECK(wager->rounds[0].empty());
  CHECK(wager->rounds[1].front() == "eye-never-moves");
}

TEST_CASE("one paper is no wager, and unknown keys are faults with their place") {
  CHECK(first_fault(wager_json(R"([{"mistakes":[]}])")).find("/wager/rounds") != std::string::npos);
  CHECK(first_fault(wager_json(R"([{"mistake":[]},{"mistakes":[]}])")).find("/wager/rounds/0") !=
        std::string::npos);
  CHECK(first_fault(wager_json(R"([{"mistakes":[]},{"mistakes":[]}])", R"(,"within":0.2)"))
            .find("within_cm3") != std::string::npos);
}

TEST_CASE("every seed shows each paper once, and seeds differ in the order") {
  const auto wager =
      read_wager_text(wager_json(R"([{"mistakes":[]},{"mistakes":["a"]},{"mistakes":["b"]}])"), "w.json");
  REQUIRE(wager);
  std::set<std::vector<std::size_t>> orders;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    auto order = round_order(*wager, seed);
    orders.insert(order);
    std::sort(order.begin(), order.end());
    CHECK(order == std::vector<std::size_t>{0, 1, 2});
  }
  CHECK(orders.size() == 6);
}

TEST_CASE("a level is no wager, and the wager that ships is one") {
  CHECK_FALSE(is_wager(data_folder() + "/levels/01-spirit-vinegar.json"));
  CHECK_FALSE(is_wager("/no/such/file.json"));
  const std::string path = data_folder() + "/levels/demonstrations/concordant-but-wrong.json";
  CHECK(is_wager(path));
  CHECK(read_wager(path).has_value());
}

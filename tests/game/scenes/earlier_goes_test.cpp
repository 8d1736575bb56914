#include "game/scenes/earlier_goes.h"

#include <doctest/doctest.h>

#include <stdlib.h>
#include <chrono>
#include <filesystem>

#include "game/records/attempt_file.h"
#include "game/scenes/drill_charts.h"
#include "tests/support/drill_level.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

/// A folder that goes when the test does.
struct Shelf {
  Shelf() {
    std::string name = (std::filesystem::temp_directory_path() / "halfdrop-goes-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    folder = name;
  }
  ~Shelf() { std::filesystem::remove_all(folder); }
  Shelf(const Shelf&) = delete;
  Shelf& operator=(const Shelf&) = delete;

  /// A go at "read the meniscus" of the first two pictures; each file is a second younger than the one
  /// before.
  Attempt go(std::uint64_t seed, const std::string& alias, const std::string& written, bool hands_in = true) {
    Session session(test::drill_level(DrillKind::read_meniscus), seed, alias);
    const auto tick = [&] {
      for (int i = 0; i < 24; ++i) session.tick();
    };
    tick();
    if (!written.empty()) CHECK_FALSE(session.write({reading_cell(1), written}).has_value());
    CHECK_FALSE(session.act(Deed::next_picture).has_value());
    tick();
    if (!written.empty()) CHECK_FALSE(session.write({reading_cell(2), written}).has_value());
    if (hands_in) session.end("handed in");
    const std::string path = folder + "/" + session.level().id + "-" + std::to_string(++files) + ".jsonl";
    CHECK(write_attempt(session.attempt(), path).has_value());
    std::filesystem::last_write_time(
        path, std::filesystem::file_time_type::clock::now() + std::chrono::seconds(files));
    return session.attempt();
  }

  std::string folder;
  int files = 0;
};

}  // namespace

TEST_CASE("a second go finds the first, by the same person only") {
  Shelf shelf;
  shelf.go(1, "kim", "10.00");
  shelf.go(2, "ola", "11.00");
  const Attempt now = shelf.go(3, "kim", "12.00");
  const auto goes = earlier_goes(shelf.folder, now);
  REQUIRE(goes.size() == 1);
  CHECK(goes.front().marked.alias == "kim");
  CHECK(std::get<ReadingDrill>(*goes.front().marked.drill).pictures.front().text == "10.00");
}

TEST_CASE("another drill under the same level's name is no earlier go") {
  Shelf shelf;
  Level other = test::drill_level(DrillKind::deliver_exactly);
  other.id = test::drill_level(DrillKind::read_meniscus).id;
  Session session(other, 1, "kim");
  for (int i = 0; i < 24; ++i) session.tick();
  CHECK_FALSE(session.act(Deed::close_volume).has_value());
  session.end("handed in");
  CHECK(write_attempt(session.attempt(), shelf.folder + "/" + other.id + "-0.jsonl").has_value());
  CHECK(earlier_goes(shelf.folder, shelf.go(3, "kim", "12.00")).empty());
}

TEST_CASE("what was not handed in, or in which nothing was read, is no go") {
  Shelf shelf;
  shelf.go(1, "kim", "10.00", false);
  shelf.go(2, "kim", "");
  CHECK(earlier_goes(shelf.folder, shelf.go(3, "kim", "12.00")).empty());
}

TEST_CASE("goes come oldest first, and those after this one are not earlier") {
  Shelf shelf;
  shelf.go(1, "kim", "10.00");
  shelf.go(2, "kim", "11.00");
  const Attempt now = shelf.go(3, "kim", "12.00");
  shelf.go(4, "kim", "13.00");
  const auto goes = earlier_goes(shelf.folder, now);
  REQUIRE(goes.size() == 2);
  CHECK(std::get<ReadingDrill>(*goes[0].marked.drill).pictures.front().text == "10.00");
  CHECK(std::get<ReadingDrill>(*goes[1].marked.drill).pictures.front().text == "11.00");
}

TEST_CASE("of many goes the first and the latest are shown") {
  Shelf shelf;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) shelf.go(seed, "kim", std::to_string(seed) + ".00");
  const auto goes = earlier_goes(shelf.folder, shelf.go(7, "kim", "7.00"), 3);
  REQUIRE(goes.size() == 3);
  const auto text = [&](std::size_t i) {
    return std::get<ReadingDrill>(*goes[i].marked.drill).pictures.front().text;
  };
  CHECK(text(0) == "1.00");
  CHECK(text(1) == "5.00");
  CHECK(text(2) == "6.00");
}

TEST_CASE("an empty folder, or none, has no earlier goes") {
  Shelf shelf;
  const Attempt now = shelf.go(1, "kim", "10.00");
  CHECK(earlier_goes(shelf.folder, now).empty());
  CHECK(earlier_goes(shelf.folder + "/nowhere", now).empty());
}

TEST_CASE("an axis of errors reaches over all of them in whole steps, and cuts off beyond") {
  CHECK_NEAR(reach_of({0.02, -0.13, 0.05}, 0.1, 0.05), 0.15, 1e-12);
  CHECK_NEAR(reach_of({0.15}, 0.1, 0.05), 0.15, 1e-12);
  CHECK_NEAR(reach_of({}, 0.1, 0.05), 0.1, 1e-12);
  const Axis axis{-0.1, 0.1, 200.0F, 0.0F};
  CHECK_NEAR(static_cast<double>(axis.at(0.05)), 50.0, 1e-4);
  CHECK_NEAR(static_cast<double>(axis.at(0.7)), 0.0, 1e-4);
}

#include "game/scenes/level_list.h"

#include <doctest/doctest.h>

using namespace halfdrop;

namespace {

LevelList list_of(int levels, int unfinished) {
  std::vector<LevelList::Entry> entries;
  for (int i = 0; i < levels; ++i) {
    Level level;
    level.id = "level-" + std::to_string(i);
    level.title = "Level " + std::to_string(i);
    level.why = "What it teaches.";
    entries.push_back({"levels/" + level.id + ".json", level});
  }
  std::vector<LevelList::Unfinished> attempts;
  for (int i = 0; i < unfinished; ++i)
    attempts.push_back({"attempt-" + std::to_string(i), "Level 0", "25 Nov 14:50"});
  return {std::move(entries), std::move(attempts)};
}

void press(LevelList& list, sf::Keyboard::Key code) {
  sf::Event event;
  event.type = sf::Event::KeyPressed;
  event.key = {code, false, false, false, false};
  (void)list.event(event, {});
}

bool click(LevelList& list, const std::string& place) {
  for (const auto& [name, rect] : list.places()) {
    if (name != place) continue;
    sf::Event event;
    event.type = sf::Event::MouseButtonPressed;
    event.mouseButton = {sf::Mouse::Left, 0, 0};
    return list.event(event, rect.centre());
  }
  return false;
}

}  // namespace

TEST_CASE("a level that cannot begin says why until something else is chosen") {
  LevelList list = list_of(2, 0);
  list.show_cautions(0);
  list.tell({Fault{FaultKind::cannot_open, "/attempts", "", "cannot make this folder"}});
  CHECK(list.shows_cautions());
  CHECK(list.message().find("cannot make this folder") != std::string::npos);
  CHECK(click(list, "back"));
  CHECK(list.message().empty());
}

TEST_CASE("no level begins before its cautions were shown") {
  LevelList list = list_of(3, 0);
  CHECK(click(list, "level/level-1"));
  CHECK_FALSE(list.take_wish().has_value());
  CHECK(list.shows_cautions());
  CHECK(click(list, "start"));
  const auto wish = list.take_wish();
  REQUIRE(wish.has_value());
  CHECK(wish->kind == LevelList::Wish::Kind::start);
  CHECK(wish->path == "levels/level-1.json");
}

TEST_CASE("back from the cautions starts nothing") {
  LevelList list = list_of(2, 0);
  press(list, sf::Keyboard::Enter);
  REQUIRE(list.shows_cautions());
  press(list, sf::Keyboard::Escape);
  CHECK_FALSE(list.shows_cautions());
  CHECK_FALSE(list.take_wish().has_value());
}

TEST_CASE("an unfinished attempt is offered first and goes on without cautions again") {
  LevelList list = list_of(2, 1);
  press(list, sf::Keyboard::Enter);
  const auto wish = list.take_wish();
  REQUIRE(wish.has_value());
  CHECK(wish->kind == LevelList::Wish::Kind::go_on);
  CHECK(wish->path == "attempt-0");
}

TEST_CASE("the chosen row is always in sight, whichever way one walks the list") {
  LevelList list = list_of(14, 2);
  for (int i = 0; i < 40; ++i) {
    press(list, i < 20 ? sf::Keyboard::Down : sf::Keyboard::Up);
    const int row = i < 20 ? (i + 1) % 16 : ((20 - (i - 19)) % 16 + 16) % 16;
    const std::string name =
        row < 2 ? "unfinished/" + std::to_string(row) : "level/level-" + std::to_string(row - 2);
    CAPTURE(name);
    bool whole = false;
    for (const auto& [place, rect] : list.places()) whole = whole || (place == name && rect.h > 40);
    CHECK(whole);
  }
}

TEST_CASE("Esc in the list leaves the program") {
  LevelList list = list_of(1, 0);
  press(list, sf::Keyboard::Escape);
  REQUIRE(list.take_wish().has_value());
}

TEST_CASE("a drill follows the titrations under a heading of its own, which no row covers") {
  std::vector<LevelList::Entry> entries;
  for (int i = 0; i < 4; ++i) {
    Level level;
    level.id = "level-" + std::to_string(i);
    if (i > 1) level.drill = Drill{};
    entries.push_back({"levels/" + level.id + ".json", level});
  }
  const auto places = LevelList(std::move(entries), {}).places();
  REQUIRE(places.size() == 4);
  const auto gap = [&](std::size_t i) { return places[i].second.y - places[i - 1].second.bottom(); };
  CHECK(gap(1) == doctest::Approx(static_cast<double>(gap(3))).epsilon(1e-5));
  CHECK(static_cast<double>(gap(2) - gap(1)) >= 20.0);
}

#include "game/scenes/safety_page.h"

#include <doctest/doctest.h>

#include "game/scenes/level_list.h"
#include "tests/support/good_level.h"

using namespace halfdrop;

namespace {

void press(LevelList& list, sf::Keyboard::Key code) {
  sf::Event event;
  event.type = sf::Event::KeyPressed;
  event.key = {code, false, false, false, false};
  (void)list.event(event, {});
}

void click(LevelList& list, const std::string& place) {
  for (const auto& [name, rect] : list.places()) {
    if (name != place) continue;
    sf::Event event;
    event.type = sf::Event::MouseButtonPressed;
    event.mouseButton = {sf::Mouse::Left, 0, 0};
    CHECK(list.event(event, rect.centre()));
    return;
  }
  FAIL("no place " << place);
}

LevelList list_with_page(const char* file, Way proposed) {
  Result<Level> level = read_level(test::source_file(file));
  REQUIRE(level.has_value());
  std::vector<LevelList::Entry> levels;
  levels.push_back({file, std::move(*level)});
  LevelList list(std::move(levels), {});
  list.propose(proposed);
  return list;
}

Way started(LevelList& list) {
  const auto wish = list.take_wish();
  REQUIRE(wish.has_value());
  CHECK(wish->kind == LevelList::Wish::Kind::start);
  return wish->way;
}

constexpr const char* kVinegar = "levels/01-spirit-vinegar.json";

}  // namespace

TEST_CASE("each way of playing is chosen by mouse, and by number or arrows") {
  for (const Way way : {Way::guided, Way::independent, Way::assessed}) {
    LevelList by_mouse = list_with_page(kVinegar, Way::independent);
    by_mouse.show_cautions(0);
    click(by_mouse, "way/" + std::string(way_name(way)));
    click(by_mouse, "start");
    CHECK(started(by_mouse) == way);

    LevelList by_number = list_with_page(kVinegar, Way::independent);
    by_number.show_cautions(0);
    press(by_number, static_cast<sf::Keyboard::Key>(sf::Keyboard::Num1 + static_cast<int>(way)));
    press(by_number, sf::Keyboard::Enter);
    CHECK(started(by_number) == way);

    LevelList by_arrow = list_with_page(kVinegar, Way::guided);
    by_arrow.show_cautions(0);
    for (int i = 0; i < static_cast<int>(way); ++i) press(by_arrow, sf::Keyboard::Down);
    press(by_arrow, sf::Keyboard::Enter);
    CHECK(started(by_arrow) == way);
  }
}

TEST_CASE("the way that was chosen stays chosen for the next level") {
  LevelList list = list_with_page(kVinegar, Way::guided);
  list.show_cautions(0);
  press(list, sf::Keyboard::Up);
  press(list, sf::Keyboard::Escape);
  CHECK_FALSE(list.take_wish().has_value());
  list.show_cautions(0);
  press(list, sf::Keyboard::Enter);
  CHECK(started(list) == Way::assessed);
}

TEST_CASE("a drill is played one way, whatever was chosen before, and changes nothing for the next level") {
  const Result<Level> drill = read_level(test::source_file("levels/drills/01-read-the-meniscus.json"));
  REQUIRE(drill.has_value());
  SafetyPage page(*drill, Way::assessed);
  CHECK(page.way() == Way::independent);
  CHECK_FALSE(page.choose("way/guided"));
  CHECK(page.places().size() == 2);
}

TEST_CASE("a drill in between leaves the way as it was chosen") {
  LevelList list = list_with_page("levels/drills/01-read-the-meniscus.json", Way::guided);
  list.show_cautions(0);
  press(list, sf::Keyboard::Enter);
  CHECK(started(list) == Way::independent);
  CHECK(list.way() == Way::guided);
}

TEST_CASE("nothing that can be clicked lies over another") {
  const Level level = test::good_level();
  const auto places = SafetyPage(level, Way::guided).places();
  for (const auto& [name, a] : places) {
    for (const auto& [other, b] : places) {
      if (name == other) continue;
      CAPTURE(name + " " + other);
      CHECK((a.right() <= b.x || b.right() <= a.x || a.bottom() <= b.y || b.bottom() <= a.y));
    }
  }
}

TEST_CASE("a bottle's line says how much of what, and what that calls for") {
  const Level level = test::good_level();
  const auto bottles = bottle_hazards(level);
  CHECK(bottle_line(bottles[0]) == "0.40 % sodium hydroxide: not classified at this strength.");
  CHECK(bottle_line(bottles[1]).starts_with("At most 0.58 % ethanoic acid: "));
}

TEST_CASE("every titration is told of eyes, filling height, mouth and spills") {
  std::string all;
  for (const std::string& rule : house_rules()) all += rule + "\n";
  for (const char* said : {"Eye protection", "below eye level", "never by mouth", "spills"})
    CHECK(all.find(said) != std::string::npos);
}

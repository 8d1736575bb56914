#include "game/scenes/sheet_paper.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "tests/support/good_level.h"

using namespace halfdrop;

namespace {

Level level_with_working() {
  Level level;
  level.title = "A level for tests";
  level.accurate_runs = 3;
  level.calculation = {{"calculation/mean titre", "mean titre", "cm3", {}, {}, {}, {}, 4},
                       {"calculation/result", "strength", "mol dm-3", {}, {}, {}, {}, 3}};
  return level;
}

struct Desk {
  Desk() = default;
  /// Level one, with its working on other figures.
  explicit Desk(const std::vector<std::string>& withdrawn)
      : session{test::good_level(), 1, "tester"},
        paper{session.level(), WorkedSlip{worked_example(session.level(), 1), withdrawn}} {}

  Session session{level_with_working(), 1, "tester"};
  SheetPaper paper{session.level()};

  bool key(sf::Keyboard::Key code, bool shift = false) {
    sf::Event event;
    event.type = sf::Event::KeyPressed;
    event.key = {code, false, false, shift, false};
    return paper.event(event, {}, session);
  }
  void type(const std::string& text) {
    for (const char c : text) {
      sf::Event event;
      event.type = sf::Event::TextEntered;
      event.text.unicode = static_cast<sf::Uint32>(c);
      (void)paper.event(event, {}, session);
    }
  }
  bool click(const std::string& place) {
    const Rect rect = paper.rect_of(place);
    REQUIRE(rect.w > 0);
    sf::Event event;
    event.type = sf::Event::MouseButtonPressed;
    event.mouseButton = {sf::Mouse::Left, 0, 0};
    return paper.event(event, rect.centre(), session);
  }
};

}  // namespace

TEST_CASE("a reading counts at the tick at which Enter is pressed, while the bench goes on") {
  Desk desk;
  CHECK(desk.click("trial/initial"));
  for (int i = 0; i < 30; ++i) desk.session.tick();
  desk.type("0.15");
  for (int i = 0; i < 12; ++i) desk.session.tick();
  CHECK(desk.session.cell("trial/initial").empty());
  CHECK(desk.key(sf::Keyboard::Enter));
  CHECK(desk.session.cell("trial/initial") == "0.15");
  CHECK(desk.session.attempt().changes.back().tick == 42);
  CHECK_FALSE(desk.paper.editing());
}

TEST_CASE("Esc leaves a cell as it was and writes nothing") {
  Desk desk;
  desk.click("1/final");
  desk.type("23.4");
  desk.key(sf::Keyboard::Escape);
  CHECK(desk.session.attempt().changes.empty());
}

TEST_CASE("the key that opens the next cell is not written into it") {
  Desk desk;
  CHECK(desk.key(sf::Keyboard::R));
  CHECK(desk.paper.edited_cell() == "trial/initial");
  desk.type("r");
  desk.type("0.05");
  desk.key(sf::Keyboard::Enter);
  CHECK(desk.session.cell("trial/initial") == "0.05");
  CHECK(desk.key(sf::Keyboard::R));
  CHECK(desk.paper.edited_cell() == "trial/final");
}

TEST_CASE("what was corrected stays, struck out, oldest first") {
  Desk desk;
  for (const char* text : {"23.4", "23.35", "23.45"}) {
    desk.click("2/final");
    desk.type(text);
    desk.key(sf::Keyboard::Enter);
  }
  CHECK(desk.session.cell("2/final") == "23.45");
  CHECK(struck_out(desk.session.attempt(), "2/final") == std::vector<std::string>{"23.4", "23.35"});
  CHECK(struck_out(desk.session.attempt(), "2/initial").empty());
}

TEST_CASE("Tab goes on in the order of work and writes what was typed") {
  Desk desk;
  desk.paper.open("1/initial", desk.session);
  desk.type("0.00");
  desk.key(sf::Keyboard::Tab);
  CHECK(desk.paper.edited_cell() == "1/final");
  CHECK(desk.session.cell("1/initial") == "0.00");
  desk.key(sf::Keyboard::Tab, true);
  CHECK(desk.paper.edited_cell() == "1/initial");
}

TEST_CASE("arrows walk the table, and down from it into the working, which brings the paper forward") {
  Desk desk;
  desk.paper.open("trial/titre", desk.session);
  desk.key(sf::Keyboard::Right);
  CHECK(desk.paper.edited_cell() == "1/titre");
  desk.key(sf::Keyboard::Down);
  CHECK(desk.paper.edited_cell() == "1/counts");
  CHECK_FALSE(desk.paper.forward());
  desk.key(sf::Keyboard::Down);
  CHECK(desk.paper.edited_cell() == "calculation/mean titre");
  CHECK(desk.paper.forward());
  desk.key(sf::Keyboard::Escape);
  CHECK_FALSE(desk.paper.forward());
}

TEST_CASE("a click ticks a titre as counting and another takes the tick away") {
  Desk desk;
  desk.click("1/counts");
  CHECK(desk.session.cell("1/counts") == "yes");
  desk.click("1/counts");
  CHECK(desk.session.cell("1/counts").empty());
}

TEST_CASE("handing in is asked once more, and can be called off") {
  Desk desk;
  desk.click("hand in");
  CHECK(desk.paper.asking());
  CHECK_FALSE(desk.session.ended());
  desk.click("no");
  CHECK_FALSE(desk.session.ended());
  desk.key(sf::Keyboard::H);
  desk.key(sf::Keyboard::Y);
  CHECK(desk.session.ended());
  CHECK(std::get<Ending>(desk.session.attempt().changes.back().what).how == "handed in");
}

TEST_CASE("keys that are not the paper's are left to the bench") {
  Desk desk;
  CHECK_FALSE(desk.key(sf::Keyboard::Space));
  CHECK_FALSE(desk.key(sf::Keyboard::Left));
  desk.paper.open("1/final", desk.session);
  CHECK(desk.key(sf::Keyboard::Space));
}

TEST_CASE("every cell has a place of its own on the paper, and the eye picture stays in sight") {
  const Level level = level_with_working();
  SheetPaper paper(level);
  paper.come_forward(true);
  for (const std::string& cell : sheet_cells(level)) {
    const Rect rect = paper.rect_of(cell);
    CAPTURE(cell);
    CHECK(rect.w > 30);
    CHECK(rect.h > 20);
    CHECK(paper.area().contains(rect.centre()));
  }
  CHECK(paper.area().right() <= 864);  // where the eye picture begins
  const auto places = paper.places();
  for (const auto& [name, rect] : places) {
    const auto holders = std::count_if(places.begin(), places.end(), [&, at = rect.centre()](const auto& p) {
      return p.second.contains(at);
    });
    CHECK(holders == 1);
  }
}

TEST_CASE("every cell is reached by Tab alone, and by a click alone") {
  Desk keys, mouse;
  keys.paper.open("trial/initial", keys.session);
  mouse.paper.come_forward(true);
  for (const std::string& cell : sheet_cells(keys.session.level())) {
    CAPTURE(cell);
    CHECK(keys.paper.edited_cell() == cell);
    keys.type("1.00");
    keys.key(sf::Keyboard::Space);  // ticks where there is a box
    keys.key(sf::Keyboard::Tab);
    CHECK_FALSE(keys.session.cell(cell).empty());
    mouse.click(cell);
    mouse.type("1.00");
    mouse.key(sf::Keyboard::Enter);
    CHECK_FALSE(mouse.session.cell(cell).empty());
  }
}

TEST_CASE("when the table is full R goes on in the working, and when all is full it starts again") {
  Desk desk;
  for (const char* run : {"trial", "1", "2", "3"}) {
    for (const char* row : {"/initial", "/final", "/titre"})
      CHECK_FALSE(desk.session.write({std::string(run) + row, "1.00"}).has_value());
  }
  desk.key(sf::Keyboard::R);
  CHECK(desk.paper.edited_cell() == "calculation/mean titre");
  desk.key(sf::Keyboard::Escape);
  for (const char* cell : {"calculation/mean titre", "calculation/result"})
    CHECK_FALSE(desk.session.write({cell, "1.00"}).has_value());
  desk.key(sf::Keyboard::R);
  CHECK(desk.paper.edited_cell() == "trial/initial");
}

TEST_CASE("F4 and a click at a line show the working on other figures; F4 puts it away") {
  Desk desk{{}};
  CHECK(desk.key(sf::Keyboard::F4));
  CHECK(desk.paper.shows_example());
  CHECK(desk.paper.forward());
  desk.key(sf::Keyboard::F4);
  CHECK_FALSE(desk.paper.shows_example());
  desk.click("example/calculation/moles of acid");
  CHECK(desk.paper.shows_example());
  CHECK(desk.paper.edited_cell() == "calculation/moles of acid");
  desk.type("0.0021");
  desk.key(sf::Keyboard::F4);  // while writing too
  CHECK_FALSE(desk.paper.shows_example());
  desk.key(sf::Keyboard::Enter);
  CHECK(desk.session.cell("calculation/moles of acid") == "0.0021");
}

TEST_CASE("before the own calculation comes a worked one, once, and it goes with the working") {
  Desk desk{{}};
  desk.paper.open("1/initial", desk.session);
  CHECK_FALSE(desk.paper.shows_example());
  desk.click("working");
  CHECK(desk.paper.shows_example());
  desk.key(sf::Keyboard::Escape);
  CHECK_FALSE(desk.paper.forward());
  CHECK_FALSE(desk.paper.shows_example());
  desk.click("working");
  CHECK_FALSE(desk.paper.shows_example());
}

TEST_CASE("a line that is withdrawn offers no example, and when all are nothing is shown") {
  Desk one{{"calculation/spirit vinegar"}};
  one.paper.come_forward(true);
  CHECK(one.paper.rect_of("example/calculation/spirit vinegar").w == 0);
  CHECK(one.paper.rect_of("example/calculation/mean titre").w > 0);
  std::vector<std::string> all;
  for (const CalculationStep& step : test::good_level().calculation) all.push_back(step.cell);
  Desk none{all};
  none.key(sf::Keyboard::F4);
  CHECK_FALSE(none.paper.shows_example());
  CHECK(none.paper.message().find("withdrawn") != std::string::npos);
}

TEST_CASE("no place on the sheet lies over another, examples included") {
  Desk desk{{}};
  desk.paper.come_forward(true);
  const auto places = desk.paper.places();
  for (const auto& [name, rect] : places) {
    CAPTURE(name);
    const auto holders = std::count_if(places.begin(), places.end(), [&, at = rect.centre()](const auto& p) {
      return p.second.contains(at);
    });
    CHECK(holders == 1);
    CHECK(desk.paper.area().contains(rect.centre()));
  }
}

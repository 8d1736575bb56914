#include "game/scenes/play_scene.h"

#include <doctest/doctest.h>

#include "game/scenes/attempt_shelf.h"
#include "game/scenes/shelf_files.h"
#include "physics/bench/state_hash.h"
#include "tests/support/drill_level.h"

using namespace halfdrop;

namespace {

PlayScene scene_of(Way way) { return {Session(test::good_level(), 5, "Wren", way), std::nullopt, {}}; }

void press(PlayScene& scene, sf::Keyboard::Key code) {
  sf::Event event;
  event.type = sf::Event::KeyPressed;
  event.key = {code, false, false, false, false};
  scene.event(event, {-1, -1});
}

void release(PlayScene& scene, sf::Keyboard::Key code) {
  sf::Event event;
  event.type = sf::Event::KeyReleased;
  event.key = {code, false, false, false, false};
  scene.event(event, {-1, -1});
}

std::unique_ptr<PlayScene> begun(const std::string& folder, Way way) {
  auto scene = begin_attempt({test::good_level_path(), 5, "Wren", folder, way}, {});
  REQUIRE(scene.has_value());
  return std::move(*scene);
}

std::unique_ptr<PlayScene> taken_up(const std::string& folder) {
  const auto files = files_of(folder, ".jsonl");
  REQUIRE(files.size() == 1);
  auto scene = go_on_with_attempt(files.front().string(), {});
  REQUIRE(scene.has_value());
  return std::move(*scene);
}

}  // namespace

TEST_CASE("an assessed attempt gets its keys shown, but no method and no guide, and is told why") {
  PlayScene scene = scene_of(Way::assessed);
  for (const auto key : {sf::Keyboard::F2, sf::Keyboard::F3}) {
    press(scene, key);
    CHECK_FALSE(scene.shows_card());
    CHECK(scene.told().find("assessed") != std::string::npos);
    CHECK(scene.guided_to() == "");
  }
  press(scene, sf::Keyboard::F1);
  CHECK(scene.shows_card());
}

TEST_CASE("in the drill of pieces a key answers while a piece is asked for, and moves it afterwards") {
  PlayScene scene(Session(test::drill_level(DrillKind::know_apparatus), 5, "Wren"), std::nullopt, {});
  const auto round = [&] { return apparatus_round(scene.session()); };
  while (round().piece().piece != Piece::tile) {
    const std::size_t number = round().now;
    press(scene, sf::Keyboard::Enter);  // does not know
    CHECK(round().asked[number].told);
    CHECK_FALSE(scene.session().state().tile_laid);
    press(scene, sf::Keyboard::L);
    CHECK(round().asked[number].wrong == std::vector<Piece>{Piece::tile});
    release(scene, sf::Keyboard::Enter);
    release(scene, sf::Keyboard::L);
    for (const auto key :
         {sf::Keyboard::S, sf::Keyboard::J, sf::Keyboard::Z, sf::Keyboard::N, sf::Keyboard::A,
          sf::Keyboard::U, sf::Keyboard::F, sf::Keyboard::W, sf::Keyboard::B, sf::Keyboard::E}) {
      if (round().now != number || !round().to_pick()) break;
      press(scene, key);
      press(scene, key);  // the keyboard repeats itself
      release(scene, key);
    }
    CHECK(round().asked[number].picked);
    if (round().now == number) press(scene, sf::Keyboard::Enter);  // leaves its use out
    release(scene, sf::Keyboard::Enter);
  }
  const std::size_t number = round().now;
  press(scene, sf::Keyboard::L);
  press(scene, sf::Keyboard::L);
  CHECK_FALSE(scene.session().state().tile_laid);
  release(scene, sf::Keyboard::L);
  press(scene, sf::Keyboard::L);
  CHECK(scene.session().state().tile_laid);
  CHECK(round().asked[number].used);
}

TEST_CASE("played independently the bench is silent, and the method can be asked for") {
  PlayScene scene = scene_of(Way::independent);
  CHECK(scene.guided_to() == "");
  press(scene, sf::Keyboard::F3);
  CHECK(scene.guided_to() == "");
  press(scene, sf::Keyboard::F2);
  CHECK(scene.shows_card());
}

TEST_CASE("a guide is hidden and shown by key, and by mouse") {
  PlayScene scene = scene_of(Way::guided);
  CHECK(scene.guided_to() == "coat");
  press(scene, sf::Keyboard::F3);
  CHECK(scene.guided_to() == "");
  press(scene, sf::Keyboard::C);
  CHECK(scene.guided_to() == "");
  sf::Event event;
  event.type = sf::Event::MouseButtonPressed;
  event.mouseButton = {sf::Mouse::Left, 0, 0};
  scene.event(event, kGuideTab.centre());
  CHECK(scene.guided_to() == "goggles");
  scene.event(event, kGuideTab.centre());
  CHECK(scene.guided_to() == "");
}

TEST_CASE("the right button does a thing's other deed, or pours what it is pressed on") {
  PlayScene scene = scene_of(Way::independent);
  const auto right_press = [&](const std::string& place) {
    for (const auto& [name, rect] : scene.places()) {
      if (name != place) continue;
      sf::Event event;
      event.type = sf::Event::MouseButtonPressed;
      event.mouseButton = {sf::Mouse::Right, 0, 0};
      scene.event(event, rect.centre());
      return;
    }
    FAIL("no place " << place);
  };
  const auto last_deed = [&] { return std::get<Deed>(scene.session().attempt().changes.back().what); };
  right_press("pipette");
  CHECK(last_deed() == Deed::rinse_pipette_with_sample);
  press(scene, sf::Keyboard::Q);
  right_press("pipette");
  CHECK(last_deed() == Deed::rinse_pipette_with_water);
  right_press("sink");
  CHECK(last_deed() == Deed::empty_flask);
  right_press("sample");
  CHECK(scene.session().state().in_hand == Bottle::sample);
  CHECK(scene.session().hands().pour == 1.0);
}

TEST_CASE("a drill has no bottles to take up, and says so") {
  const auto level = read_level(test::source_file("levels/drills/03-fill-without-air.json"));
  REQUIRE(level.has_value());
  PlayScene scene(Session(*level, 5, "Wren"), std::nullopt, {});
  press(scene, sf::Keyboard::Q);
  CHECK(scene.told() != "");
  CHECK(scene.told().find("In your hand") == std::string::npos);
}

TEST_CASE("nothing on the bench lies under the guide's tab") {
  for (const auto& [name, rect] : scene_of(Way::guided).places()) {
    if (name == "guide" || name.starts_with("pause/")) continue;
    CAPTURE(name);
    CHECK_FALSE((rect.x < kGuideTab.right() && kGuideTab.x < rect.right() && rect.y < kGuideTab.bottom() &&
                 kGuideTab.y < rect.bottom()));
  }
}

TEST_CASE("what was left is taken up where it stood, in every way") {
  for (const Way way : {Way::guided, Way::independent, Way::assessed}) {
    const test::TemporaryFolder folder;
    std::string hash;
    Tick tick = 0;
    {
      const auto scene = begun(folder.file(""), way);
      press(*scene, sf::Keyboard::C);
      for (int frame = 0; frame < 20; ++frame) scene->advance(0.1);
      tick = scene->session().state().tick;
      hash = state_hash(scene->session().state());
    }
    CHECK(tick == 480);
    const auto again = taken_up(folder.file(""));
    CHECK(again->session().way() == way);
    CHECK(again->session().state().tick == tick);
    CHECK(state_hash(again->session().state()) == hash);
  }
}

TEST_CASE("a seed that was given holds, but for no second assessed attempt") {
  Seeds given(7);
  CHECK(given.next(Way::independent) == 7);
  CHECK(given.next(Way::assessed) == 7);
  CHECK(given.next(Way::guided) == 7);
  CHECK(given.next(Way::assessed) != 7);  // one in 1e9 that it falls again
  Seeds none({});
  CHECK(none.next(Way::assessed) != none.next(Way::assessed));
}

TEST_CASE("an assessed attempt that is torn away loses a second at most") {
  const test::TemporaryFolder folder;
  const auto scene = begun(folder.file(""), Way::assessed);
  for (int frame = 0; frame < 57; ++frame) scene->advance(0.1);  // and the program is still there
  CHECK(taken_up(folder.file(""))->session().state().tick >= 57 * 24 - kTicksPerSecond);
}

TEST_CASE("a step is shown with its key; three are written on the paper, and say so") {
  for (const GuideStep& step : guide_steps()) {
    CAPTURE(step.id);
    const bool on_paper = step.id == "tick" || step.id == "working" || step.id == "read-too-early";
    CHECK((step_with_key({step.id, "Do it.", ""}) == "Do it.") == on_paper);
  }
}

// A standard made up in the window: by its keys, by its lines, and what is seen of it.

#include <doctest/doctest.h>

#include <algorithm>

#include "game/scenes/making_up_panel.h"
#include "game/scenes/play_scene.h"
#include "physics/bench/preparation.h"
#include "tests/support/good_level.h"

namespace halfdrop {
namespace {

PlayScene scene_of(Way way) {
  const Result<Level> level = read_level(test::source_file("levels/03-standard-acid.json"));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  return {Session(*level, 5, "Wren", way), std::nullopt, {}};
}

void key(PlayScene& scene, sf::Keyboard::Key code, bool down, bool shift = false) {
  sf::Event event;
  event.type = down ? sf::Event::KeyPressed : sf::Event::KeyReleased;
  event.key = {code, false, false, shift, false};
  scene.event(event, {-1, -1});
}

void tap(PlayScene& scene, sf::Keyboard::Key code) {
  key(scene, code, true);
  key(scene, code, false);
}

void wait(PlayScene& scene, double seconds) {
  for (double left_s = seconds; left_s > 0.0; left_s -= 0.1) scene.advance(0.1);
}

void hold(PlayScene& scene, sf::Keyboard::Key code, double seconds, bool shift = false) {
  key(scene, code, true, shift);
  wait(scene, seconds);
  key(scene, code, false, shift);
  wait(scene, 0.2);
}

bool shows(const PlayScene& scene, const std::string& place) {
  const auto places = scene.places();
  return std::any_of(places.begin(), places.end(), [&](const auto& p) { return p.first == place; });
}

double flask_cm3(const PlayScene& scene) {
  return scene.session().state().ledger.balance(Account::sample_bottle).volume_cm3();
}
double out_g(const PlayScene& scene) { return tipped_out_g(scene.session().spec(), scene.session().state()); }

}  // namespace

TEST_CASE(
    "by the keys 1 to 6 a standard is tipped out, dissolved, poured, rinsed in, filled up and turned over") {
  PlayScene scene = scene_of(Way::independent);
  hold(scene, sf::Keyboard::Num1, 4.0);
  const double quickly_g = out_g(scene);
  CHECK(quickly_g > 0.3);
  CHECK(scene.session().hands().tip == 0.0);
  hold(scene, sf::Keyboard::Num1, 4.0, true);
  CHECK(out_g(scene) > quickly_g);
  CHECK(out_g(scene) - quickly_g < 0.25 * quickly_g);
  tap(scene, sf::Keyboard::Num2);
  tap(scene, sf::Keyboard::Num3);
  CHECK(flask_cm3(scene) > 99.0);
  tap(scene, sf::Keyboard::Num4);
  CHECK(flask_cm3(scene) > 119.0);
  hold(scene, sf::Keyboard::Num5, 3.0);
  const double filled_cm3 = flask_cm3(scene);
  CHECK(filled_cm3 > 130.0);
  hold(scene, sf::Keyboard::Num5, 3.0, true);
  CHECK(flask_cm3(scene) - filled_cm3 > 0.1);
  CHECK(flask_cm3(scene) - filled_cm3 < 1.0);
  tap(scene, sf::Keyboard::Num6);
  CHECK(scene.session().state().preparation.inversions == 1);
}

TEST_CASE("what cannot be done is told, and nought hides the card and shows it again") {
  PlayScene scene = scene_of(Way::independent);
  tap(scene, sf::Keyboard::Num2);
  CHECK(scene.told().find("no solid") != std::string::npos);
  CHECK(shows(scene, "tip-out"));
  tap(scene, sf::Keyboard::Num0);
  CHECK_FALSE(shows(scene, "tip-out"));
  tap(scene, sf::Keyboard::Num0);
  CHECK(shows(scene, "tip-out"));
}

TEST_CASE(
    "by mouse the lines are held or clicked, gently with the right button, and lie inside the eye's frame") {
  PlayScene scene = scene_of(Way::independent);
  for (const auto& [name, rect] : scene.places()) {
    if (name != "tip-out") continue;
    for (const auto button : {sf::Mouse::Left, sf::Mouse::Right}) {
      sf::Event event;
      event.type = sf::Event::MouseButtonPressed;
      event.mouseButton = {button, 0, 0};
      scene.event(event, rect.centre());
      CHECK(scene.session().hands().tip == making_up_strength(Grip::tip, button == sf::Mouse::Right));
      event.type = sf::Event::MouseButtonReleased;
      scene.event(event, rect.centre());
      wait(scene, 0.3);
      CHECK(scene.session().hands().tip == 0.0);
    }
    break;
  }
  const Rect eye = layout::kEye;
  for (const bool large : {false, true}) {
    for (const Thing& line : making_up_things(eye, large)) {
      CHECK(line.rect.y > eye.y);
      CHECK(line.rect.bottom() < eye.bottom());
      CHECK(line.rect.h >= (large ? 29.0F : 24.0F));
    }
  }
}

TEST_CASE("the card goes once the flask is used, and no other level has one") {
  PlayScene scene = scene_of(Way::independent);
  hold(scene, sf::Keyboard::Num1, 6.0);
  for (const auto code : {sf::Keyboard::Num2, sf::Keyboard::Num3, sf::Keyboard::Y}) tap(scene, code);
  wait(scene, 0.2);
  CHECK_FALSE(shows(scene, "tip-out"));
  const PlayScene vinegar(Session(test::good_level(), 5, "Wren", Way::independent), std::nullopt, {});
  CHECK_FALSE(shows(vinegar, "tip-out"));
}

TEST_CASE("guided, the first thing after coat and goggles is the weighing") {
  PlayScene scene = scene_of(Way::guided);
  for (const auto code : {sf::Keyboard::C, sf::Keyboard::G, sf::Keyboard::S}) tap(scene, code);
  wait(scene, 0.3);
  CHECK(scene.guided_to() == "standard-before");
}

}  // namespace halfdrop

#include "game/scenes/drop_strip.h"

#include <doctest/doctest.h>

#include <SFML/Graphics/Image.hpp>
#include <set>

#include "game/scenes/display_probe.h"
#include "physics/flask/contents.h"
#include "tests/support/drill_level.h"

using namespace halfdrop;

namespace {

/// A faultless run takes a while: done once.
const OneDrop& drop() {
  static const auto found = one_drop_twice(test::good_level(), 1);
  REQUIRE_MESSAGE(found.has_value(), found.error());
  return *found;
}

/// A difference of colour that a viewer can just see side by side: CIEDE2000 of 1 (Sharma, from memory).
constexpr double kJustSeen = 1.0;

}  // namespace

TEST_CASE("a drop into a swirled flask is soon the same all over, into a still one it is not") {
  const DropViews &swirled = drop().swirled, &still = drop().still;
  CHECK(swirled.back().streaks < kJustSeen);
  CHECK(still.back().streaks > kJustSeen);
  CHECK(still.back().streak_change > kFirstVisibleChange);
}

TEST_CASE("both rows tell of the same drop, whole, into the same even liquid") {
  const DropViews &swirled = drop().swirled, &still = drop().still;
  CHECK(swirled.front().flask_cm3 == still.front().flask_cm3);
  CHECK(swirled.front().meniscus_cm3 == still.front().meniscus_cm3);
  const Session& before = drop().bench;
  const double drop_cm3 = still.front().flask_cm3 - view(before).flask_cm3;
  CHECK(drop_cm3 > 0.8 * before.spec().settled.full_drop_cm3);
  CHECK(drop_cm3 < 1.2 * before.spec().settled.full_drop_cm3);
  for (const View& one : still) CHECK(one.hands.swirl == 0.0);
  for (const View& one : swirled) CHECK(one.hands.swirl > 0.0);
}

TEST_CASE("the pictures stand at the moments that their captions say") {
  for (const DropViews* const row : {&drop().swirled, &drop().still}) {
    for (std::size_t i = 0; i < row->size(); ++i)
      CHECK((*row)[i].time_s - row->front().time_s == doctest::Approx(kDropMoments_s[i]).epsilon(1e-9));
  }
}

TEST_CASE("a drill has no strip, and says why") {
  const auto none = one_drop_twice(test::drill_level(DrillKind::deliver_exactly), 1);
  REQUIRE_FALSE(none.has_value());
  CHECK(none.error().find("drill") != std::string::npos);
}

TEST_CASE("a strip is a picture of the asked size with flasks in it") {
  REQUIRE_MESSAGE(!display_fault(), "this test draws and needs a display: xvfb-run -a ctest ...");
  const test::TemporaryFolder folder;
  Options options;
  options.level = test::good_level_path();
  options.strip = folder.file("strip.png");
  options.width = 900;
  options.height = 500;
  REQUIRE(draw_strip(options) == 0);
  sf::Image strip;
  REQUIRE(strip.loadFromFile(options.strip));
  CHECK(strip.getSize() == sf::Vector2u(900, 500));
  for (unsigned row = 0; row < 2; ++row) {
    for (unsigned column = 0; column < 6; ++column) {
      std::set<sf::Uint32> colours;
      for (unsigned y = 0; y < 250; y += 2) {
        for (unsigned x = 0; x < 150; x += 2)
          colours.insert(strip.getPixel(150 * column + x, 250 * row + y).toInteger());
      }
      CHECK(colours.size() > 100);
    }
  }
}

TEST_CASE("a level that cannot be read, or a drill, leaves no strip") {
  REQUIRE_MESSAGE(!display_fault(), "this test draws and needs a display: xvfb-run -a ctest ...");
  const test::TemporaryFolder folder;
  Options options;
  options.strip = folder.file("strip.png");
  options.level = folder.file("none.json");
  CHECK(draw_strip(options) == 3);
  options.level = test::drill_path(DrillKind::read_meniscus);
  CHECK(draw_strip(options) == 1);
  CHECK_FALSE(std::filesystem::exists(options.strip));
}

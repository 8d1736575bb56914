#include "game/scenes/drop_strip.h"

#include <doctest/doctest.h>

#include <SFML/Graphics/Image.hpp>
#include <set>

#include "game/scenes/display_probe.h"
#include "physics/flask/contents.h"
#include "tests/support/drill_level.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

/// A difference of colour that a viewer sees side by side: CIEDE2000 of 2 (one is just noticeable; textbook).
constexpr double kJustSeen = 2.0;

}  // namespace

TEST_CASE("one drop, swirled and not") {
  Level level = test::good_level();
  level.flask.fineness = 0.25;  // quicker than a player's
  const auto found = one_drop_twice(level, 1);
  REQUIRE_MESSAGE(found.has_value(), found.error());
  const DropViews &swirled = found->swirled, &still = found->still;

  // A swirled flask is soon the same all over, a still one is not.
  CHECK(swirled.back().streaks < kJustSeen);
  CHECK(still.back().streaks > kJustSeen);
  CHECK(still.back().streak_change > kFirstVisibleChange);

  // The same drop, whole, into the same liquid.
  CHECK(swirled.front().flask_cm3 == still.front().flask_cm3);
  CHECK(swirled.front().meniscus_cm3 == still.front().meniscus_cm3);
  const double drop_cm3 = still.front().flask_cm3 - view(found->bench).flask_cm3;
  const double whole_cm3 = found->bench.spec().settled.full_drop_cm3;
  CHECK(drop_cm3 > 0.8 * whole_cm3);
  CHECK(drop_cm3 < 1.2 * whole_cm3);

  // Hands and moments are those that the captions tell of.
  for (std::size_t i = 0; i < kDropMoments_s.size(); ++i) {
    CHECK(still[i].hands.swirl == 0.0);
    CHECK(swirled[i].hands.swirl > 0.0);
    CHECK_NEAR(still[i].time_s - still.front().time_s, kDropMoments_s[i], 1e-9);
    CHECK_NEAR(swirled[i].time_s - swirled.front().time_s, kDropMoments_s[i], 1e-9);
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
  const std::string level = test::text_of(test::good_level_path());
  options.level = folder.file("coarse.json", "{\"flask\": {\"fineness\": 0.25}," + level.substr(1));
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

#include <doctest/doctest.h>

#include "game/session/view.h"
#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

TEST_CASE("a drop's touching off is to be seen for a moment, and no other deed looks like it") {
  test::BenchHands hands(test::good_level());
  hands.fill_burette(0.0);
  hands.fill_jet();
  hands.wait(1.0);
  CHECK_FALSE(view(hands.session()).touched_off_s.has_value());
  HandsChange under;
  under.flask_x_cm = 0.0;
  under.tap = hands.tap_for(0.5);
  hands.hold(under);
  while (view(hands.session()).hanging_cm3 < 0.02) hands.session().tick();
  under.tap = 0.0;
  hands.hold(under);
  CHECK_FALSE(view(hands.session()).touched_off_s.has_value());
  hands.act(Deed::touch_off_drop);
  CHECK(view(hands.session()).touched_off_s == 0.0);
  hands.wait(0.5);
  REQUIRE(view(hands.session()).touched_off_s.has_value());
  CHECK_NEAR(*view(hands.session()).touched_off_s, 0.5, 1e-9);
}

}  // namespace
}  // namespace halfdrop

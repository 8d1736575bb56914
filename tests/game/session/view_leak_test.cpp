#include <doctest/doctest.h>

#include <cmath>

#include "game/session/view.h"
#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

Level leaking() {
  Level level = test::good_level();
  level.tap.leak_cm3_min = 1.0;
  return level;
}

// Source: free fall from the tap's height, g = 9.80665 m/s2.
TEST_CASE("a drop that lets go of a leaking plug is seen to fall, and then lies on the bench") {
  test::BenchHands hands(leaking());
  hands.fill_burette(0.0);
  const auto lets_go = [](const Session& session) { return view(session).plug_drop_fallen_cm.has_value(); };
  while (!lets_go(hands.session())) hands.session().tick();
  const double hangs_cm3 = view(hands.session()).plug_drop_cm3;
  CHECK(hangs_cm3 < 0.001);
  const double before_cm3 = view(hands.session()).spilt_cm3;
  CHECK(before_cm3 > 0.04);
  double last_cm = -1.0, falls_s = 0.0;
  while (lets_go(hands.session())) {
    const double fallen_cm = *view(hands.session()).plug_drop_fallen_cm;
    CHECK(fallen_cm > last_cm);
    last_cm = fallen_cm;
    hands.session().tick();
    falls_s += kSecondsPerTick;
  }
  const BenchSpec& spec = hands.spec();
  const double high_m = 0.01 * (spec.tip_above_bench_cm + 0.1 * spec.burette.jet_length_mm);
  CHECK_NEAR(falls_s, std::sqrt(2.0 * high_m / 9.80665), 0.01);
}

TEST_CASE("at a tight tap no drop hangs and none falls") {
  test::BenchHands hands(test::good_level());
  hands.fill_burette(0.0);
  hands.wait(60.0);
  CHECK(view(hands.session()).plug_drop_cm3 == 0.0);
  CHECK_FALSE(view(hands.session()).plug_drop_fallen_cm.has_value());
}

}  // namespace
}  // namespace halfdrop

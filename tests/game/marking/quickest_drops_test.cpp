// How quickly the last half cubic centimetre went in, where its end was touched off drop by drop.

#include <doctest/doctest.h>

#include "game/marking/per_run.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

constexpr double kDrop_cm3 = 0.05;

/// Eight drops a second, then `halves` half drops, one every ten seconds.
Evidence streamed_then_touched_off(int halves) {
  Evidence evidence;
  FallenDrop last{1000, 0.0};
  for (int i = 0; i < 40; ++i) {
    last = FallenDrop{last.tick + kTicksPerSecond / 8, last.out_cm3 + kDrop_cm3};
    evidence.drops.push_back(last);
    evidence.let_out.push_back(last);
  }
  for (int i = 0; i < halves; ++i) {
    last = FallenDrop{last.tick + 10 * kTicksPerSecond, last.out_cm3 + 0.5 * kDrop_cm3};
    evidence.let_out.push_back(last);
  }
  return evidence;
}

double quickest(int halves) {
  return quickest_drops_per_s(streamed_then_touched_off(halves), 0, 1000 * kTicksPerSecond);
}

}  // namespace

TEST_CASE("what is touched off counts towards the last half cubic centimetre, though it does not fall") {
  CHECK_NEAR(quickest(0), 8.0, 1e-9);
  CHECK_NEAR(quickest(10), 8.0, 1e-9);  // 0.25 cm3 of it was run in
  CHECK_NEAR(quickest(25), 0.0, 1e-9);  // 0.625 cm3: none of it
  CHECK_NEAR(quickest_drops_per_s(Evidence{}, 0, 1000), 0.0, 1e-9);
}

}  // namespace halfdrop

#include <doctest/doctest.h>

#include <cmath>

#include "game/demonstrator/demonstrator.h"
#include "game/demonstrator/mistakes.h"
#include "game/marking/drill_marks.h"
#include "tests/support/drill_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

constexpr DrillKind kKinds[] = {DrillKind::read_meniscus, DrillKind::deliver_exactly,
                                DrillKind::fill_without_air, DrillKind::know_apparatus};

MarkedAttempt performed(DrillKind kind, std::uint64_t seed, const std::vector<std::string>& mistakes = {}) {
  const Performance performance = perform(drill_level(kind), seed, "demonstrator", mistakes);
  REQUIRE_MESSAGE(!performance.gave_up, performance.gave_up.value_or(""));
  return mark(performance.attempt);
}

}  // namespace

TEST_CASE("each drill is performed faultlessly, whatever the seed") {
  for (const DrillKind kind : kKinds) {
    for (const std::uint64_t seed : {1ULL, 2ULL, 3ULL, 4ULL, 5ULL}) {
      CAPTURE(std::string(drill_name(kind)));
      CAPTURE(seed);
      const MarkedAttempt marked = performed(kind, seed);
      CHECK(marked.outcome.reproduced);
      CHECK(unmet(marked) == "");
      CHECK(marked.marks.total == marked.marks.of);
    }
  }
}

TEST_CASE("an eye that stays too high reads every picture low") {
  const MarkedAttempt marked = performed(DrillKind::read_meniscus, 3, {"eye-too-high-at-start"});
  const auto& drill = std::get<ReadingDrill>(*marked.drill);
  CHECK(drill.off_level == 30);
  CHECK(drill.errors.mean < -0.1);
  CHECK_NEAR(drill.errors.mean, -drill.off_level_cost_cm3, 0.01);
  CHECK(!finding(marked, "no-bias").met);
  CHECK(!finding(marked, "eye-level").met);
  CHECK(finding(marked, "steady").met);
}

TEST_CASE("mistakes of filling show in the filling drill, each where it belongs") {
  CHECK(unmet(performed(DrillKind::fill_without_air, 2, {"jet-not-filled"})) == "jet-filled");
  CHECK(unmet(performed(DrillKind::fill_without_air, 2, {"funnel-left-in"})) == "funnel-out");
  const MarkedAttempt bare = performed(DrillKind::fill_without_air, 2, {"no-goggles"});
  CHECK(unmet(bare) == "eye-protection");
  CHECK(bare.marks.total == 0.0);
}

TEST_CASE("a burette with hardly any room above its zero mark is filled without running over") {
  const auto level =
      with_values(drill_level(DrillKind::fill_without_air), R"({"burette":{"above_zero_cm3":0.5}})");
  REQUIRE(level.has_value());
  const Performance performance = perform(*level, 2, "tester");
  REQUIRE(!performance.gave_up);
  CHECK(unmet(mark(performance.attempt)) == "");
}

TEST_CASE("a drop left hanging goes into the next volume") {
  const MarkedAttempt marked = performed(DrillKind::deliver_exactly, 2, {"drop-left-at-end"});
  const auto& volumes = std::get<DeliveryDrill>(*marked.drill).volumes;
  for (const VolumeDelivered& volume : volumes) CHECK(volume.hanging_cm3 > 0.03);
  CHECK(*volumes[1].error_cm3() > 0.02);
}

TEST_CASE("a drill has room for the mistakes of its own skill only") {
  const Level reading = drill_level(DrillKind::read_meniscus),
              filling = drill_level(DrillKind::fill_without_air);
  CHECK(has_room_for(reading, "eye-too-high-at-start"));
  CHECK(!has_room_for(reading, "jet-not-filled"));
  CHECK(has_room_for(filling, "jet-not-filled"));
  CHECK(!has_room_for(filling, "no-swirling"));
  CHECK(has_room_for(good_level(), "no-swirling"));
}

}  // namespace halfdrop

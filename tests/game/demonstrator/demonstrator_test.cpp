#include "game/demonstrator/demonstrator.h"

#include <doctest/doctest.h>

#include <cmath>
#include <ctime>

#include "game/marking/marks.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

#if defined(__SANITIZE_ADDRESS__)
#define HALFDROP_SLOWED_DOWN 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define HALFDROP_SLOWED_DOWN 1
#endif
#endif

namespace halfdrop {
namespace {

Level vinegar() {
  auto level = read_level(HALFDROP_SOURCE_FOLDER "/levels/01-spirit-vinegar.json");
  REQUIRE(level.has_value());
  level->flask.fineness = 0.25;  // quicker than a player's
  return *level;
}

double length_s(const Attempt& attempt) { return seconds(attempt.changes.back().tick); }

const Ending& ending(const Attempt& attempt) { return std::get<Ending>(attempt.changes.back().what); }

/// Farthest that two ticked titres of an attempt lie apart.
double spread_cm3(const MarkedAttempt& marked) {
  double least = 1e9, most = -1e9;
  for (const TitreRow& row : marked.titres) {
    if (!row.used) continue;
    least = std::min(least, *row.recorded_cm3);
    most = std::max(most, *row.recorded_cm3);
  }
  return most - least;
}

}  // namespace

TEST_CASE(
    "ten faultless attempts replay, are concordant, right within one per cent and get every technique mark") {
  const Level level = vinegar();
  const auto seeds = static_cast<std::uint64_t>(test::rounds(10, 100));
  for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
    CAPTURE(seed);
    const Performance performance = perform(level, seed, "tester");
    CHECK_FALSE(performance.gave_up.has_value());
    CHECK(ending(performance.attempt).how == "handed in");
    const MarkedAttempt marked = mark(performance.attempt);
    CHECK(marked.outcome.reproduced);
    CHECK(test::unmet(marked) == "");
    CHECK(marked.marks.safe);
    CHECK_NEAR(test::points_lost(marked), 0.0, 1e-12);
    CHECK(spread_cm3(marked) < 0.10 + 1e-9);
    REQUIRE(marked.reported.has_value());
    CHECK_NEAR(*marked.reported / marked.true_value, 1.0, 0.01);
    for (const TitreRow& row : marked.titres) {
      if (row.breakdown) CHECK_NEAR(row.breakdown->remainder_cm3, 0.0, 1e-9);
    }
  }
}

TEST_CASE("the same level and seed give the same attempt, change by change") {
  const Level level = vinegar();
  const Attempt one = perform(level, 7, "tester").attempt;
  const Attempt other = perform(level, 7, "tester").attempt;
  CHECK(one.changes == other.changes);
  CHECK(one.changes != perform(level, 8, "tester").attempt.changes);
}

TEST_CASE("the hands never go faster than a bench allows") {
  const Attempt attempt = perform(vinegar(), 7, "tester").attempt;
  // A trial and two accurate runs take a practised person ten to thirty minutes (common practice).
  CHECK(length_s(attempt) > 600.0);
  CHECK(length_s(attempt) < 1800.0);
  Tick before = 0;
  for (const Change& change : attempt.changes) {
    CHECK(change.tick >= before);
    before = change.tick;
  }
}

TEST_CASE("a burette that runs down before the endpoint is given up, not faked") {
  Level level = vinegar();
  level.sample.unknown_mol_dm3 = {0.4, 0.4};  // needs 100 cm3
  const Performance performance = perform(level, 1, "tester");
  REQUIRE(performance.gave_up.has_value());
  CHECK(performance.gave_up->find("burette ran down") != std::string::npos);
  CHECK(ending(performance.attempt).how == "left");
  CHECK(mark(performance.attempt).outcome.reproduced);
}

TEST_CASE("performing and marking are each fifty times faster than real time") {
#if defined(HALFDROP_SLOWED_DOWN) || !defined(NDEBUG)
  MESSAGE("left out: this build is slowed down by its checks");
#else
  const Level level = vinegar();
  const std::clock_t begin = std::clock();
  const Attempt attempt = perform(level, 7, "tester").attempt;
  const std::clock_t performed = std::clock();
  const MarkedAttempt marked = mark(attempt);
  const std::clock_t done = std::clock();
  const double perform_s = static_cast<double>(performed - begin) / CLOCKS_PER_SEC;
  const double mark_s = static_cast<double>(done - performed) / CLOCKS_PER_SEC;
  CAPTURE(perform_s);
  CAPTURE(mark_s);
  CHECK(length_s(attempt) > 50.0 * perform_s);
  CHECK(length_s(attempt) > 50.0 * mark_s);
#endif
}

}  // namespace halfdrop

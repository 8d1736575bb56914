#include "game/demonstrator/mistakes.h"

#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "game/demonstrator/demonstrator.h"
#include "game/marking/marks.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

namespace halfdrop {
namespace {

constexpr std::uint64_t kSeed = 3;

const Level& vinegar() {
  static const Level level = [] {
    Level coarse = read_level(HALFDROP_SOURCE_FOLDER "/levels/01-spirit-vinegar.json").value();
    coarse.flask.fineness = 0.25;  // quicker than a player's
    return coarse;
  }();
  return level;
}

/// The level as a player has it: where nothing is swirled, the fineness of the grid tells in the titre.
const Level& whole_vinegar() {
  static const Level level = read_level(HALFDROP_SOURCE_FOLDER "/levels/01-spirit-vinegar.json").value();
  return level;
}

MarkedAttempt marked_with(const std::vector<std::string>& mistakes, const Level& level = vinegar()) {
  const Performance performance = perform(level, kSeed, "tester", mistakes);
  CHECK_FALSE(performance.gave_up.has_value());
  return mark(performance.attempt);
}

const MarkedAttempt& faultless() {
  static const MarkedAttempt marked = marked_with({});
  return marked;
}

/// What a mistake changed a cause by: at most in one accurate run, and on average over them.
struct Shift {
  double largest_cm3 = 0.0, mean_cm3 = 0.0;
};

Shift change_of(Cause cause, const MarkedAttempt& wrong) {
  Shift change;
  double sum = 0.0;
  int runs = 0;
  for (const TitreRow& row : wrong.titres) {
    if (row.run == "trial" || !row.breakdown) continue;
    for (const TitreRow& right : faultless().titres) {
      if (right.run != row.run || !right.breakdown) continue;
      const double by = row.breakdown->of(cause) - right.breakdown->of(cause);
      if (std::fabs(by) > std::fabs(change.largest_cm3)) change.largest_cm3 = by;
      sum += by;
      ++runs;
    }
  }
  REQUIRE(runs > 0);
  change.mean_cm3 = sum / runs;
  return change;
}

/// Rounding aside: up to 0.05 cm3 a reading either way, as the meniscus happens to stand between the marks.
Cause changed_most(const MarkedAttempt& wrong) {
  Cause most = Cause::misreading;
  for (std::size_t i = 0; i < kCauses; ++i) {
    const auto cause = static_cast<Cause>(i);
    if (cause == Cause::rounding) continue;
    const double by = std::fabs(change_of(cause, wrong).mean_cm3);
    if (by > std::fabs(change_of(most, wrong).mean_cm3)) most = cause;
  }
  return most;
}

}  // namespace

TEST_CASE("every mistake of the catalogue can be found by its name, once") {
  std::set<std::string_view> names;
  for (const Mistake& mistake : mistakes()) {
    CHECK(names.insert(mistake.name).second);
    CHECK(find_mistake(mistake.name) == &mistake);
  }
  CHECK(find_mistake("no such mistake") == nullptr);
}

TEST_CASE("a mistake changes the cause it is listed with most, with the listed sign and size") {
  int played = 0;
  for (const Mistake& mistake : mistakes()) {
    if (!mistake.cause) continue;
    if (test::kSanitized && ++played > 3) break;  // the rest would find no other fault of memory
    CAPTURE(mistake.name);
    const bool whole = mistake.name == "no-swirling" && !test::kSanitized;
    const MarkedAttempt wrong = marked_with({std::string(mistake.name)}, whole ? whole_vinegar() : vinegar());
    CHECK(cause_id(changed_most(wrong)) == cause_id(*mistake.cause));
    const Shift change = change_of(*mistake.cause, wrong);
    if (mistake.titre == "high") CHECK(change.mean_cm3 > 0.0);
    if (mistake.titre == "low") CHECK(change.mean_cm3 < 0.0);
    // What goes either way scatters: of ten seeds' sizes the middle half lies within a factor of two.
    const double share = mistake.titre == "either" ? 1.0 : 0.25;
    CHECK(std::fabs(change.largest_cm3) > mistake.typical_cm3 / 2.0);
    CHECK_NEAR(std::fabs(change.largest_cm3), mistake.typical_cm3, 0.02 + share * mistake.typical_cm3);
  }
}

TEST_CASE("a trial taken into the mean raises the mean and changes no titre") {
  const MarkedAttempt wrong = marked_with({"trial-in-mean"});
  CHECK(test::titre(wrong, "trial").used);
  CHECK(test::unmet(wrong) == "trial-kept-out");
  REQUIRE(wrong.mean_titre_cm3.has_value());
  CHECK_NEAR(*wrong.mean_titre_cm3 - *faultless().mean_titre_cm3, find_mistake("trial-in-mean")->typical_cm3,
             0.03);
  for (const TitreRow& row : wrong.titres) {
    CHECK_NEAR(*row.recorded_cm3, *test::titre(faultless(), row.run).recorded_cm3, 1e-9);
  }
}

TEST_CASE("without goggles every titre is the same and nothing counts") {
  const MarkedAttempt wrong = marked_with({"no-goggles"});
  CHECK_FALSE(wrong.marks.safe);
  CHECK(wrong.marks.total == 0.0);
  CHECK_NEAR(test::points_lost(wrong), 0.0, 1e-12);
  for (const TitreRow& row : wrong.titres) {
    CHECK_NEAR(*row.recorded_cm3, *test::titre(faultless(), row.run).recorded_cm3, 1e-9);
  }
}

TEST_CASE("what leaks on to the bench is mopped up: it costs in the titre, not in safety") {
  const MarkedAttempt wrong = marked_with({"tap-leaks"});
  CHECK(wrong.marks.safe);
  CHECK(wrong.marks.total > 0.0);
}

TEST_CASE("two mistakes together change both of their causes") {
  const MarkedAttempt wrong = marked_with({"eye-too-high-at-start", "overshoot"});
  CHECK_NEAR(change_of(Cause::parallax_initial, wrong).mean_cm3, 0.124, 0.02);
  CHECK_NEAR(change_of(Cause::overshoot, wrong).mean_cm3, 0.29, 0.06);
}

TEST_CASE("an eye 110 mm high misreads by what the geometry of the sight line says") {
  // Snell by hand, 110 mm over 300 mm to the scale: glass and liquid shift the axis by 1.66 mm, and the
  // tangent to the bowl passes it 0.30 mm lower; at 11.0 mm a cm3 that is 0.124 cm3.
  CHECK_NEAR(change_of(Cause::parallax_final, marked_with({"eye-too-high-at-end"})).mean_cm3, -0.124, 0.002);
}

}  // namespace halfdrop

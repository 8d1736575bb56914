#include "game/demonstrator/mistakes.h"

#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "tests/support/against_faultless.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

const test::AgainstFaultless& bench() {
  static const test::AgainstFaultless vinegar("levels/01-spirit-vinegar.json");
  return vinegar;
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

TEST_CASE("a trial taken into the mean raises the mean and changes no titre") {
  const MarkedAttempt wrong = bench().with("trial-in-mean");
  CHECK(test::titre(wrong, "trial").used);
  CHECK(test::unmet(wrong) == "trial-kept-out");
  REQUIRE(wrong.mean_titre_cm3.has_value());
  CHECK_NEAR(*wrong.mean_titre_cm3 - *bench().right().mean_titre_cm3,
             find_mistake("trial-in-mean")->typical_cm3, 0.03);
  for (const TitreRow& row : wrong.titres) {
    CHECK_NEAR(*row.recorded_cm3, *test::titre(bench().right(), row.run).recorded_cm3, 1e-9);
  }
}

TEST_CASE("without goggles every titre is the same and nothing counts") {
  const MarkedAttempt wrong = bench().with("no-goggles");
  CHECK_FALSE(wrong.marks.safe);
  CHECK(wrong.marks.total == 0.0);
  CHECK_NEAR(test::points_lost(wrong), 0.0, 1e-12);
  for (const TitreRow& row : wrong.titres) {
    CHECK_NEAR(*row.recorded_cm3, *test::titre(bench().right(), row.run).recorded_cm3, 1e-9);
  }
}

TEST_CASE("what leaks on to the bench is mopped up: it costs in the titre, not in safety") {
  const MarkedAttempt wrong = bench().with("tap-leaks");
  CHECK(wrong.marks.safe);
  CHECK(wrong.marks.total > 0.0);
}

TEST_CASE("two mistakes together change both of their causes") {
  const MarkedAttempt wrong = bench().performed({"eye-too-high-at-start", "overshoot"});
  CHECK_NEAR(bench().change_of(Cause::parallax_initial, wrong).mean_cm3, 0.124, 0.02);
  CHECK_NEAR(bench().change_of(Cause::overshoot, wrong).mean_cm3, 0.29, 0.06);
}

TEST_CASE("an eye 110 mm off level misreads by what the geometry of the sight line says") {
  // Snell by hand, 110 mm over 300 mm to the scale: glass and liquid shift the axis by 1.66 mm, and the
  // tangent to the bowl passes it 0.30 mm lower; at 11.0 mm a cm3 that is 0.124 cm3 from above, where the two
  // go against each other, and 0.178 cm3 from below, where they add up.
  CHECK_NEAR(bench().change_of(Cause::parallax_final, bench().with("eye-too-high-at-end")).mean_cm3, -0.124,
             0.002);
  CHECK_NEAR(bench().change_of(Cause::parallax_final, bench().with("eye-too-low-at-end")).mean_cm3, 0.178,
             0.002);
}

}  // namespace halfdrop

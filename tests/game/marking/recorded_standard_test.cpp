#include "game/level/standard_to_make.h"

#include <doctest/doctest.h>

#include <cmath>

#include "game/marking/calculation.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop::test {
namespace {

Level acid() {
  const Result<Level> level = read_level(source_file("levels/03-standard-acid.json"));
  REQUIRE_MESSAGE(level.has_value(), why_not(level));
  return *level;
}

std::string fault_of(const std::string& patch) {
  const Result<Level> level = with_values(acid(), patch);
  return level ? std::string() : level.error().front().place + ": " + level.error().front().message;
}

}  // namespace

// Na2CO3 105.988 g/mol (IUPAC's standard atomic weights): 1.3542 g in 250 cm3.
TEST_CASE("what was recorded makes the label and goes through the working") {
  const Level level = as_weighed(acid(), 21.3542, 20.0);
  CHECK_NEAR(level.sample.label_mol_dm3, 1.3542 / 105.988 / 0.250, 2e-7);
  CHECK(level_value(level, kBottleBefore).value() == 21.3542);
  CHECK(level_value(level, "volumetric_flask_cm3").value() == 250.0);
  const double by_hand = 2.0 * 1.3542 / 105.99 / 10.0 / 25.00 * 1000.0;
  CHECK_NEAR(*result_from_mean(level, 25.00), by_hand, 1e-12);
}

TEST_CASE("bottle, solid, flask and balance are drawn within their limits, each seed its own") {
  const Level level = acid();
  double lowest_cm3 = 1e9, highest_cm3 = 0.0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const PreparationSpec spec = drawn_preparation(level, seed);
    CHECK(spec.asked);
    CHECK(spec.solid_g > level.standard->mass_g.high);
    CHECK(std::fabs(spec.true_flask_cm3 - 250.0) <= 0.15);
    for (const double error_g : spec.balance_error_g) CHECK(std::fabs(error_g) <= 0.001);
    lowest_cm3 = std::min(lowest_cm3, spec.true_flask_cm3);
    highest_cm3 = std::max(highest_cm3, spec.true_flask_cm3);
  }
  CHECK(highest_cm3 - lowest_cm3 > 0.25);
}

TEST_CASE("a level without it has no preparation and no cells of it") {
  const Level level = good_level();
  CHECK_FALSE(drawn_preparation(level, 1).asked);
  CHECK_FALSE(level_value(level, kBottleBefore).has_value());
}

TEST_CASE("what a standard to be made cannot be is said with its place") {
  CHECK(fault_of(R"({"weighed_standard":{"mass_g":[1.5,1.2]}})").find("not below the most") !=
        std::string::npos);
  CHECK(fault_of(R"({"weighed_standard":{"mass_g":[2.2,2.5]}})").starts_with("/level/sample/mol_dm3"));
  CHECK(fault_of(R"({"sample":{"carbonate_mol_dm3":0.01}})").find("leave also") != std::string::npos);
  CHECK(fault_of(R"({"weighed_standard":{"mass_mg":[1,2]}})").find("mass_mg") != std::string::npos);
  CHECK(fault_of(R"({"calculation":[
    {"cell":"calculation/mean titre","prompt":"Mean","unit":"cm³","least_figures":4},
    {"cell":"calculation/acid","prompt":"Acid","unit":"mol dm⁻³","least_figures":4,
     "multiply":["sample_mol_dm3"]}]})")
            .find("work it out from the weighings") != std::string::npos);
}

}  // namespace halfdrop::test

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "game/level/assets.h"
#include "game/level/level.h"
#include "physics/burette/column.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

using namespace halfdrop;
using namespace halfdrop::test;

TEST_SUITE("bench of a level") {
  TEST_CASE("no volume between two marks is off by more than the class limit") {
    // ISO 385: the limit holds for any two marks (from memory).
    const Level level = good_level();
    double widest = 0.0;
    for (std::uint64_t seed = 0; seed < 400; ++seed) {
      const BuretteSpec burette = bench_spec(level, seed).burette;
      double lowest = 0.0, highest = 0.0;
      for (int mark = 0; mark <= 500; ++mark) {
        const double error = true_volume_cm3(burette, mark * 0.1) - mark * 0.1;
        lowest = std::min(lowest, error);
        highest = std::max(highest, error);
      }
      CHECK(highest - lowest <= 0.05 + 1e-12);
      widest = std::max(widest, highest - lowest);
    }
    CHECK(widest > 0.03);  // the limit is used, not just kept
  }
  TEST_CASE("a pipette delivers within its class limit, to either side") {
    const Level level = good_level();
    double least = 25.0, most = 25.0;
    for (std::uint64_t seed = 0; seed < 400; ++seed) {
      const PipetteSpec pipette = drawn_bench_spec(level, seed).pipette;
      CHECK(pipette.nominal_cm3 == 25.0);
      CHECK(std::abs(pipette.true_cm3 - 25.0) <= 0.06);
      least = std::min(least, pipette.true_cm3);
      most = std::max(most, pipette.true_cm3);
    }
    CHECK(least < 24.95);
    CHECK(most > 25.05);
  }
  TEST_CASE("the unknown is drawn in steps of 0.0001, both ends included") {
    Level level = good_level();
    level.sample.unknown_mol_dm3 = {0.0798, 0.0801};
    std::set<double> drawn;
    for (std::uint64_t seed = 0; seed < 200; ++seed)
      drawn.insert(drawn_bench_spec(level, seed).sample.true_mol_dm3);
    CHECK(drawn == std::set<double>{0.0798, 0.0799, 0.08, 0.0801});
  }
  TEST_CASE("each unknown of the range is as likely as any other") {
    // 201 strengths, 20100 draws: 100 each, standard deviation 10. Chi-square with 200 degrees of freedom has
    // mean 200 and standard deviation 20; the draw is fixed by the seeds.
    const Level level = good_level();
    std::array<int, 201> counts{};
    for (std::uint64_t seed = 0; seed < 20100; ++seed) {
      const double strength = drawn_bench_spec(level, seed).sample.true_mol_dm3;
      ++counts.at(static_cast<std::size_t>(std::lround(strength * 1e4)) - 760);
    }
    double chi_square = 0.0;
    for (const int count : counts) chi_square += (count - 100.0) * (count - 100.0) / 100.0;
    CHECK(chi_square > 120.0);
    CHECK(chi_square < 280.0);
  }
  TEST_CASE("the draws do not shift each other") {
    Level level = good_level();
    const BenchSpec before = bench_spec(level, 5);
    level.burette_tolerance_cm3 = 0.0;
    level.sample.unknown_mol_dm3 = {0.08, 0.08};
    const BenchSpec after = bench_spec(level, 5);
    CHECK(after.burette.scale_linear_cm3 == 0.0);
    CHECK(after.sample.true_mol_dm3 == 0.08);
    CHECK(after.pipette.true_cm3 == before.pipette.true_cm3);
  }
  TEST_CASE("the same seed makes the same bench; another seed another") {
    const Level level = good_level();
    CHECK(bench_spec(level, 9).sample.true_mol_dm3 == bench_spec(level, 9).sample.true_mol_dm3);
    CHECK(bench_spec(level, 9).pipette.true_cm3 == bench_spec(level, 9).pipette.true_cm3);
    CHECK(bench_spec(level, 9).pipette.true_cm3 != bench_spec(level, 10).pipette.true_cm3);
  }
  TEST_CASE("the unknown can stand in the burette") {
    Level level = good_level();
    level.unknown_in_flask = false;
    level.titrant.label_mol_dm3 = 0.0;
    level.titrant.unknown_mol_dm3 = {0.09, 0.11};
    level.sample.label_mol_dm3 = 0.1;
    const BenchSpec spec = bench_spec(level, 3);
    CHECK(spec.titrant.true_mol_dm3 >= 0.09);
    CHECK(spec.titrant.true_mol_dm3 <= 0.11);
    CHECK(spec.sample.true_mol_dm3 == 0.1);
    CHECK(spec.breakdown_mol_dm3() == spec.titrant.true_mol_dm3);
    CHECK(level_value(level, "sample_mol_dm3").value() == 0.1);
    CHECK_FALSE(level_value(level, "titrant_mol_dm3").has_value());
  }
  TEST_CASE("a carbonate's own carbon is kept with the carbon dioxide of the air") {
    Level level = good_level();
    const Assets assets = read_assets(HALFDROP_SOURCE_FOLDER).value();
    level.sample_substance = assets.substances.at("sodium carbonate").value;
    REQUIRE(level.sample_substance.systems.size() == 1);
    const BenchSpec spec = bench_spec(level, 1);
    CHECK(spec.sample.carbonate_per_mol == 1.0);
    CHECK(spec.sample.substance.systems.empty());
    CHECK(spec.titrant.carbonate_per_mol == 0.0);
  }
  TEST_CASE("the jet ends just inside the neck of whatever flask there is") {
    Level level = good_level();
    CHECK_NEAR(bench_spec(level, 1).tip_above_bench_cm, level.flask.height_cm - 0.8, 1e-12);
    level.flask.height_cm = 16.0;
    CHECK_NEAR(bench_spec(level, 1).tip_above_bench_cm, 15.2, 1e-12);
  }
}

#include "game/level/level.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

#include "physics/burette/column.h"
#include "tests/support/good_level.h"
#include "tests/support/json.h"
#include "tests/support/near.h"
#include "tests/support/noise.h"

using namespace halfdrop;
using namespace halfdrop::test;

TEST_SUITE("level") {
  TEST_CASE("the first level is read whole") {
    const Level level = good_level();
    CHECK(level.id == "01-spirit-vinegar");
    CHECK(level.titrant_substance.name == "sodium hydroxide");
    CHECK(level.sample_substance.systems.size() == 1);
    CHECK_FALSE(level.indicator_data.bands.empty());
    CHECK(level.unknown_in_flask);
    CHECK(level.burette_tolerance_cm3 == 0.05);  // ISO 385, class A, 50 cm3
    CHECK(level.pipette_tolerance_cm3 == 0.06);  // ISO 648, class B, 25 cm3
    CHECK(level.calculation.size() == 5);
    CHECK(level.calculation[0].multiply.empty());
    CHECK(std::get<std::string>(level.calculation[4].multiply[1]) == "dilution");
    CHECK(std::get<double>(level.calculation[3].multiply[1]) == 1000.0);
    CHECK(level.hand_bands.size() == 4);
    CHECK(level.cautions.size() == 2);
  }
  TEST_CASE("the first level's titres lie between 19 and 24 cm3, whatever the seed") {
    const Level level = good_level();
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
      const BenchSpec spec = bench_spec(level, seed);
      // c V = c V, one to one
      const double titre_cm3 = spec.sample.true_mol_dm3 * 25.0 / 0.1;
      CHECK(titre_cm3 >= 19.0 - 1e-9);
      CHECK(titre_cm3 <= 24.0 + 1e-9);
    }
  }
  TEST_CASE("the working of the first level gives the drum's strength") {
    // By hand: 21.25 cm3 of 0.1000 mol/dm3 on 25.0 cm3 is 0.0850 mol/dm3, ten times that is 0.850.
    const Level level = good_level();
    std::vector<double> values;
    for (const CalculationStep& step : level.calculation) {
      const auto value_of = [&](const Factor& factor) {
        if (const double* number = std::get_if<double>(&factor)) return *number;
        const std::string& name = std::get<std::string>(factor);
        for (std::size_t i = 0; i < values.size(); ++i) {
          if (level.calculation[i].cell == name) return values[i];
        }
        return level_value(level, name).value();
      };
      double value = values.empty() ? 21.25 : 1.0;
      for (const Factor& factor : step.multiply) value *= value_of(factor);
      for (const Factor& factor : step.divide) value /= value_of(factor);
      values.push_back(value);
    }
    CHECK_NEAR(values[1], 2.125e-3, 1e-12);
    CHECK_NEAR(values[3], 0.0850, 1e-12);
    CHECK_NEAR(values[4], 0.850, 1e-12);
  }
  TEST_CASE("level values go by name, and the unknown has none") {
    const Level level = good_level();
    CHECK(level_value(level, "titrant_mol_dm3").value() == 0.1);
    CHECK(level_value(level, "aliquot_cm3").value() == 25.0);
    CHECK(level_value(level, "ratio").value() == 1.0);
    CHECK(level_value(level, "dilution").value() == 10.0);
    CHECK_FALSE(level_value(level, "sample_mol_dm3").has_value());
    CHECK_FALSE(level_value(level, "").has_value());
    CHECK_FALSE(level_value(level, "title").has_value());
  }
  TEST_CASE("a bench may be as cold as 5 C and as warm as 40 C") {
    for (const double temperature_c : {5.0, 40.0}) {
      CAPTURE(temperature_c);
      const std::string patch =
          R"([{"op":"replace","path":"/temperature_c","value":)" + std::to_string(temperature_c) + "}]";
      const auto level = read_level_text(patched(good_level().source_json, patch.c_str()),
                                         good_level().substances_json, "attempt");
      REQUIRE_MESSAGE(level.has_value(), why_not(level));
      CHECK(bench_spec(*level, 1).temperature_c == temperature_c);
    }
  }
  TEST_CASE("a level travels in an attempt as text and comes back the same") {
    const Level level = good_level();
    const auto again = read_level_text(level.source_json, level.substances_json, "attempt");
    REQUIRE_MESSAGE(again.has_value(), why_not(again));
    CHECK(again->id == level.id);
    CHECK(again->source_json == level.source_json);
    CHECK(again->substances_json == level.substances_json);
    for (std::uint64_t seed : {0u, 1u, 77u}) {
      const BenchSpec a = bench_spec(level, seed), b = bench_spec(*again, seed);
      CHECK(a.sample.true_mol_dm3 == b.sample.true_mol_dm3);
      CHECK(a.pipette.true_cm3 == b.pipette.true_cm3);
      CHECK(a.burette.scale_bow_cm3 == b.burette.scale_bow_cm3);
      CHECK(a.indicator.bands[0].width_nm == b.indicator.bands[0].width_nm);
    }
  }
  TEST_CASE("in an attempt a level needs its id and exactly its own substances") {
    const Level level = good_level();
    const std::string without_id = patched(level.source_json, R"([{"op":"remove","path":"/id"}])");
    const auto no_id = read_level_text(without_id, level.substances_json, "attempt");
    REQUIRE_FALSE(no_id.has_value());
    CHECK(has_fault_at(no_id.error(), "/level/id"));

    const std::string more =
        patched(level.substances_json, R"([{"op":"copy","from":"/ethanoic acid","path":"/sherbet"}])");
    const auto extra = read_level_text(level.source_json, more, "attempt");
    REQUIRE_FALSE(extra.has_value());
    CHECK(has_fault_at(extra.error(), "/substances/sherbet"));

    const std::string fewer = patched(level.substances_json, R"([{"op":"remove","path":"/ethanoic acid"}])");
    const auto less = read_level_text(level.source_json, fewer, "attempt");
    REQUIRE_FALSE(less.has_value());
    CHECK(has_fault_at(less.error(), "/level/sample/substance"));
  }
  TEST_CASE("HALFDROP_DATA says where the data are; without it they are found") {
    CHECK(data_folder() == HALFDROP_SOURCE_FOLDER);
    const TemporaryFolder elsewhere;
    ::setenv("HALFDROP_DATA", elsewhere.file("").c_str(), 1);
    const auto read = read_level(good_level_path());
    ::unsetenv("HALFDROP_DATA");
    REQUIRE_FALSE(read.has_value());
    REQUIRE(read.error().size() == 2);
    CHECK(read.error()[0].file == elsewhere.file("assets/substances.json"));
    CHECK(read.error()[1].file == elsewhere.file("assets/indicators.json"));
    CHECK(exit_status(read.error()) == 3);
  }
  TEST_CASE("damaged levels never crash, and what is still read makes a bench") {
    const Level level = good_level();
    Random random = Random::stream(20, 0, Purpose::unknown);
    int sound = 0;
    for (int i = 0; i < 4000; ++i) {
      const bool level_damaged = below(random, 4) != 0;
      const std::string text = level_damaged ? damaged(level.source_json, random) : level.source_json;
      const std::string shelf =
          level_damaged ? level.substances_json : damaged(level.substances_json, random);
      const auto read = read_level_text(text, shelf, "damaged");
      if (!read) {
        REQUIRE_FALSE(read.error().empty());
        continue;
      }
      ++sound;
      const BenchSpec spec = bench_spec(*read, 1);
      REQUIRE(std::isfinite(spec.settled.full_drop_cm3));
      REQUIRE(spec.settled.full_drop_cm3 > 0.0);
    }
    // A letter changed in the story leaves a sound level; damage to a key does not.
    CHECK(sound > 100);
    CHECK(sound < 3900);
  }
  TEST_CASE("a level cut off anywhere is a fault") {
    const Level level = good_level();
    for (std::size_t length = 0; length < level.source_json.size(); length += 7) {
      const auto read = read_level_text(level.source_json.substr(0, length), level.substances_json, "cut");
      REQUIRE_FALSE(read.has_value());
      REQUIRE(exit_status(read.error()) == 3);
    }
  }
}

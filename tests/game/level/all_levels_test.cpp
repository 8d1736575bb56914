// Every level of the shelf: sound, on the burette, and its working right by formulas written out here a
// second time, with molar masses typed in again (IUPAC's standard atomic weights, from memory: KHC8H4O4
// 204.22, Na2CO3 105.99, H2O 18.015, NH3 17.031, C6H8O7 192.12, Ca(OH)2 74.09, CaCO3 100.09, C9H8O4 180.16
// g/mol).

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <functional>
#include <map>

#include "game/level/endpoint_checks.h"
#include "game/level/level.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop::test {
namespace {

std::vector<std::string> level_paths() {
  std::vector<std::string> paths;
  for (const auto& entry : std::filesystem::directory_iterator(source_file("levels"))) {
    const std::string name = entry.path().filename().string();
    if (entry.path().extension() == ".json" && name != "schema.json") paths.push_back(entry.path().string());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

Level level_at(const std::string& path) {
  const Result<Level> level = read_level(path);
  REQUIRE_MESSAGE(level.has_value(), why_not(level));
  return *level;
}

/// The level's file named `id`.
Level level_named(const std::string& id) { return level_at(source_file("levels/" + id + ".json")); }

/// What the level's own working makes of a titre; multiplication and sums written out a second time.
double worked(const Level& level, double titre_cm3) {
  std::map<std::string, double> cells;
  double value = titre_cm3;
  for (const CalculationStep& step : level.calculation) {
    const auto of = [&](const Factor& factor) {
      if (const double* const number = std::get_if<double>(&factor)) return *number;
      const std::string& name = std::get<std::string>(factor);
      const auto cell = cells.find(name);
      return cell == cells.end() ? level_value(level, name).value() : cell->second;
    };
    if (&step != &level.calculation.front()) {
      value = step.multiply.empty() ? 0.0 : 1.0;
      for (const Factor& factor : step.multiply) value *= of(factor);
      for (const Factor& factor : step.divide) value /= of(factor);
      for (const Factor& factor : step.plus) value += of(factor);
      for (const Factor& factor : step.minus) value -= of(factor);
    }
    cells[step.cell] = value;
  }
  return value;
}

/// The unknown c of a level (mol/dm3) -> its titre (cm3) and what the paper's last line asks for.
struct ByHand {
  const char* id;
  std::function<double(double c)> titre_cm3, result;
};

const std::vector<ByHand>& by_hand() {
  static const std::vector<ByHand> all = {
      {"01-spirit-vinegar", [](double c) { return 25.0 * c / 0.1; }, [](double c) { return 10.0 * c; }},
      {"02-standard-alkali", [](double c) { return 5.200 / 204.22 / 10.0 / c * 1000.0; },
       [](double c) { return c; }},
      {"03-standard-acid", [](double c) { return 2.0 * 1.350 / 105.99 / 10.0 / c * 1000.0; },
       [](double c) { return c; }},
      {"04-washing-soda", [](double c) { return 2.0 * 25.0 * c / 0.1; },
       [](double c) { return (3.000 / (0.250 * c) - 105.99) / 18.015; }},
      {"05-ammonia-cleaner", [](double c) { return 25.0 * c / 0.1; },
       [](double c) { return 25.0 * c * 17.031; }},
      {"06-citric-descaler", [](double c) { return 3.0 * 25.0 * c / 0.1; },
       [](double c) { return 100.0 * 0.250 * c * 192.12 / 1.600; }},
      {"07-limewater", [](double c) { return 2.0 * 25.0 * c / 0.05; }, [](double c) { return 74.09 * c; }},
      {"08-pool-water", [](double c) { return 100.0 * c / 0.01; },
       [](double c) { return c / 2.0 * 100.09 * 1000.0; }},
      // The alkali to begin with, 19.84 x 0.05 / 10 mol/dm3 in 250 cm3, less what is left over; two to each
      // aspirin, four tablets.
      {"10-aspirin-tablets", [](double c) { return 25.0 * c / 0.05; },
       [](double c) { return (19.84 * 0.05 / 10.0 - c) * 0.250 / 2.0 * 180.16 / 4.0 * 1000.0; }}};
  return all;
}

}  // namespace

TEST_CASE(
    "every level is sound; only methyl orange in carbonates and pool water, and two endpoints, are warned "
    "of") {
  for (const std::string& path : level_paths()) {
    CAPTURE(path);
    const Level level = level_at(path);
    const EndpointChecks found = check_endpoint(level, path);
    CHECK_MESSAGE(found.faults.empty(), all_of(found.faults));
    if (level.then) {
      CHECK(found.warnings.size() == 2);  // both endpoints are soft, and `why` tells it
      for (const Fault& warning : found.warnings) CHECK(warning.message.find("gradual") != std::string::npos);
      CHECK(level.why.find("Both endpoints are soft") != std::string::npos);
    } else if (level.indicator != "methyl orange") {
      CHECK_MESSAGE(found.warnings.empty(), all_of(found.warnings));
    } else {
      // The story's `why` tells it: gradual.
      for (const Fault& warning : found.warnings)
        CHECK_MESSAGE(warning.message.find("the change of methyl orange is gradual") != std::string::npos,
                      warning.message);
      CHECK((level.why.find("gradual") != std::string::npos || level.why.find("soft") != std::string::npos ||
             level.why.find("does not snap over") != std::string::npos));
    }
  }
}

TEST_CASE("the ideal titre of every unknown lies between 15 and 35 cm3 and gives the unknown back") {
  for (const ByHand& one : by_hand()) {
    CAPTURE(one.id);
    const Level level = level_named(one.id);
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
      const BenchSpec spec = drawn_bench_spec(level, seed);
      const double c = level.unknown_in_flask ? spec.sample.true_mol_dm3 : spec.titrant.true_mol_dm3;
      const double titre_cm3 = one.titre_cm3(c);
      CHECK(titre_cm3 > 15.0);
      CHECK(titre_cm3 < 35.0);
      // What the bench calls the ideal titre: ratio x sample / titrant.
      const double flask = level.unknown_in_flask ? c : level.sample.label_mol_dm3;
      const double burette = level.unknown_in_flask ? level.titrant.label_mol_dm3 : c;
      CHECK_NEAR(level.ratio * flask * level.aliquot_cm3 / burette / titre_cm3, 1.0, 1e-5);
      CHECK_NEAR(worked(level, titre_cm3) / one.result(c), 1.0, 1e-4);
    }
  }
}

TEST_CASE("each end of the range keeps to the burette too") {
  for (const ByHand& one : by_hand()) {
    CAPTURE(one.id);
    const Level level = level_named(one.id);
    const Range& range =
        level.unknown_in_flask ? level.sample.unknown_mol_dm3 : level.titrant.unknown_mol_dm3;
    for (const double c : {range.low, range.high}) {
      CHECK(one.titre_cm3(c) > 15.0);
      CHECK(one.titre_cm3(c) < 35.0);
    }
  }
}

TEST_CASE("what stands beside the sample keeps its strength, whatever the unknown's is, and travels along") {
  const Level level = level_named("10-aspirin-tablets");
  CHECK(level.substances_json.find("\"sodium salicylate\":") != std::string::npos);
  CHECK(level.substances_json.find("\"sodium ethanoate\":") != std::string::npos);
  for (const std::uint64_t seed : {1u, 2u, 3u}) {
    const BottleSpec sample = drawn_bench_spec(level, seed).sample;
    // By hand: c of NaOH brings c of Na+, each salt 0.0266 more.
    CHECK_NEAR(sample.substance.strong_charge() * sample.true_mol_dm3, sample.true_mol_dm3 + 2.0 * 0.0266,
               1e-12);
    REQUIRE(sample.substance.systems.size() == 2);
    for (const AcidSystem& system : sample.substance.systems)
      CHECK_NEAR(system.count * sample.true_mol_dm3, 0.0266, 1e-12);
  }
  const Result<Level> again = read_level_text(level.source_json, level.substances_json, "attempt");
  REQUIRE_MESSAGE(again.has_value(), why_not(again));
  CHECK(again->substances_json == level.substances_json);
  CHECK(again->sample.also.size() == 2);
}

}  // namespace halfdrop::test

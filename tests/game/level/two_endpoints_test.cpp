// A level with two endpoints: its keys, its faults with place and message, its sheet.

#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "game/level/endpoint_checks.h"
#include "game/level/level.h"
#include "tests/support/good_level.h"
#include "tests/support/json.h"
#include "tests/support/near.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

Level two_endpoints() {
  const Result<Level> level = read_level(source_file("levels/09-baked-baking-soda.json"));
  REQUIRE_MESSAGE(level.has_value(), why_not(level));
  return *level;
}

/// "place: message" of the first fault of a changed level; empty when it has none.
std::string first_fault(const std::string& patch) {
  const TemporaryFolder folder;
  Json values = json_of(text_of(source_file("levels/09-baked-baking-soda.json")));
  values.merge_patch(json_of(patch));
  const Result<Level> changed = read_level(folder.file("level.json", compact(values)));
  if (changed) {
    const EndpointChecks found = check_endpoint(*changed, "level.json");
    return found.faults.empty() ? "" : found.faults.front().place + ": " + found.faults.front().message;
  }
  return changed.error().front().place + ": " + changed.error().front().message;
}

}  // namespace

TEST_CASE("what follows the first endpoint is read, and travels with an attempt") {
  const Level level = two_endpoints();
  REQUIRE(level.then);
  CHECK(level.then->indicator_data.name == "methyl orange");
  CHECK(level.then->ratio == 2.0);
  REQUIRE(level.then->beside);
  CHECK(level.then->beside->substance.formula == "NaHCO3");
  const Result<Level> again = read_level_text(level.source_json, level.substances_json, "attempt");
  REQUIRE_MESSAGE(again.has_value(), why_not(again));
  CHECK(again->then->beside->substance.formula == "NaHCO3");
  CHECK(again->substances_json == level.substances_json);
}

TEST_CASE("the two unknowns are drawn apart from one another, each in its own range") {
  const Level level = two_endpoints();
  double least = 1.0, most = 0.0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const BenchSpec spec = drawn_bench_spec(level, seed);
    const double second = (spec.then->titrant_per_analyte - 2.0) * spec.sample.true_mol_dm3;
    CHECK(second > level.then->beside->mol_dm3.low - 1e-9);
    CHECK(second < level.then->beside->mol_dm3.high + 1e-9);
    least = std::min(least, second);
    most = std::max(most, second);
  }
  CHECK(most - least > 0.005);
}

TEST_CASE("both endpoints are checked: each is soft, and that is said of each at its own place") {
  const EndpointChecks found = check_endpoint(two_endpoints(), "level.json");
  CHECK_MESSAGE(found.faults.empty(), all_of(found.faults));
  REQUIRE(found.warnings.size() == 2);
  CHECK(found.warnings[0].place == "/indicator");
  CHECK(found.warnings[1].place == "/then/indicator");
}

TEST_CASE("faults of what follows the first endpoint have their place") {
  const auto says = [](const std::string& patch, const char* wanted) {
    const std::string fault = first_fault(patch);
    CHECK_MESSAGE(fault.find(wanted) == 0, fault);
  };
  says(R"({"then":{"indicator":"methyl orrange"}})", "/then/indicator: unknown indicator");
  says(R"({"then":{"ratio":1}})", "/then/ratio: expected more than the first endpoint's");
  says(R"({"then":{"ratio":2.5}})", "/then/ratio: ");
  says(R"({"then":{"beside":{"substance":"gherkins"}}})", "/then/beside/substance: unknown substance");
  says(R"({"then":{"beside":{"ratio":2}}})", "/then/");
  says(R"({"then":{"beside":{"unknown_mol_dm3":[0.2,0.1]}}})",
       "/then/beside/unknown_mol_dm3: expected [lowest, highest]");
  says(R"({"then":{"endpoint":{"within_cm3":3}}})", "/then/endpoint/within_cm3: ");
  says(R"({"then":{"colour":"red"}})", "/then/colour: unknown key");
  says(R"({"then":{"beside":{"unknown_mol_dm3":[0.1,0.12]}}})",
       "/sample/unknown_mol_dm3: the titre can come to");
  says(R"({"then":null})", "/calculation/1/cell: ");
}

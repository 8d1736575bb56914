// A teacher's own level as README.md has it.

#include <doctest/doctest.h>

#include <algorithm>

#include "game/level/endpoint_checks.h"
#include "tests/support/good_level.h"

namespace halfdrop {

TEST_CASE("the level written out in README.md is sound, and shorter than twenty lines") {
  const std::string readme = test::text_of(test::source_file("README.md"));
  const std::string opens = "```json\n";
  const std::size_t from = readme.find(opens) + opens.size(), to = readme.find("```", from);
  REQUIRE(to != std::string::npos);
  const std::string text = readme.substr(from, to - from);
  CHECK(std::count(text.begin(), text.end(), '\n') < 20);
  const test::TemporaryFolder folder;
  const Result<Level> level = read_level(folder.file("my-level.json", text));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  const EndpointChecks checked = check_endpoint(*level, "README.md");
  CHECK(test::all_of(checked.faults) == "");
  CHECK(test::all_of(checked.warnings) == "");
  CHECK(level->unknown_in_flask);
}

}  // namespace halfdrop

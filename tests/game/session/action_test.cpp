#include "game/session/action.h"

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "tests/support/good_level.h"

namespace halfdrop {
namespace {

TEST_CASE("every deed has a name of its own that leads back to it") {
  std::set<std::string_view> names;
  for (int i = 0; i < kDeeds; ++i) {
    const auto deed = static_cast<Deed>(i);
    names.insert(deed_name(deed));
    CHECK(deed_from_name(deed_name(deed)) == deed);
  }
  CHECK(names.size() == static_cast<std::size_t>(kDeeds));
  CHECK(!deed_from_name("lift out the funnel"));
}

TEST_CASE("a hand out of its range is named with the range") {
  HandsChange change;
  change.tap = 1.0;
  CHECK(!check_hands(change));
  change.tap = 1.01;
  CHECK(check_hands(change) == "tap is out of range: expected 0 to 1");
  change.tap = std::numeric_limits<double>::quiet_NaN();
  CHECK(check_hands(change).has_value());
}

TEST_CASE("a counts cell takes a yes or nothing: \"Yes\" would be no tick, and nobody would see it") {
  const Level level = test::good_level();
  CHECK(!check_writing(level, {"1/counts", "yes"}));
  CHECK(!check_writing(level, {"1/counts", ""}));
  for (const char* text : {"Yes", "x", "no", " yes"}) {
    CAPTURE(text);
    REQUIRE(check_writing(level, {"1/counts", text}));
    CHECK(check_writing(level, {"1/counts", text})->find("expected \"yes\"") != std::string::npos);
  }
  CHECK(!check_writing(level, {"1/titre", "Yes"}));
}

TEST_CASE("a cell holds 40 letters, however many bytes they take") {
  const Level level = test::good_level();
  std::string text;
  for (int i = 0; i < 40; ++i) text += "³";
  CHECK(!check_writing(level, {"1/titre", text}));
  CHECK(check_writing(level, {"1/titre", text + "³"}) == "text is longer than 40 characters");
  CHECK(check_writing(level, {"1/titre", std::string(41, '1')}).has_value());
}

TEST_CASE("a cell that is not on the sheet is refused, and a near one is named") {
  const Level level = test::good_level();
  CHECK(check_writing(level, {"1/inital", "0.15"}) ==
        "the sheet has no cell \"1/inital\"; did you mean \"1/initial\"?");
  CHECK(check_writing(level, {"99/final", "0.15"}).has_value());
  CHECK(check_writing(level, {"gherkins", "0.15"}) == "the sheet has no cell \"gherkins\"");
}

}  // namespace
}  // namespace halfdrop

#include "game/level/strict_json.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "tests/support/good_level.h"

using namespace halfdrop;
using halfdrop::test::all_of;

namespace {

std::vector<Fault> faults_of(const std::string& text) {
  FaultList faults("a.json");
  static_cast<void>(parse_json(text, {}, faults));
  return faults.take();
}

std::string nested(int depth) {
  return std::string(static_cast<std::size_t>(depth), '[') +
         std::string(static_cast<std::size_t>(depth), ']');
}

}  // namespace

TEST_SUITE("strict JSON") {
  TEST_CASE("a syntax error is told with its line and what was found there") {
    const auto faults = faults_of("{\n  \"a\": 1,\n  \"b\" 2\n}\n");
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].kind == FaultKind::cannot_parse);
    CHECK(faults[0].place == "line 3");
    CHECK(exit_status(faults) == 3);
  }
  TEST_CASE("what RFC 8259 does not allow is not JSON") {
    for (const char* text :
         {"",         "  \n",          "{",     "{\"a\":1,}", "[1,2",  "{'a':1}", "// note\n{}",
          "NaN",      "Infinity",      "-",     "01",         "1.",    ".5",      "+1",
          "\"\xff\"", "\"tab\there\"", "{} {}", "nul",        "1e999", "-1e999",  "\"\\ud800\"",
          "\"\\x41\""}) {
      CAPTURE(text);
      const auto faults = faults_of(text);
      REQUIRE(faults.size() == 1);
      CHECK(faults[0].kind == FaultKind::cannot_parse);
    }
  }
  TEST_CASE("a doubled key is a fault with its pointer, at any depth") {
    const auto faults =
        faults_of(R"({"a":{"b":[{}, {"c":1,"d~/":2,"c":3,"d~/":4}]},"e":1,"e":{"f":1,"f":2}})");
    REQUIRE_MESSAGE(faults.size() == 4, all_of(faults));
    CHECK(faults[0].place == "/a/b/1/c");
    CHECK(faults[1].place == "/a/b/1/d~0~1");
    CHECK(faults[2].place == "/e");
    CHECK(faults[3].place == "/e/f");
    CHECK(exit_status(faults) == 1);
  }
  TEST_CASE("the same key in two objects is no doubled key") {
    CHECK(faults_of(R"([{"a":1},{"a":{"a":2}}])").empty());
  }
  TEST_CASE("nesting is followed to 32 levels and no further") {
    CHECK(faults_of(nested(32)).empty());
    const auto faults = faults_of(nested(33));
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].kind == FaultKind::cannot_parse);
    CHECK(faults[0].message == "nested more than 32 deep");
    CHECK(faults_of(nested(1'000'000)).size() == 1);
    CHECK(faults_of(std::string(1'000'000, '[')).size() == 1);
  }
  TEST_CASE("keys stay in the order of the text") {
    FaultList faults("");
    const auto json = parse_json(R"({"z":1,"a":2,"m":3})", {}, faults);
    REQUIRE(json);
    CHECK(json_text(*json) == R"({"z":1,"a":2,"m":3})");
  }
  TEST_CASE("a fault is one line, whatever the file holds") {
    const Fault fault{FaultKind::invalid, "a\nb.json", "/k\x1b[2J", "found \"x\r\n\xc2\x9b\""};
    CHECK(to_string(fault) == "a\\u000ab.json: /k\\u001b[2J: found \"x\\u000d\\u000a\\u009b\"");
  }
  TEST_CASE("a long text is cut between characters") {
    std::string text(59, 'a');
    text += "\xc2\xb3 and so on";
    CHECK(in_quotes(text) == "\"" + std::string(59, 'a') + "...\"");
    CHECK(in_quotes("short") == "\"short\"");
  }
  TEST_CASE("files that are not there, are folders or are too long are faults") {
    CHECK(read_file("/nowhere/at/all.json", 10).error().kind == FaultKind::cannot_open);
    CHECK(read_file("/tmp", 10).error().kind == FaultKind::cannot_open);
    CHECK(read_file("/dev/zero", 1000).error().kind == FaultKind::cannot_parse);
    CHECK(read_file("/dev/null", 10).value().empty());
  }
  TEST_CASE("a key of any length makes a fault that can be read") {
    const auto faults =
        faults_of("{\"" + std::string(100000, 'k') + "\":1,\"" + std::string(100000, 'k') + "\":2}");
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].place == "/" + std::string(399, 'k') + "...");
  }
  TEST_CASE("a thousand faults are listed and the rest counted") {
    FaultList faults("a.json");
    for (int i = 0; i < 1500; ++i) faults.add("/x", "wrong");
    CHECK(faults.size() == 1500);
    const auto list = faults.take();
    REQUIRE(list.size() == kMostFaults + 1);
    CHECK(list.back().message == "500 more faults, not listed");
  }
}

#include <doctest/doctest.h>

#include "game/demonstrator/mistakes.h"
#include "tests/game/desk/desk_runs.h"

namespace halfdrop::test {
namespace {

/// Performed once for all tests here.
const std::string& attempt_text() {
  static const std::string text = [] {
    const Scratch scratch("once");
    const std::string path = scratch.path("a.jsonl");
    const Ran ran =
        desk({"perform", coarse_vinegar(scratch), "--seed", "7", "--alias", "Wren", "--out", path});
    CHECK(ran.err == "");
    REQUIRE(ran.status == 0);
    return text_of(path);
  }();
  return text;
}

std::string put(const Scratch& scratch, const std::string& name, const std::string& text) {
  const std::string path = scratch.path(name);
  std::ofstream(path, std::ios::binary) << text;
  return path;
}

std::string with_hash_changed(std::string text) {
  const std::size_t hash = text.rfind("\"state\":\"") + 9;
  text[hash] = text[hash] == '0' ? '1' : '0';
  return text;
}

}  // namespace

TEST_CASE("two performances of one seed are the same file, byte for byte") {
  const Scratch scratch("twice");
  REQUIRE(desk({"perform", coarse_vinegar(scratch), "--seed", "7", "--alias", "Wren", "--out",
                scratch.path("b.jsonl")})
              .status == 0);
  CHECK(text_of(scratch.path("b.jsonl")) == attempt_text());
}

TEST_CASE("a performed attempt is marked as reproduced, in words, JSON and CSV") {
  const Scratch scratch("mark");
  const std::string path = put(scratch, "a.jsonl", attempt_text());
  const Ran words = desk({"mark", path});
  CHECK(words.status == 0);
  CHECK(words.err == "");
  CHECK(contains(words.out, "Wren"));
  const Ran json = desk({"mark", path, "--json"});
  CHECK(json.status == 0);
  REQUIRE(lines_of(json.out).size() == 1);
  CHECK(json.out.front() == '{');
  CHECK(contains(json.out, "\"reproduced\":true"));
  const Ran csv = desk({"mark", "--csv", path, path});
  CHECK(csv.status == 0);
  CHECK(lines_of(csv.out).size() == 3);
  CHECK(desk({"mark", path, "--json", "--csv"}).status == 2);
}

TEST_CASE("a batch goes on after a fault and ends with 1") {
  const Scratch scratch("batch");
  const std::string good = put(scratch, "good.jsonl", attempt_text());
  const Ran ran = desk({"mark", scratch.path("missing.jsonl"), good, "--json"});
  CHECK(ran.status == 1);
  CHECK(lines_of(ran.out).size() == 1);
  CHECK(lines_of(ran.err).size() == 1);
  CHECK(ran.err.starts_with(scratch.path("missing.jsonl") + ": "));
}

TEST_CASE("one attempt ends with 3 when it cannot be read, 1 when it is invalid or not reproduced") {
  const Scratch scratch("one");
  CHECK(desk({"mark", scratch.path("missing.jsonl")}).status == 3);
  CHECK(desk({"mark", put(scratch, "empty.jsonl", "")}).status == 3);
  CHECK(desk({"mark", put(scratch, "text.jsonl", "no attempt\nat all\n")}).status == 3);
  std::string wrong_deed = attempt_text();
  const std::size_t deed = wrong_deed.find("lay tile");
  REQUIRE(deed != std::string::npos);
  wrong_deed.replace(deed, 8, "lay tiel");
  const Ran invalid = desk({"mark", put(scratch, "deed.jsonl", wrong_deed)});
  CHECK(invalid.status == 1);
  CHECK(contains(invalid.err, "lay tile"));
  const Ran other = desk({"mark", put(scratch, "hash.jsonl", with_hash_changed(attempt_text())), "--json"});
  CHECK(other.status == 1);
  CHECK(contains(other.out, "\"reproduced\":false"));
  CHECK(contains(other.err, "not reproduced"));
}

TEST_CASE("a torn last line is dropped with a warning, and that is no fault") {
  const Scratch scratch("torn");
  const std::string torn = attempt_text().substr(0, attempt_text().size() - 20);
  const Ran ran = desk({"mark", put(scratch, "torn.jsonl", torn), "--json"});
  CHECK(ran.status == 0);
  CHECK(contains(ran.err, "warning"));
  CHECK(lines_of(ran.out).size() == 1);
}

TEST_CASE("what cannot be performed is refused before anything is written") {
  const Scratch scratch("perform");
  const std::string out = scratch.path("x.jsonl");
  const Ran unknown = desk({"perform", kVinegar, "--mistake", "over-shoot", "--out", out});
  CHECK(unknown.status == 2);
  CHECK(contains(unknown.err, "did you mean \"overshoot\"?"));
  CHECK(desk({"perform", kVinegar, "--seed", "-1", "--out", out}).status == 2);
  CHECK(desk({"perform", kVinegar, "--seed", "seven", "--out", out}).status == 2);
  CHECK(desk({"perform", kVinegar}).status == 2);
  CHECK(desk({"perform", scratch.path("missing.json"), "--out", out}).status == 3);
  CHECK(desk({"perform", kBadLevels + "unknown-key.json", "--out", out}).status == 1);
  CHECK_FALSE(std::filesystem::exists(out));
}

TEST_CASE("check prints every error of a level with file and place") {
  const Ran good = desk({"check", kVinegar});
  CHECK(good.status == 0);
  CHECK(good.err == "");
  const std::string bad = kBadLevels + "unknown-key.json";
  const Ran invalid = desk({"check", bad});
  CHECK(invalid.status == 1);
  CHECK(invalid.out == "");
  for (const std::string& line : lines_of(invalid.err)) CHECK(line.starts_with(bad + ": /"));
  CHECK(desk({"check", kBadLevels + "not-json.json"}).status == 3);
  CHECK(desk({"check", "/no/such/level.json"}).status == 3);
  const Ran batch = desk({"check", "/no/such/level.json", kVinegar});
  CHECK(batch.status == 1);
  CHECK(contains(batch.out, kVinegar));
}

TEST_CASE("the catalogue is one JSON object a mistake with the keys of the contract") {
  const Ran ran = desk({"mistakes", "--json"});
  CHECK(ran.status == 0);
  const std::vector<std::string> lines = lines_of(ran.out);
  CHECK(lines.size() == mistakes().size());
  for (const std::string& line : lines) {
    CHECK(line.starts_with("{\"name\":\""));
    for (const char* key : {"\"title\":", "\"family\":", "\"cause\":", "\"titre\":", "\"typical_cm3\":"}) {
      CHECK(contains(line, key));
    }
  }
  CHECK(contains(ran.out, "\"name\":\"jet-not-filled\""));
  CHECK(contains(desk({"mistakes"}).out, "jet-not-filled"));
}

TEST_CASE("wrong command lines end with 2 and help with 0") {
  CHECK(desk({}).status == 2);
  const Ran unknown = desk({"chek"});
  CHECK(unknown.status == 2);
  CHECK(contains(unknown.err, "did you mean \"check\"?"));
  CHECK(desk({"mark"}).status == 2);
  CHECK(desk({"mark", "x", "--no-such-option"}).status == 2);
  const Ran help = desk({"--help"});
  CHECK(help.status == 0);
  CHECK(contains(help.out, "perform"));
  CHECK(desk({"curve", "--help"}).status == 0);
}

}  // namespace halfdrop::test

// Drills at the desk: checked, performed, marked, and a second go beside the first.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

#include "tests/game/desk/desk_runs.h"
#include "tests/support/json.h"

namespace halfdrop::test {
namespace {

std::string drill(const std::string& name) {
  return HALFDROP_SOURCE_FOLDER "/levels/drills/" + name + ".json";
}

const std::string kRead = drill("01-read-the-meniscus"), kDeliver = drill("02-deliver-exactly"),
                  kFill = drill("03-fill-without-air");

std::string performed(const Scratch& scratch, const std::string& level, const std::string& name,
                      const std::vector<std::string>& more = {}, const std::string& alias = "Wren") {
  std::vector<std::string> words = {"perform", level, "--seed", "7",
                                    "--alias", alias, "--out",  scratch.path(name)};
  words.insert(words.end(), more.begin(), more.end());
  const Ran ran = desk(words);
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
  return scratch.path(name);
}

std::string keys(const Json& object) {
  std::string names;
  for (const auto& [name, value] : object.items()) names += (names.empty() ? "" : " ") + name;
  return names;
}

}  // namespace

TEST_CASE("every drill of the product is sound") {
  const Ran ran = desk({"check", kRead, kDeliver, kFill});
  CHECK(ran.status == 0);
  CHECK(ran.err == "");
  CHECK(lines_of(ran.out).size() == 3);
}

TEST_CASE("a drill's marks keep the contract's keys and add the drill's own") {
  const Scratch scratch("drill-json");
  for (const auto& [level, name] : {std::pair{kRead, "read"}, {kDeliver, "deliver"}, {kFill, "fill"}}) {
    const Ran ran = desk({"mark", "--json", performed(scratch, level, name)});
    CHECK(ran.status == 0);
    const Json json = json_of(ran.out);
    CHECK(
        keys(json) ==
        "attempt level alias way reproduced titres mean_titre_cm3 ideal_titre_cm3 concentration uncertainty "
        "marks findings result_split next drill");
    CHECK(json["titres"].empty());
    CHECK(json["mean_titre_cm3"].is_null());
    CHECK(json["ideal_titre_cm3"].is_null());
    CHECK(json["concentration"]["true"].is_null());
    CHECK(json["reproduced"] == true);
    CHECK(json["marks"]["total"] == json["marks"]["of"]);
    CHECK(json["drill"]["first_go"].is_null());
  }
}

TEST_CASE("a reading drill's object has the figures of the eye, picture by picture too") {
  const Scratch scratch("drill-read");
  const Ran ran =
      desk({"mark", "--json", performed(scratch, kRead, "high", {"--mistake", "eye-too-high-at-start"})});
  const Json object = json_of(ran.out)["drill"];
  CHECK(object["kind"] == "read the meniscus");
  CHECK(object["readings"] == 30);
  CHECK(object["off_level"] == 30);
  CHECK(object["bias_seen"] == true);
  CHECK(object["trained_sd_cm3"] == 0.022);
  CHECK(object["digits"].size() == 10);
  REQUIRE(object["pictures"].size() == 30);
  double sum = 0.0;
  for (const Json& picture : object["pictures"])
    sum += picture["written_cm3"].get<double>() - picture["true_cm3"].get<double>();
  CHECK(std::abs(sum / 30.0 - object["bias_cm3"].get<double>()) < 1e-9);
}

TEST_CASE("a second go given with the first is compared with it; another's is not") {
  const Scratch scratch("drill-twice");
  const std::string first = performed(scratch, kRead, "first", {"--mistake", "eye-too-high-at-start"});
  const std::string second = performed(scratch, kRead, "second");
  const std::string other = performed(scratch, kRead, "other", {}, "Finch");
  const Ran words = desk({"mark", first, second});
  CHECK(words.status == 0);
  CHECK(contains(words.out, "Against the first go, " + first));
  CHECK(contains(words.out, "nearer to nought"));
  const auto lines = lines_of(desk({"mark", "--json", first, second, other}).out);
  REQUIRE(lines.size() == 3);
  CHECK(json_of(lines[0])["drill"]["first_go"].is_null());
  CHECK(json_of(lines[2])["drill"]["first_go"].is_null());
  const Json go = json_of(lines[1])["drill"]["first_go"];
  CHECK(go["attempt"] == first);
  CHECK(go["figures"][1]["figure"] == "bias_cm3");
  CHECK(go["figures"][1]["verdict"] == "nearer to nought");
  CHECK(go["figures"][1]["now"] == json_of(lines[1])["drill"]["bias_cm3"]);
}

TEST_CASE("a table has a drill's figures in columns of their own") {
  const Scratch scratch("drill-csv");
  const auto lines =
      lines_of(desk({"mark", "--csv", performed(scratch, kRead, "a"), performed(scratch, kFill, "b")}).out);
  REQUIRE(lines.size() == 3);
  CHECK(contains(lines[0], ",unit,drill,readings,bias_cm3,sd_cm3,"));
  CHECK(contains(lines[1], ",read the meniscus,30,"));
  CHECK(contains(lines[2], ",fill without air,,,,"));
  const auto commas = [](const std::string& line) { return std::count(line.begin(), line.end(), ','); };
  CHECK(commas(lines[0]) == commas(lines[1]));
  CHECK(commas(lines[0]) == commas(lines[2]));
}

TEST_CASE("a mistake that a drill has no room for, and a drill's curve, are refused with a reason") {
  const Scratch scratch("drill-refused");
  const Ran mistake = desk({"perform", kRead, "--mistake", "no-swirling", "--out", scratch.path("a")});
  CHECK(mistake.status == 2);
  CHECK(contains(mistake.err, "no place in this level"));
  const Ran curve = desk({"curve", kRead});
  CHECK(curve.status == 1);
  CHECK(contains(curve.err, "a drill has no titration curve"));
}

}  // namespace halfdrop::test

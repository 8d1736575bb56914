#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "tests/game/desk/desk_runs.h"
#include "tests/support/json.h"
#include "tests/support/near.h"

namespace halfdrop::test {
namespace {

Json curve_json_of(std::vector<std::string> words) {
  words.insert(words.begin(), "curve");
  words.push_back("--json");
  const Ran ran = desk(words);
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
  REQUIRE(lines_of(ran.out).size() == 1);
  return json_of(ran.out);
}

std::vector<std::string> of(const std::string& flask, const std::string& burette,
                            std::vector<std::string> more = {}) {
  std::vector<std::string> words = {"--flask", flask, "0.1", "--aliquot", "25", "--burette", burette, "0.1"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

std::vector<double> volumes(const Json& curve) {
  std::vector<double> found;
  for (const Json& at : curve["equivalences"]) found.push_back(at["volume_cm3"]);
  return found;
}

}  // namespace

// Source: balanced equations (textbook): one, two and three protons of 25 cm3 by alkali of the same strength.
TEST_CASE("--json lists every equivalence of a polyprotic acid, with how much the pH jumps there") {
  const Json curve = curve_json_of(of("phosphoric acid", "sodium hydroxide", {"--at", "0,37.5"}));
  CHECK(volumes(curve) == std::vector{25.0, 50.0, 75.0});
  CHECK(curve["equivalences"][0]["jump_pH"].get<double>() > 0.5);
  CHECK(curve["equivalences"][1]["jump_pH"].get<double>() > 0.5);
  CHECK(curve["equivalences"][2]["jump_pH"].get<double>() < 0.3);
  CHECK(curve["indicator"].is_null());
  CHECK(curve["visible_change_cm3"].is_null());
  REQUIRE(curve["points"].size() == 2);
  // Davies at the half way of the second step, from pK 7.198 (our own reckoning; NIST's equal buffer 6.865).
  CHECK_NEAR(curve["points"][1]["pH"].get<double>(), 6.8, 0.1);
}

// Common practice: which indicator fits (see the tests of the visible change).
TEST_CASE("--json says what the eye sees, and warns of an indicator that does not fit") {
  const Json good =
      curve_json_of(of("ethanoic acid", "sodium hydroxide", {"--indicator", "phenolphthalein"}));
  CHECK(good["warnings"].empty());
  CHECK(good["indicator"]["unfit"] == false);
  CHECK_NEAR(good["visible_change_cm3"].get<double>(), 25.0, 0.05);
  CHECK(good["indicator"]["changes"].size() == 4);
  const Json bad = curve_json_of(of("ethanoic acid", "sodium hydroxide", {"--indicator", "methyl orange"}));
  CHECK(bad["indicator"]["unfit"] == true);
  REQUIRE(bad["warnings"].size() == 1);
  CHECK(contains(bad["warnings"][0], "methyl orange does not fit this titration"));
  CHECK(contains(bad["warnings"][0], "before the nearest equivalence, at 25.00 cm3"));
  CHECK(contains(bad["warnings"][0], "; the change is gradual: from "));
  const Json none = curve_json_of(of("ethanoic acid", "hydrochloric acid", {"--indicator", "methyl orange"}));
  CHECK(none["equivalences"].empty());
  REQUIRE(none["warnings"].size() == 2);
  CHECK(contains(none["warnings"][0], "do not neutralise one another"));
}

// Common practice: textbooks pair methyl orange with a strong acid and alkali, whichever is in the burette.
TEST_CASE("a gradual change fits where its endpoint does, with a warning from where to where it goes on") {
  const auto methyl_orange = [](const std::string& flask, const std::string& flask_mol_dm3,
                                const std::string& burette, const std::string& burette_mol_dm3) {
    return curve_json_of({"--flask", flask, flask_mol_dm3, "--aliquot", "25", "--burette", burette,
                          burette_mol_dm3, "--indicator", "methyl orange", "--at", "0"});
  };
  const Json last = methyl_orange("sulfuric acid", "0.05", "sodium hydroxide", "0.1");
  const Json first = methyl_orange("sodium hydroxide", "0.1", "sulfuric acid", "0.05");
  for (const Json* curve : {&last, &first}) {
    CHECK((*curve)["indicator"]["unfit"] == false);
    CHECK((*curve)["indicator"]["changes"][0]["gradual"] == true);
    REQUIRE((*curve)["warnings"].size() == 1);
    CHECK(contains((*curve)["warnings"][0], "the change of methyl orange is gradual: from "));
    CHECK_NEAR((*curve)["visible_change_cm3"].get<double>(), 25.0, 0.1);
  }
  CHECK(last["indicator"]["changes"][0]["endpoint"] == "last");
  CHECK(first["indicator"]["changes"][0]["endpoint"] == "first");
  const Json sharp =
      curve_json_of(of("ethanoic acid", "sodium hydroxide", {"--indicator", "phenolphthalein"}));
  CHECK(sharp["indicator"]["changes"][0]["gradual"] == false);
}

TEST_CASE("--json warns of solutions too strong for the activity model") {
  const Json curve = curve_json_of({"--flask", "hydrochloric acid", "0.8", "--aliquot", "25", "--burette",
                                    "sodium hydroxide", "0.8", "--at", "0,25"});
  REQUIRE(curve["warnings"].size() == 1);
  CHECK(contains(curve["warnings"][0], "at 0 cm3 the ionic strength comes to 0.8 mol/dm3"));
  CHECK(curve_json_of(of("hydrochloric acid", "sodium hydroxide"))["warnings"].empty());
}

TEST_CASE("--json says where there is only water, and prints nothing without a sign") {
  const auto curve = [](const std::string& flask, const std::string& burette) {
    return curve_json_of({"--flask", "hydrochloric acid", flask, "--aliquot", "25", "--burette",
                          "sodium hydroxide", burette, "--indicator", "phenolphthalein", "--ideal", "--at",
                          "-0"});
  };
  const Json no_alkali = curve("1", "0");
  REQUIRE(no_alkali["warnings"].size() == 2);
  CHECK(contains(no_alkali["warnings"][0], "the burette holds water only (sodium hydroxide of 0 mol/dm3)"));
  CHECK(contains(no_alkali["warnings"][1], "phenolphthalein does not fit this titration"));
  const Json no_acid = curve("-0", "0.1");
  REQUIRE(no_acid["warnings"].size() == 2);
  CHECK(contains(no_acid["warnings"][0], "the flask holds water only (hydrochloric acid of 0 mol/dm3)"));
  CHECK(compact(no_acid).find("-0.0") == std::string::npos);
  const Json strong = curve_json_of({"--flask", "hydrochloric acid", "1", "--aliquot", "25", "--burette",
                                     "sodium hydroxide", "0.1", "--ideal", "--at", "-0"});
  CHECK(compact(strong["points"]) == R"([{"volume_cm3":0.0,"pH":0.0,"colour":"#ffffff"}])");
}

TEST_CASE("a level's curve names its own substances and fits its indicator") {
  const Json curve = curve_json_of({kVinegar, "--temperature", "20", "--at", "21.5"});
  CHECK(curve["flask"]["substance"] == "ethanoic acid");
  CHECK_NEAR(curve["flask"]["mol_dm3"].get<double>(), 0.086, 1e-9);
  CHECK(volumes(curve) == std::vector{21.5});
  CHECK(curve["warnings"].empty());
}

TEST_CASE("at another temperature the water's constant is its own") {
  // IAPWS R11-07: 14.5336 at 10 C, 13.5344 at 40 C.
  const auto neutral = [](const std::string& temperature) {
    const Json curve = curve_json_of(
        of("hydrochloric acid", "sodium hydroxide", {"--ideal", "--temperature", temperature, "--at", "25"}));
    return curve["points"][0]["pH"].get<double>();
  };
  CHECK_NEAR(neutral("10"), 0.5 * 14.5336, 0.001);
  CHECK_NEAR(neutral("40"), 0.5 * 13.5344, 0.001);
}

}  // namespace halfdrop::test

#include "game/desk/plain_number.h"

#include <doctest/doctest.h>

#include <cmath>

#include "tests/game/desk/desk_runs.h"

namespace halfdrop::test {

using namespace halfdrop::desk;

namespace {

constexpr NumberWanted kStrength = {0.0, 20.0, "a number from 0 to 20", "mol/dm3"};
constexpr NumberWanted kConstants = {-10.0, 20.0, "numbers from -10 to 20"};

std::string fault_of(const std::string& text) {
  const auto number = plain_number(text, kStrength);
  return number ? "" : number.error();
}

}  // namespace

TEST_CASE("a plain number is read, and minus nothing is nothing") {
  CHECK(plain_number("0.1", kStrength) == 0.1);
  CHECK(plain_number("1e-3", kStrength) == 0.001);
  CHECK(plain_number(" +20 ", kStrength) == 20.0);
  REQUIRE(plain_number("-0", kStrength) == 0.0);
  CHECK_FALSE(std::signbit(*plain_number("-0", kStrength)));
  CHECK(plain_numbers("3.1, -4.8,6", kConstants) == std::vector{3.1, -4.8, 6.0});
}

TEST_CASE("a unit after a number is refused: it might have been another one") {
  for (const char* text :
       {"0.1mM", "25L", "0.4%", "0.1 mol/dm3", "0.1M", "0x1", "1e", "2 x 10^-1", "0.1 2"}) {
    CAPTURE(text);
    CHECK(fault_of(text) ==
          "expected a number from 0 to 20 mol/dm3, without its unit, found \"" + std::string(text) + "\"");
  }
  CHECK(plain_numbers("3,4cm3", {0.0, 9.0, "numbers from 0 to 9", "cm3"}).error() ==
        "expected numbers from 0 to 9 cm3 with commas between, without their unit, found \"3,4cm3\"");
  CHECK(contains(plain_number("7x", {5.0, 30.0, "a number from 5 to 30"}).error(), "and nothing after it"));
}

TEST_CASE("a decimal comma is refused with a hint; in a list a comma stands between") {
  CHECK(fault_of("0,1") == "expected a number from 0 to 20 mol/dm3, with a decimal point, found \"0,1\"");
  CHECK(plain_numbers("12,5", {0.0, 99.0, "numbers from 0 to 99", "cm3"}) == std::vector{12.0, 5.0});
}

TEST_CASE("what is no number, or out of range, is refused") {
  for (const char* text : {"", " ", "much", "nan", "inf", "-inf", "-0.1", "20.1", "1e999", "+-1", "--1"}) {
    CAPTURE(text);
    CHECK(fault_of(text) == "expected a number from 0 to 20 mol/dm3, found \"" + std::string(text) + "\"");
  }
  for (const char* text : {"", ",", "1,", ",1", "1,,2", "1;2", "1,21"}) {
    CAPTURE(text);
    CHECK_FALSE(plain_numbers(text, kConstants).has_value());
  }
}

TEST_CASE("each option of a curve takes plain numbers only") {
  const auto fails = [](std::vector<std::string> words, const std::string& says) {
    words.insert(words.begin(), "curve");
    const Ran ran = desk(words);
    CAPTURE(ran.err);
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    CHECK(contains(ran.err, says));
  };
  const auto curve = [](const std::string& flask, const std::string& aliquot, const std::string& burette) {
    return std::vector<std::string>{"--flask",   "ethanoic acid",    flask,  "--aliquot", aliquot,
                                    "--burette", "sodium hydroxide", burette};
  };
  fails(curve("0.1mM", "25", "0.1"), "--flask: expected a number from 0 to 20 mol/dm3, without its unit");
  fails(curve("0,1", "25", "0.1"), "--flask: expected a number from 0 to 20 mol/dm3, with a decimal point");
  fails(curve("0.1", "25L", "0.1"), "--aliquot: expected a number from 0.001 to 1000 cm3, without its unit");
  fails(curve("0.1", "25", "0.4%"), "--burette: expected a number from 0 to 20 mol/dm3, without its unit");
  const auto with = [&](const std::string& option, const std::string& value) {
    auto words = curve("0.1", "25", "0.1");
    words.insert(words.end(), {"--indicator", "phenolphthalein", option, value});
    return words;
  };
  fails(with("--at", "1 cm3"), "--at: expected numbers from 0 to 10000 cm3 with commas between, without");
  fails(with("--to", "50,5"), "--to: expected a number from 0 to 10000 cm3, with a decimal point");
  fails(with("--step", "1L"), "--step: expected a number from 0.000001 to 10000 cm3, without its unit");
  fails(with("--drops", "3 drops"),
        "--drops: expected a whole number from 0 to 1000 drops, without its unit");
  fails(with("--temperature", "293 K"), "--temperature: expected a number from 5 to 40 degrees C, without");
  fails(with("--pka", "4.7 M"), "--pka: expected numbers from -10 to 20 with commas between and nothing");
  fails(with("--pkw", "14,0"), "--pkw: expected a number from 5 to 30, with a decimal point");
}

}  // namespace halfdrop::test

#include <doctest/doctest.h>

#include <charconv>

#include "tests/game/desk/desk_runs.h"
#include "tests/support/near.h"

namespace halfdrop::test {
namespace {

struct Row {
  double volume_cm3 = 0.0, ph = 0.0;
  std::string colour;
};

double number(const std::string& text) {
  double value = -1.0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

std::vector<Row> curve(std::vector<std::string> words) {
  words.insert(words.begin(), "curve");
  const Ran ran = desk(words);
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
  std::vector<std::string> lines = lines_of(ran.out);
  REQUIRE(!lines.empty());
  CHECK(lines.front() == "volume_cm3,pH,colour");
  std::vector<Row> rows;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const std::size_t first = lines[i].find(','), second = lines[i].find(',', first + 1);
    REQUIRE(second != std::string::npos);
    rows.push_back({number(lines[i].substr(0, first)), number(lines[i].substr(first + 1, second - first - 1)),
                    lines[i].substr(second + 1)});
  }
  return rows;
}

std::vector<std::string> alkali_into(const std::string& acid, std::vector<std::string> more) {
  std::vector<std::string> words = {"--flask",          acid,   "0.100", "--aliquot", "25", "--burette",
                                    "sodium hydroxide", "0.100"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

const std::string kTextbookVolumes = "0,5,10,15,20,22,24,24.5,24.9,25,25.1,25.5,26,28,30,35,40,45,50";

void check_curve(const std::vector<Row>& rows, const std::vector<double>& expected, double tolerance) {
  REQUIRE(rows.size() == expected.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(rows[i].volume_cm3);
    CHECK_NEAR(rows[i].ph, expected[i], tolerance);
  }
}

int channel(const std::string& colour, std::size_t which) {
  return std::stoi(colour.substr(1 + 2 * which, 2), nullptr, 16);
}

}  // namespace

TEST_CASE("the curve of a strong acid is the textbook's") {
  // OpenStax Chemistry 2e, section 14.7, table 14.4: 25.00 cm3 of 0.100 mol/dm3 HCl with 0.100 mol/dm3 NaOH.
  const auto rows =
      curve(alkali_into("hydrochloric acid", {"--ideal", "--pkw", "14.00", "--at", kTextbookVolumes}));
  check_curve(rows,
              {1.00, 1.18, 1.37, 1.60, 1.95, 2.20, 2.69, 3.00, 3.70, 7.00, 10.30, 11.00, 11.29, 11.75, 11.96,
               12.22, 12.36, 12.46, 12.52},
              0.0065);
  for (const Row& row : rows) CHECK(row.colour == "#ffffff");
}

TEST_CASE("the curve of ethanoic acid is the textbook's") {
  // The same table, Ka 1.8e-5; the book rounds and approximates, by at most 0.006.
  const auto rows = curve(alkali_into("ethanoic acid", {"--ideal", "--pkw", "14.00", "--pka", "4.744727",
                                                        "--at", "0,5,10,15,20,22,24,24.5,24.9,25"}));
  check_curve(rows, {2.87, 4.14, 4.57, 4.92, 5.35, 5.61, 6.13, 6.44, 7.14, 8.72}, 0.0065);
}

TEST_CASE("constants of another acid can take the place of the flask substance's") {
  // Maleic acid, Ka 1.3e-2 and 5.9e-7, 25.00 cm3 of 0.1000 mol/dm3 with 0.1000 NaOH: a worked example of
  // Skoog and West (from memory), whose rounded values an exact charge balance meets within 0.01.
  // Tartaric acid has two protons too.
  const auto rows = curve(alkali_into(
      "tartaric acid", {"--ideal", "--pkw", "14.00", "--pka", "1.886057,6.229148", "--at", "0,5,25,50,51"}));
  check_curve(rows, {1.52, 1.74, 4.11, 9.38, 11.12}, 0.01);
}

TEST_CASE("a base of one constant wants one constant") {
  const Ran ran = desk({"curve", "--flask", "ammonia", "0.1", "--aliquot", "20", "--burette",
                        "hydrochloric acid", "0.1", "--pka", "9,10"});
  CHECK(ran.status == 2);
  CHECK(contains(ran.err, "--pka: expected 1 constant of \"ammonia\", found 2"));
}

TEST_CASE("a base's constant is its conjugate acid's") {
  // Half neutralised, a base of pKb 4.76 has pH 14.00 - 4.76 (Henderson and Hasselbalch, textbook).
  const auto rows = curve({"--flask", "ammonia", "0.1", "--aliquot", "20", "--burette", "hydrochloric acid",
                           "0.1", "--ideal", "--pkw", "14.00", "--pka", "9.24", "--at", "10"});
  check_curve(rows, {9.24}, 0.005);
}

TEST_CASE("without --ideal ions weigh by their activity") {
  // Davies at I = 0.1: log g = -0.5092 (0.24025 - 0.03) = -0.107; a strong acid of 0.1 reads pH 1.107.
  const auto rows = curve(alkali_into("hydrochloric acid", {"--at", "0"}));
  check_curve(rows, {1.107}, 0.001);
}

TEST_CASE("phenolphthalein is white before the end and pink past it, methyl orange yellow and then red") {
  const auto pink =
      curve(alkali_into("ethanoic acid", {"--indicator", "phenolphthalein", "--at", "24.5,25.5"}));
  REQUIRE(pink.size() == 2);
  CHECK(channel(pink[0].colour, 0) == channel(pink[0].colour, 1));
  CHECK(channel(pink[0].colour, 0) == channel(pink[0].colour, 2));
  CHECK(channel(pink[0].colour, 0) > 230);
  CHECK(channel(pink[1].colour, 1) < channel(pink[1].colour, 0) - 30);
  CHECK(channel(pink[1].colour, 1) < channel(pink[1].colour, 2) - 30);
  const auto orange = curve({"--flask", "ammonia", "0.1", "--aliquot", "25", "--burette", "hydrochloric acid",
                             "0.1", "--indicator", "methyl orange", "--at", "20,26"});
  REQUIRE(orange.size() == 2);
  CHECK(channel(orange[0].colour, 1) > channel(orange[0].colour, 2) + 30);
  CHECK(channel(orange[1].colour, 1) < channel(orange[0].colour, 1) - 20);
}

TEST_CASE("more drops of indicator colour deeper") {
  const auto few =
      curve(alkali_into("ethanoic acid", {"--indicator", "phenolphthalein", "--drops", "1", "--at", "26"}));
  const auto many =
      curve(alkali_into("ethanoic acid", {"--indicator", "phenolphthalein", "--drops", "9", "--at", "26"}));
  CHECK(channel(many[0].colour, 1) < channel(few[0].colour, 1) - 30);
}

TEST_CASE("steps land on the decimal fraction and the last volume is there") {
  const auto rows = curve(alkali_into("hydrochloric acid", {"--to", "0.3", "--step", "0.1"}));
  REQUIRE(rows.size() == 4);
  const Ran ran = desk({"curve", kVinegar, "--to", "0.3", "--step", "0.1"});
  CHECK(contains(ran.out, "\n0.3,"));
  CHECK_FALSE(contains(ran.out, "0.30000"));
}

TEST_CASE("a level's curve turns pink where its unknown is used up") {
  // Middle of 0.076 to 0.096 mol/dm3: 25.00 x 0.086 / 0.1000 = 21.50 cm3.
  const auto rows = curve({kVinegar, "--temperature", "20", "--at", "21.4,21.6"});
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].ph < 8.4);
  CHECK(rows[1].ph > 9.5);
  CHECK(rows[0].colour != rows[1].colour);
}

// The level's bench is at 20 C; the curve is for 25 C unless it is told.
TEST_CASE("a curve at another temperature than its level's says so, once it was not asked for one") {
  const Ran ran = desk({"curve", kVinegar, "--at", "21.5"});
  CHECK(ran.status == 0);
  CHECK(
      ran.err ==
      "warning: the curve is for 25 degrees C, but the level's bench is at 20: give --temperature 20 for its "
      "own\n");
  CHECK(desk({"curve", kVinegar, "--temperature", "25", "--at", "21.5"}).err == "");
  CHECK(desk({"curve", kVinegar, "--temperature", "20", "--at", "21.5"}).err == "");
  CHECK(contains(desk({"curve", "--help"}).out, "default 25, whatever a LEVEL says"));
}

TEST_CASE("wrong arguments of a curve are named, with what was expected") {
  const auto fails = [](const std::vector<std::string>& more, const std::string& says) {
    std::vector<std::string> words = alkali_into("ethanoic acid", more);
    words.insert(words.begin(), "curve");
    const Ran ran = desk(words);
    CAPTURE(ran.err);
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    CHECK(contains(ran.err, says));
  };
  fails({"--at", "1,x"}, "--at: expected numbers");
  fails({"--at", "1,,2"}, "--at: expected numbers");
  fails({"--at=-1"}, "--at: expected numbers from 0");
  fails({"--at", "nan"}, "--at");
  fails({"--at", "1", "--to", "5"}, "--at: excludes");
  fails({"--to", "50", "--step", "0"}, "--step: expected");
  fails({"--to", "50", "--step", "0.00001"}, "million rows");
  fails({"--pka", "3,2"}, "ascending");
  fails({"--pka", "3,3,3"}, "--pka: expected ascending constants, no two of them equal, found \"3,3,3\"");
  fails({"--pka", "1,2,3,4"}, "--pka: expected 1 to 3 constants");
  fails({"--indicator", "phenolphtalein"}, "did you mean \"phenolphthalein\"?");
  fails({"--indicator", "phenolphthalein", "--drops", "2.5"}, "--drops: expected a whole number");
  fails({"--drops", "2"}, "--drops: needs an indicator");
  fails({"--temperature", "400"}, "--temperature: expected");
  fails({"--pkw", "-1"}, "--pkw");
}

// Source: solubilities as assets/substances.json has them, of benzoic acid 0.34 g in 100 cm3 at 25 C (an
// exercise of Zumdahl's Chemistry) over 122.12 g/mol, of calcium hydroxide 1.73 g/dm3 at 20 C (handbooks,
// from memory) over 74.09 g/mol.
TEST_CASE("more than dissolves is refused, with what dissolves at most") {
  const auto flask = [](const std::string& name, const std::string& mol_dm3) {
    return desk({"curve", "--flask", name, mol_dm3, "--aliquot", "25", "--burette", "sodium hydroxide", "0.1",
                 "--at", "0"});
  };
  CHECK(flask("benzoic acid", "0.027").status == 0);
  const Ran benzoic = flask("benzoic acid", "0.1");
  CHECK(benzoic.status == 2);
  CHECK(benzoic.out == "");
  CHECK(contains(benzoic.err, "--flask: benzoic acid dissolves to about 0.028 mol/dm3"));
  CHECK(flask("borax", "20").status == 2);
  CHECK(flask("borax", "0.1").status == 0);
  CHECK(flask("ethanoic acid", "17").status == 0);
  CHECK(contains(flask("ethanoic acid", "18").err, "--flask: pure ethanoic acid has about 17.5 mol/dm3"));
  CHECK(flask("lactic acid", "14").status == 2);
  CHECK(flask("carbonic acid", "0.033").status == 0);
  CHECK(contains(flask("carbonic acid", "0.05").err, "carbonic acid dissolves to about 0.034 mol/dm3"));
  const Ran lime = desk({"curve", "--flask", "hydrochloric acid", "0.02", "--aliquot", "25", "--burette",
                         "calcium hydroxide", "0.1", "--at", "0"});
  CHECK(lime.status == 2);
  CHECK(contains(lime.err, "--burette: calcium hydroxide dissolves to about 0.023 mol/dm3"));
}

TEST_CASE("nothing is printed without a sign") {
  // -log10 of 1 mol/dm3.
  const Ran ran = desk({"curve", "--flask", "hydrochloric acid", "1", "--aliquot", "25", "--burette",
                        "sodium hydroxide", "0.1", "--ideal", "--at", "-0,0"});
  CHECK(ran.out == "volume_cm3,pH,colour\n0,0.0000,#ffffff\n0,0.0000,#ffffff\n");
}

TEST_CASE("an aliquot larger than the flask is refused") {
  const auto aliquot = [](const std::string& cm3) {
    return desk({"curve", "--flask", "ethanoic acid", "0.1", "--aliquot", cm3, "--burette",
                 "sodium hydroxide", "0.1", "--at", "0"});
  };
  CHECK(aliquot("150").status == 0);
  CHECK(aliquot("1000").status == 2);
  CHECK(contains(aliquot("1000").err, "--aliquot: the flask holds 150 cm3"));
}

// The Davies equation is good to about 0.5 mol/dm3 of ionic strength (textbooks of water chemistry, from
// memory); a strong acid's ionic strength is its concentration.
TEST_CASE("solutions too strong for the activity model are computed with a warning") {
  const auto acid = [](const std::string& mol_dm3, std::vector<std::string> more = {}) {
    std::vector<std::string> words = {"curve", "--flask",   "hydrochloric acid", mol_dm3, "--aliquot",
                                      "25",    "--burette", "sodium hydroxide",  "0.1",   "--at",
                                      "0,25"};
    words.insert(words.end(), more.begin(), more.end());
    return desk(words);
  };
  CHECK(acid("0.5").err == "");
  const Ran strong = acid("0.8");
  CHECK(strong.status == 0);
  CHECK(lines_of(strong.out).size() == 3);
  CHECK(contains(strong.err, "warning: at 0 cm3 the ionic strength comes to 0.8 mol/dm3"));
  CHECK(acid("0.8", {"--ideal"}).err == "");  // needs no activity
}

// Sodium chloride of 1 mol/dm3 at the equivalence of 2 mol/dm3 each; 2 mol/dm3 before there is any alkali.
TEST_CASE("a solution too strong is warned of wherever it lies: before the first volume and at equivalence") {
  const auto at = [](const std::string& acid, const std::string& alkali, const std::string& volume_cm3) {
    return desk({"curve", "--flask", "hydrochloric acid", acid, "--aliquot", "25", "--burette",
                 "sodium hydroxide", alkali, "--at", volume_cm3});
  };
  CHECK(contains(at("2", "0.4", "140").err, "at 0 cm3 the ionic strength comes to 2 mol/dm3"));
  // Citrate of 0.25 mol/dm3 at the third equivalence: (9 x 0.25 + 3 x 0.25) / 2 = 1.5.
  const Ran citrate = desk({"curve", "--flask", "citric acid", "1", "--aliquot", "25", "--burette",
                            "sodium hydroxide", "1", "--at", "0"});
  CHECK(contains(citrate.err, "warning: at 75 cm3 the ionic strength comes to 1.5 mol/dm3"));
}

// Three drops of 0.04 cm3 beside 25 cm3 in 150 cm3.
TEST_CASE("a flask that runs over is warned of, at a volume or at an equivalence") {
  const auto curve = [](const std::string& alkali, const std::vector<std::string>& more) {
    std::vector<std::string> words = {"curve",     "--flask",     "hydrochloric acid", "0.1",
                                      "--aliquot", "25",          "--burette",         "sodium hydroxide",
                                      alkali,      "--indicator", "methyl red"};
    words.insert(words.end(), more.begin(), more.end());
    return desk(words);
  };
  const std::string full =
      "warning: the flask that colours are seen in holds 150 cm3 and is full at 124.88 cm3";
  CHECK(curve("0.1", {"--at", "124.88"}).err == "");
  const Ran over = curve("0.1", {"--at", "0,125"});
  CHECK(over.status == 0);
  CHECK(lines_of(over.out).size() == 3);
  CHECK(contains(over.err, full));
  CHECK(contains(curve("0.1", {"--to", "200", "--step", "50"}).err, full));
  CHECK(contains(curve("0.01", {"--at", "0"}).err, full));  // equivalence at 250 cm3
  CHECK(contains(desk({"curve", kVinegar, "--at", "130"}).err, "warning: the level's flask holds 150 cm3"));
}

TEST_CASE("constants for another number of protons are used with a warning, and --json carries them") {
  const auto curve = [](const std::string& pka, bool json) {
    std::vector<std::string> words =
        alkali_into("ethanoic acid", {"--ideal", "--pkw", "14.00", "--pka", pka, "--at", "0"});
    words.insert(words.begin(), "curve");
    if (json) words.push_back("--json");
    return desk(words);
  };
  CHECK(curve("4.76", false).err == "");
  CHECK(contains(curve("4.76", true).out,
                 R"("flask":{"substance":"ethanoic acid","mol_dm3":0.1,"pKa":[4.76]})"));
  CHECK(contains(curve("4.76", true).out, R"("warnings":[])"));
  const std::string says = "--pka gives ethanoic acid 2 protons to lose; it has 1";
  CHECK(contains(curve("1.886057,6.229148", false).err, "warning: " + says));
  const Ran json = curve("1.886057,6.229148", true);
  CHECK(contains(json.out, R"("pKa":[1.886057,6.229148])"));
  CHECK(contains(json.out, says));
}

TEST_CASE("a curve takes other names and formulas") {
  const auto rows = [](const std::string& acid, const std::string& alkali) {
    return desk({"curve", "--flask", acid, "0.1", "--aliquot", "25", "--burette", alkali, "0.1",
                 "--indicator", "bromthymol blue", "--at", "0,25"});
  };
  const Ran plain = rows("ethanoic acid", "sodium hydroxide");
  CHECK(plain.status == 0);
  CHECK(rows("acetic acid", "NaOH").out == plain.out);
  CHECK(rows("CH3COOH", "caustic soda").out == plain.out);
  CHECK(rows("ETHANOIC ACID", "Caustic Soda").out == plain.out);
  const Ran json = desk({"curve", "--flask", "acetic acid", "0.1", "--aliquot", "25", "--burette", "NaOH",
                         "0.1", "--at", "0", "--json"});
  CHECK(contains(json.out, "\"substance\":\"ethanoic acid\""));
}

TEST_CASE("an unknown substance is answered with the nearest known one") {
  const Ran ran = desk(
      {"curve", "--flask", "etanoic acid", "0.1", "--aliquot", "25", "--burette", "sodium hydroxide", "0.1"});
  CHECK(ran.status == 2);
  CHECK(contains(ran.err, "did you mean \"ethanoic acid\"?"));
  const Ran far =
      desk({"curve", "--flask", "xyz", "0.1", "--aliquot", "25", "--burette", "sodium hydroxide", "0.1"});
  CHECK(far.status == 2);
  CHECK(contains(far.err, "ethanoic acid"));
  CHECK(desk({"curve"}).status == 2);
  const Ran both = desk({"curve", kVinegar, "--aliquot", "20"});
  CHECK(both.status == 2);
  CHECK(contains(both.err, "a level brings its own"));
  CHECK(desk({"curve", "--flask", "ammonia", "much", "--aliquot", "25", "--burette", "sodium hydroxide", "1"})
            .status == 2);
  CHECK(desk({"curve", "/no/such/level.json"}).status == 3);
}

}  // namespace halfdrop::test

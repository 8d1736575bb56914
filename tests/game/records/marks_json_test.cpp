// The contract others script against: exactly these keys, numbers or null, one line.

#include "game/records/marks_json.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "tests/support/bench_hands.h"
#include "tests/support/json.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::Json;
using test::json_of;

const MarkedAttempt& marked() {
  static const MarkedAttempt kMarked = [] {
    test::BenchHands hands;
    hands.whole_attempt();
    return mark(hands.hand_in());
  }();
  return kMarked;
}

std::string keys(const Json& object) {
  std::string names;
  for (const auto& [name, value] : object.items()) names += (names.empty() ? "" : " ") + name;
  return names;
}

TEST_CASE("the first of two endpoints stands beside the contract's keys, and only where there is one") {
  MarkedAttempt two = marked();
  two.ideal_first_titre_cm3 = 16.0;
  two.mean_first_titre_cm3 = 16.05;
  for (TitreRow& row : two.titres) row.first = FirstTitre{16.25, 16.05, 16.05, "16.25", row.breakdown};
  const Json json = json_of(marks_json(two, "wren.jsonl"));
  CHECK(json["ideal_first_titre_cm3"] == 16.0);
  CHECK(json["mean_first_titre_cm3"] == 16.05);
  for (const Json& titre : json["titres"]) {
    CHECK(keys(titre) ==
          "run initial_cm3 final_cm3 recorded_cm3 ideal_cm3 used breakdown remainder_cm3 first");
    CHECK(keys(titre["first"]) == "reading_cm3 recorded_cm3 ideal_cm3 breakdown remainder_cm3");
    CHECK(titre["first"]["breakdown"].size() == kCauses);
  }
}

TEST_CASE("an attempt's marks have exactly the contract's keys") {
  const std::string text = marks_json(marked(), "wren.jsonl");
  CHECK(text.find('\n') == std::string::npos);
  const Json json = json_of(text);
  CHECK(keys(json) ==
        "attempt level alias way reproduced titres mean_titre_cm3 ideal_titre_cm3 concentration uncertainty "
        "marks findings result_split next");
  CHECK(keys(json["concentration"]) == "reported true unit");
  CHECK(keys(json["marks"]) == "safety hand eye record arithmetic total of");
  REQUIRE(json["titres"].size() == 3);
  for (const Json& titre : json["titres"]) {
    CHECK(keys(titre) == "run initial_cm3 final_cm3 recorded_cm3 ideal_cm3 used breakdown remainder_cm3");
    CHECK(titre["breakdown"].size() == kCauses);
  }
  for (const Json& finding : json["findings"])
    CHECK(keys(finding) == "criterion met seen tick cost_cm3 advice");
  CHECK(json["attempt"] == "wren.jsonl");
  CHECK(json["level"] == "01-spirit-vinegar");
  CHECK(json["alias"] == "Wren");
  CHECK(json["way"] == "independent");
  CHECK(json["reproduced"] == true);
}

TEST_CASE(
    "what a script adds up is what the breakdown says: recorded is ideal plus its causes plus the "
    "remainder") {
  const Json json = json_of(marks_json(marked(), "a"));
  for (const Json& titre : json["titres"]) {
    double sum_cm3 = titre["ideal_cm3"].get<double>() + titre["remainder_cm3"].get<double>();
    for (const auto& [cause, cm3] : titre["breakdown"].items()) sum_cm3 += cm3.get<double>();
    CHECK_NEAR(titre["recorded_cm3"].get<double>(), sum_cm3, 1e-9);
    CHECK_NEAR(titre["recorded_cm3"].get<double>(),
               titre["final_cm3"].get<double>() - titre["initial_cm3"].get<double>(), 1e-9);
  }
}

TEST_CASE("the uncertainty has its keys, and its budget adds up") {
  const Json json = json_of(marks_json(marked(), "a"));
  const Json own = json["uncertainty"];
  CHECK(keys(own) == "value unit standard expanded k relative budget perfect_hands");
  CHECK(keys(own["perfect_hands"]) == "expanded");
  double variance = 0.0, shares = 0.0;
  for (const Json& line : own["budget"]) {
    CHECK(keys(line) == "quantity value unit standard sensitivity contribution share");
    variance += std::pow(line["sensitivity"].get<double>() * line["standard"].get<double>(), 2);
    shares += line["share"].get<double>();
  }
  CHECK(own["k"] == 2.0);
  CHECK(own["unit"] == json["concentration"]["unit"]);
  CHECK_NEAR(own["value"].get<double>(), json["concentration"]["reported"].get<double>(), 0.0005);
  CHECK_NEAR(own["standard"].get<double>(), std::sqrt(variance), 1e-12);
  CHECK_NEAR(own["expanded"].get<double>(), 2.0 * std::sqrt(variance), 1e-12);
  CHECK_NEAR(own["relative"].get<double>() * own["value"].get<double>(), std::sqrt(variance), 1e-12);
  CHECK_NEAR(shares, 1.0, 1e-12);
}

TEST_CASE("a terminal gets the result with its uncertainty, the largest share first") {
  const std::string text = marks_text(marked(), "a");
  const UncertaintyBudget& budget = marked().uncertainty->budget;
  CHECK(text.find("Perfect hands could have got ±") != std::string::npos);
  std::vector<std::pair<std::size_t, double>> rows;
  const std::size_t table = text.find("|c| u");
  REQUIRE(table != std::string::npos);
  for (const BudgetLine& line : budget.lines) {
    rows.emplace_back(text.find("\n  " + line.quantity.name + "  ", table), line.share);
    CHECK_MESSAGE(rows.back().first != std::string::npos, line.quantity.name);
  }
  std::sort(rows.begin(), rows.end());
  CHECK(std::is_sorted(rows.begin(), rows.end(),
                       [](const auto& above, const auto& below) { return above.second > below.second; }));
}

TEST_CASE("the scores add up to the total") {
  const Json marks = json_of(marks_json(marked(), "a"))["marks"];
  double sum = 0.0;
  for (const char* score : {"hand", "eye", "record", "arithmetic"}) sum += marks[score].get<double>();
  CHECK_NEAR(marks["total"].get<double>(), sum, 1e-12);
  CHECK(marks["safety"] == true);
  CHECK(marks["of"].get<double>() >= sum);
}

TEST_CASE("what was not written is null") {
  const Json json = json_of(marks_json(mark(Attempt{test::spirit_vinegar(), 1, "", {}}), "a"));
  CHECK(json["mean_titre_cm3"].is_null());
  CHECK(json["concentration"]["reported"].is_null());
  CHECK(json["concentration"]["true"].is_number());
  CHECK(json["uncertainty"].is_null());
  CHECK(json["titres"].empty());
}

TEST_CASE("a run with one reading has nulls where the other would be needed") {
  MarkedAttempt half;
  half.titres.resize(1);
  half.titres[0].run = "1";
  half.titres[0].initial_cm3 = 0.15;
  const Json titre = json_of(marks_json(half, "a"))["titres"][0];
  for (const char* key : {"final_cm3", "recorded_cm3", "breakdown", "remainder_cm3"}) {
    CAPTURE(key);
    CHECK(titre[key].is_null());
  }
  CHECK_NEAR(titre["initial_cm3"].get<double>(), 0.15, 0.0);
}

TEST_CASE("what is not finite is null, and bytes that are no UTF-8 do not stop the marks") {
  MarkedAttempt odd;
  odd.reported = std::numeric_limits<double>::infinity();
  odd.mean_titre_cm3 = std::nan("");
  odd.alias = "\xff\xfe";
  const Json json = json_of(marks_json(odd, "\xc3"));
  CHECK(json["concentration"]["reported"].is_null());
  CHECK(json["mean_titre_cm3"].is_null());
}

std::size_t fields(const std::string& row) {
  bool inside = false;
  std::size_t count = 1;
  for (const char c : row) {
    inside = inside != (c == '"');
    if (c == ',' && !inside) ++count;
  }
  return count;
}

TEST_CASE("a row of the table has as many fields as its head") {
  CHECK(fields(marks_csv_row(marked(), "a, b.jsonl")) == fields(marks_csv_header()));
  CHECK(fields(marks_csv_row(MarkedAttempt{}, "a")) == fields(marks_csv_header()));
}

TEST_CASE("a name that a spreadsheet would take for a formula is defused") {
  MarkedAttempt named;
  for (const char* name : {"=1+2", "+1", "-1", "@sum", "\tx", "\rx"}) {
    named.alias = name;
    const std::string row = marks_csv_row(named, "a");
    CAPTURE(row);
    CHECK((row.starts_with("a,'") || row.starts_with("a,\"'")));
  }
  named.alias = "Wren \"the steady\", 3b";
  CHECK(marks_csv_row(named, "=cmd").starts_with("'=cmd,\"Wren \"\"the steady\"\", 3b\","));
}

std::size_t widest_line(const std::string& text) {
  std::size_t widest = 0;
  std::size_t here = 0;
  for (const char c : text) {
    if (c == '\n')
      here = 0;
    else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U)
      widest = std::max(widest, ++here);
  }
  return widest;
}

TEST_CASE("marks for a terminal fit it and say what they are not") {
  const std::string text = marks_text(marked(), "wren.jsonl");
  CHECK(widest_line(text) <= 100);
  CHECK(text.find("no evidence of practical competence") != std::string::npos);
  CHECK(text.find("rehearsal") != std::string::npos);
  CHECK(text.find("trial") != std::string::npos);
}

TEST_CASE("the largest cause of a run comes first") {
  MarkedAttempt made;
  made.titres.resize(1);
  made.titres[0].run = "1";
  TitreBreakdown parts;
  parts.causes_cm3[static_cast<std::size_t>(Cause::rounding)] = 0.02;
  parts.causes_cm3[static_cast<std::size_t>(Cause::jet_air)] = -0.20;
  parts.causes_cm3[static_cast<std::size_t>(Cause::overshoot)] = 0.10;
  made.titres[0].breakdown = parts;
  const std::string text = marks_text(made, "a");
  const std::size_t jet = text.find("−0.200  Air in the jet");
  const std::size_t past = text.find("+0.100  Endpoint passed\n");
  const std::size_t rounding = text.find("+0.020  Rounding");
  REQUIRE(jet != std::string::npos);
  REQUIRE(past != std::string::npos);
  REQUIRE(rounding != std::string::npos);
  CHECK(jet < past);
  CHECK(past < rounding);
}

TEST_CASE("a name cannot steer the terminal") {
  MarkedAttempt named;
  named.alias = "\x1b[2Jgone\xc2\x9b";
  const std::string text = marks_text(named, "a\x07");
  CHECK(text.find('\x1b') == std::string::npos);
  CHECK(text.find('\x07') == std::string::npos);
  CHECK(text.find("\xc2\x9b") == std::string::npos);
}

}  // namespace
}  // namespace halfdrop

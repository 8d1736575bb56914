// The calculation on another bench's figures, and what of it is withdrawn.

#include "game/marking/worked_example.h"

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <set>
#include <sstream>

#include "game/marking/calculation.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"

namespace halfdrop {

namespace {

std::vector<Level> exercises() {
  std::vector<Level> levels;
  for (const auto& file : std::filesystem::directory_iterator(test::source_file("levels"))) {
    if (file.path().extension() != ".json" || file.path().stem() == "schema") continue;
    auto level = read_level(file.path().string());
    if (level && !level->calculation.empty()) levels.push_back(std::move(*level));
  }
  return levels;
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  std::istringstream stream(text);
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

/// What a pencil makes of "a × b ÷ c + d − e", products first; a leading "(x + y)" is their sum.
double by_pencil(std::string sum) {
  if (sum.starts_with("(")) {
    const std::size_t close = sum.find(')');
    sum = std::to_string(by_pencil(sum.substr(1, close - 1))) + sum.substr(close + 1);
  }
  const auto words = words_of(sum);
  double total = 0.0, term = std::stod(words.at(0)), sign = 1.0;
  for (std::size_t i = 1; i + 1 < words.size(); i += 2) {
    const double next = std::stod(words[i + 1]);
    if (words[i] == "×") {
      term *= next;
    } else if (words[i] == "÷") {
      term /= next;
    } else {
      total += sign * term;
      sign = words[i] == "+" ? 1.0 : -1.0;
      term = next;
    }
  }
  return total + sign * term;
}

/// Trial and two accurate runs, and the working as given; an empty text is not written.
ResultsSheet sheet_with(const std::vector<std::pair<std::string, std::string>>& working) {
  ResultsSheet sheet;
  for (const char* run : {"1", "2"}) {
    sheet.write(1, {std::string(run) + "/initial", "0.00"});
    sheet.write(1, {std::string(run) + "/final", "20.00"});
    sheet.write(1, {std::string(run) + "/titre", "20.00"});
    sheet.write(1, {std::string(run) + "/counts", "yes"});
  }
  for (const auto& [cell, text] : working) sheet.write(2, {"calculation/" + cell, text});
  return sheet;
}

}  // namespace

TEST_CASE("every line of every level's example comes out by pencil as it is printed") {
  const auto levels = exercises();
  REQUIRE(levels.size() >= 9);
  for (const Level& level : levels) {
    CAPTURE(level.id);
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      const WorkedExample example = worked_example(level, seed);
      REQUIRE(example.lines.size() == level.calculation.size());
      for (const WorkedLine& line : example.lines) {
        CAPTURE(line.figures);
        const std::size_t equals = line.figures.rfind(" = ");
        const std::string result = words_of(line.figures.substr(equals + 3)).front();
        CHECK(line.value > 0.0);
        CHECK_NEAR(line.value, std::stod(result), 1e-12);
        CHECK_NEAR(by_pencil(line.figures.substr(0, equals)), line.value,
                   half_unit_written(result) * (1.0 + 1e-6));
      }
    }
  }
}

TEST_CASE("the example's figures are others than the level's, the same for a seed and others for another") {
  std::set<std::string> means;
  for (const Level& level : exercises()) {
    CAPTURE(level.id);
    const WorkedExample one = worked_example(level, 7), again = worked_example(level, 7);
    for (std::size_t i = 0; i < one.lines.size(); ++i) CHECK(one.lines[i].figures == again.lines[i].figures);
    for (std::uint64_t seed = 1; seed < 10; ++seed) {
      means.insert(worked_example(level, seed).lines.front().figures);
      for (const std::string& given : worked_example(level, seed).given) {
        CAPTURE(given);
        for (const std::string& word : words_of(given)) {
          if (!number_written(word)) continue;
          CHECK(std::fabs(*number_written(word) - level.titrant.label_mol_dm3) > 1e-9);
          for (const Constant& constant : level.constants)
            CHECK(std::fabs(*number_written(word) - constant.value) > 1e-9);
        }
      }
    }
  }
  CHECK(means.size() > 8);
}

TEST_CASE("level one's example reads as a teacher would write it") {
  const WorkedExample example = worked_example(test::good_level(), 3);
  REQUIRE(example.lines.size() == 5);
  CHECK(example.lines[1].words == "titrant's strength × mean titre ÷ 1000");
  CHECK(example.lines[1].figures.ends_with(" mol"));
  CHECK(example.lines[3].words == "moles of acid × 1000 ÷ aliquot");
  CHECK(example.lines[4].words == "diluted vinegar × dilution");
  CHECK(example.lines[4].figures.ends_with(" mol dm⁻³"));
  CHECK(significant_figures(
            words_of(example.lines[4].figures.substr(example.lines[4].figures.rfind("= ") + 2)).front()) ==
        3);
  CHECK(worked_example(Level{}, 1).lines.empty());
}

TEST_CASE("lines that are right on the player's own figures are told from those that are not") {
  const Level level = test::good_level();
  const auto right =
      lines_done_rightly(level, sheet_with({{"mean titre", "20.00"},
                                            {"moles of alkali", "0.0200"},  // ten times too much
                                            {"moles of acid", "0.0200"},
                                            {"diluted vinegar", ""},
                                            {"spirit vinegar", "8.00"}}));
  CHECK(right ==
        std::vector<std::string>{kMeanTitre, "calculation/moles of acid", "calculation/spirit vinegar"});
  CHECK(lines_done_rightly(level, ResultsSheet{}).empty());
  // As the marks have it: half a unit of the last place.
  CHECK(lines_done_rightly(level, sheet_with({{"mean titre", "20.02"}})).empty());
  CHECK(lines_done_rightly(level, sheet_with({{"mean titre", "20.01"}})) ==
        std::vector{std::string(kMeanTitre)});
}

TEST_CASE("each attempt withdraws one line more, the last that was right, and none that never was") {
  const Level level = test::good_level();
  std::vector<std::string> all;
  for (const CalculationStep& step : level.calculation) all.push_back(step.cell);
  CHECK(lines_withdrawn(level, {}).empty());
  CHECK(lines_withdrawn(level, {all}) == std::vector<std::string>{all[4]});
  CHECK(lines_withdrawn(level, {all, all}) == std::vector<std::string>{all[4], all[3]});
  CHECK(lines_withdrawn(level, {{all[1]}, {}, {all[1], all[4]}}) == std::vector<std::string>{all[1], all[4]});
  CHECK(lines_withdrawn(level, std::vector(9, all)).size() == all.size());
}

}  // namespace halfdrop

#include "game/marking/worked_example.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "game/level/say.h"
#include "game/level/standard_to_make.h"
#include "game/marking/calculation.h"
#include "game/marking/wording.h"
#include "game/session/action.h"
#include "physics/random.h"

namespace halfdrop {

namespace {

constexpr double kLeastTitre_cm3 = 15.0, kHalfDivision_cm3 = 0.05;
constexpr int kTitres = 400;  ///< half divisions from the least to 35 cm³

template <std::size_t n>
double one_of(Random& random, const std::array<double, n>& choices) {
  return choices.at(std::min(n - 1, static_cast<std::size_t>(random.uniform() * static_cast<double>(n))));
}

double rounded(double value, int decimals) {
  const double power = std::pow(10.0, decimals);
  return tidy(std::round(value * power) / power);
}

/// Decimals that show so many significant figures.
int decimals_for(double value, int figures) {
  return std::max(0, figures - 1 - static_cast<int>(std::floor(std::log10(std::fabs(value)))));
}

double another_dilution(Random& random, double own) {
  double other = own;
  while (other == own) other = one_of(random, std::array{4.0, 5.0, 10.0, 20.0, 25.0});
  return other;
}

double another_aliquot(Random& random, double own) {
  if (own > 50.0) return 50.0;
  double other = own;
  while (other == own) other = one_of(random, std::array{10.0, 20.0, 25.0, 50.0});
  return other;
}

/// A strength or a mass about as large, to three figures, and never the same.
double another(Random& random, double own) {
  const double factor = one_of(random, std::array{0.85, 0.90, 1.10, 1.15, 1.20});
  return rounded(own * factor, decimals_for(own, 3));
}

/// The same level with another bench's figures.
Level another_bench(const Level& level, Random& random) {
  Level other = level;
  other.aliquot_cm3 = another_aliquot(random, level.aliquot_cm3);
  if (level.dilution > 1.0) other.dilution = another_dilution(random, level.dilution);
  LiquidSpec& known = level.unknown_in_flask ? other.titrant : other.sample;
  known.label_mol_dm3 = another(random, known.label_mol_dm3);
  for (Constant& constant : other.constants) constant.value = another(random, constant.value);
  if (level.standard) {
    const double mass_g = another(random, level_value(level, kBottleBefore).value_or(0.0) -
                                              level_value(level, kBottleAfter).value_or(0.0)),
                 after_g = rounded(random.uniform(18.0, 24.0), 3);
    return as_weighed(std::move(other), rounded(after_g + mass_g, 3), after_g);
  }
  return other;
}

std::string plain(double value) {
  const std::string text = figure_text(value, 6);
  const std::string cut = text.substr(0, text.find_last_not_of('0') + 1);
  return cut.ends_with('.') ? cut.substr(0, cut.size() - 1) : cut;
}

/// Written as a bench's paper has it: strengths to four decimals, volumes to one.
std::string printed(const Level& level, const std::string& name) {
  const double value = level_value(level, name).value_or(0.0);
  if (name == "aliquot_cm3") return figure_text(value, 1);
  if (name == kBottleBefore || name == kBottleAfter) return figure_text(value, 3);
  if (name.ends_with("_mol_dm3")) return figure_text(value, std::max(4, decimals_for(value, 3)));
  for (const Constant& constant : level.constants) {
    if (constant.name == name) return figure_text(value, decimals_for(value, 4));
  }
  return plain(value);
}

std::string worded(const Level& level, const std::string& name) {
  if (name == "aliquot_cm3") return say("worked.aliquot");
  if (name == "titrant_mol_dm3") return say("worked.titrant");
  if (name == "sample_mol_dm3") return say("worked.standard");
  if (name == "volumetric_flask_cm3") return say("worked.volumetric_flask");
  if (name == kBottleBefore) return say("worked.bottle_before");
  if (name == kBottleAfter) return say("worked.bottle_after");
  for (const Constant& constant : level.constants) {
    if (constant.name == name) return constant.label;
  }
  const std::string cell = "calculation/";
  return name.starts_with(cell) ? name.substr(cell.size()) : name;
}

/// Words and figures of a line, grown side by side.
class Line {
 public:
  Line(const Level& bench, const std::vector<WorkedLine>& above) : bench_(bench), above_(above) {}

  void add(const std::vector<Factor>& factors, const char* sign) {
    for (const Factor& factor : factors) {
      join(words_, sign, word_of(factor));
      join(figures_, sign, figure_of(factor));
    }
  }
  [[nodiscard]] const std::string& words() const { return words_; }
  [[nodiscard]] const std::string& figures() const { return figures_; }

 private:
  static void join(std::string& text, const char* sign, const std::string& next) {
    text += text.empty() ? next : std::string(" ") + sign + " " + next;
  }
  [[nodiscard]] std::string word_of(const Factor& factor) const {
    const double* number = std::get_if<double>(&factor);
    return number != nullptr ? plain(*number) : worded(bench_, std::get<std::string>(factor));
  }
  [[nodiscard]] std::string figure_of(const Factor& factor) const {
    if (const double* number = std::get_if<double>(&factor)) return plain(*number);
    const auto& name = std::get<std::string>(factor);
    for (const WorkedLine& line : above_) {
      if (line.cell != name) continue;
      const std::size_t equals = line.figures.rfind("= ") + 2;
      return line.figures.substr(equals, line.figures.find(' ', equals) - equals);
    }
    return printed(bench_, name);
  }

  const Level& bench_;
  const std::vector<WorkedLine>& above_;
  std::string words_, figures_;
};

std::string with_unit(const std::string& figure, const std::string& unit) {
  return unit.empty() ? figure : figure + " " + unit;
}

/// Nothing where the value would not be positive.
std::optional<WorkedLine> line_of(const Level& bench, const CalculationStep& step, bool last,
                                  const std::vector<WorkedLine>& above) {
  CellValues cells;
  for (const WorkedLine& line : above) cells[line.cell] = line.value;
  const auto value = evaluate(bench, step, cells);
  if (!value || !(*value > 0.0)) return std::nullopt;
  Line line(bench, above);
  line.add(step.multiply, "×");
  line.add(step.divide, "÷");
  line.add(step.plus, "+");
  line.add(step.minus, "−");
  const std::string figure = figure_text(*value, decimals_for(*value, step.least_figures + (last ? 0 : 1)));
  return WorkedLine{step.cell, step.prompt, line.words(),
                    line.figures() + " = " + with_unit(figure, step.unit),
                    number_written(figure).value_or(*value)};
}

/// Two titres that agree, and their mean.
WorkedLine mean_line(Random& random, const CalculationStep& step, std::vector<std::string>& given) {
  const double first =
      kLeastTitre_cm3 + kHalfDivision_cm3 * std::floor(random.uniform() * static_cast<double>(kTitres));
  const std::string one = figure_text(first, 2), two = figure_text(first + 2 * kHalfDivision_cm3, 2);
  const std::string mean = figure_text(first + kHalfDivision_cm3, 2);
  given.push_back(step.cell == kMeanTitre ? say("worked.titres", {{"one", one}, {"two", two}})
                                          : say("worked.first_titres", {{"one", one}, {"two", two}}));
  return {step.cell, step.prompt, say("worked.mean"),
          "(" + one + " + " + two + ") ÷ 2 = " + with_unit(mean, step.unit), *number_written(mean)};
}

/// What the other bench's paper says besides its titres, as far as the working asks for it.
void give(const Level& bench, const std::vector<Factor>& factors, std::vector<std::string>& given) {
  for (const Factor& factor : factors) {
    const auto* name = std::get_if<std::string>(&factor);
    if (name == nullptr || name->starts_with("calculation/") || *name == "ratio") continue;
    std::string text = worded(bench, *name) + " " + printed(bench, *name);
    if (*name == "aliquot_cm3") text += " cm³";
    if (name->ends_with("_mol_dm3")) text += " mol dm⁻³";
    for (const Constant& constant : bench.constants) {
      if (constant.name == *name) text += " " + constant.unit;
    }
    if (*name == "dilution") text = say("worked.diluted", {{"times", printed(bench, *name)}});
    if (std::find(given.begin(), given.end(), text) == given.end()) given.push_back(std::move(text));
  }
}

std::optional<WorkedExample> tried(const Level& level, Random& random) {
  const Level bench = another_bench(level, random);
  WorkedExample example;
  for (const CalculationStep& step : bench.calculation) {
    if (is_mean(step.cell)) {
      example.lines.push_back(mean_line(random, step, example.given));
      continue;
    }
    for (const auto* factors : {&step.multiply, &step.divide, &step.plus, &step.minus}) {
      give(bench, *factors, example.given);
    }
    auto line = line_of(bench, step, &step == &bench.calculation.back(), example.lines);
    if (!line) return std::nullopt;
    example.lines.push_back(std::move(*line));
  }
  return example;
}

/// Mean of the ticked titres: of those from the initial reading to the one in `reading`, or as written.
std::optional<double> own_mean(const Level& level, const ResultsSheet& sheet, const char* titre_row,
                               const char* reading) {
  double sum = 0.0;
  int count = 0;
  for (const std::string& run : run_names(level)) {
    if (!sheet.ticked(run)) continue;
    const auto titre = sheet.number(run + titre_row);
    const auto first = sheet.number(run + "/initial"), last = sheet.number(run + reading);
    if (!titre && !(first && last)) continue;
    sum += titre ? *titre : *last - *first;
    ++count;
  }
  return count > 0 ? std::optional(sum / count) : std::nullopt;
}

}  // namespace

WorkedExample worked_example(const Level& level, std::uint64_t seed) {
  constexpr int kTries = 200;  // of what a difference could make negative
  if (level.calculation.empty()) return {};
  Random random = Random::stream(seed, 0, Purpose::worked_example);
  for (int i = 0; i < kTries; ++i) {
    if (auto example = tried(level, random)) return std::move(*example);
  }
  return {};
}

std::vector<std::string> lines_done_rightly(const Level& level, const ResultsSheet& sheet) {
  const auto mean = own_mean(level, sheet, "/titre", "/final");
  const auto first_mean =
      level.then ? own_mean(level, sheet, "/first titre", "/first endpoint") : std::nullopt;
  std::vector<std::string> cells;
  const auto check_mean = [&](const char* cell, const std::optional<double>& own) {
    const auto written = sheet.number(cell);
    if (own && written && mean_agrees(sheet.text(cell), *written, *own)) cells.emplace_back(cell);
  };
  check_mean(kMeanTitre, mean);
  if (level.then) check_mean(kMeanFirstTitre, first_mean);
  for (const WorkedStep& step : check_working(level, sheet, mean, first_mean)) {
    if (step.right) cells.push_back(step.step.cell);
  }
  return cells;
}

std::vector<std::string> lines_withdrawn(const Level& level,
                                         const std::vector<std::vector<std::string>>& done_rightly) {
  std::vector<std::string> withdrawn;
  const auto among = [](const std::vector<std::string>& cells, const std::string& cell) {
    return std::find(cells.begin(), cells.end(), cell) != cells.end();
  };
  for (const std::vector<std::string>& done : done_rightly) {
    const auto next = std::find_if(
        level.calculation.rbegin(), level.calculation.rend(),
        [&](const CalculationStep& step) { return among(done, step.cell) && !among(withdrawn, step.cell); });
    if (next != level.calculation.rend()) withdrawn.push_back(next->cell);
  }
  return withdrawn;
}

}  // namespace halfdrop

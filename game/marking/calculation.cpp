#include "game/marking/calculation.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {

namespace {

constexpr double kRounding = 0.001;

std::optional<double> factor_value(const Level& level, const Factor& factor, const CellValues& cells) {
  if (const double* number = std::get_if<double>(&factor)) return *number;
  const std::string& name = std::get<std::string>(factor);
  const auto cell = cells.find(name);
  if (cell != cells.end()) return cell->second;
  const auto value = level_value(level, name);
  return value ? std::optional(*value) : std::nullopt;
}

void keep(CellValues& cells, const std::string& cell, std::optional<double> value) {
  if (value) cells[cell] = *value;
}

std::optional<double> sum_of(const Level& level, const std::vector<Factor>& terms, const CellValues& cells) {
  double sum = 0.0;
  for (const Factor& term : terms) {
    const auto part = factor_value(level, term, cells);
    if (!part) return std::nullopt;
    sum += *part;
  }
  return sum;
}

}  // namespace

std::optional<double> evaluate(const Level& level, const CalculationStep& step, const CellValues& cells) {
  double value = step.multiply.empty() ? 0.0 : 1.0;
  for (const Factor& factor : step.multiply) {
    const auto part = factor_value(level, factor, cells);
    if (!part) return std::nullopt;
    value *= *part;
  }
  for (const Factor& factor : step.divide) {
    const auto part = factor_value(level, factor, cells);
    if (!part || *part == 0.0) return std::nullopt;
    value /= *part;
  }
  const auto plus = sum_of(level, step.plus, cells), minus = sum_of(level, step.minus, cells);
  if (!plus || !minus) return std::nullopt;
  value += *plus - *minus;
  return std::isfinite(value) ? std::optional(value) : std::nullopt;
}

std::optional<double> result_with(const Level& level, const CellValues& written) {
  CellValues cells = written;
  std::optional<double> last;
  for (const CalculationStep& step : level.calculation) {
    const auto found = written.find(step.cell);
    last = found != written.end() ? std::optional(found->second) : evaluate(level, step, cells);
    keep(cells, step.cell, last);
  }
  return last;
}

CellValues MeanTitres::cells() const {
  CellValues cells = {{kMeanTitre, whole_cm3}};
  keep(cells, kMeanFirstTitre, first_cm3);
  return cells;
}

std::optional<double> result_from_means(const Level& level, const MeanTitres& means) {
  return result_with(level, means.cells());
}

std::optional<double> result_from_mean(const Level& level, double mean_cm3) {
  return result_from_means(level, {mean_cm3});
}

bool mean_agrees(const std::string& text, double written, double mean_cm3) {
  constexpr double kLeast_cm3 = 0.01, kMost_cm3 = 0.05, kSameFigure_cm3 = 1e-6;
  double tolerance_cm3 = kLeast_cm3;
  if (decimals_written(text) > 0 && significant_figures(text) >= 2)
    tolerance_cm3 = std::clamp(half_unit_written(text), kLeast_cm3, kMost_cm3);
  return std::fabs(written - mean_cm3) <= tolerance_cm3 + kSameFigure_cm3;
}

bool agrees(const std::string& text, double written, double expected) {
  constexpr double kTiny = 1e-9;
  double tolerance = kRounding * std::fabs(expected);
  if (significant_figures(text) >= 2) tolerance = std::max(tolerance, half_unit_written(text));
  return std::fabs(written - expected) <= tolerance + kTiny * std::fabs(expected);
}

std::vector<WorkedStep> check_working(const Level& level, const ResultsSheet& sheet,
                                      std::optional<double> mean_cm3, std::optional<double> first_mean_cm3) {
  CellValues as_written;  // each line from the figures on the paper
  CellValues carried;     // ... from the figures a calculator still held
  std::vector<WorkedStep> working;
  for (const CalculationStep& step : level.calculation) {
    const std::optional<double> written = sheet.number(step.cell);
    if (is_mean(step.cell)) {
      const std::optional<double> mean = step.cell == kMeanTitre ? mean_cm3 : first_mean_cm3;
      const bool rounded_only = written && mean && agrees(sheet.text(step.cell), *written, *mean);
      keep(as_written, step.cell, written ? written : mean);
      keep(carried, step.cell, written && !rounded_only ? written : mean);
      continue;
    }
    WorkedStep worked{step,  sheet.text(step.cell),      written, evaluate(level, step, as_written),
                      false, sheet.written_at(step.cell)};
    const std::optional<double> unrounded = evaluate(level, step, carried);
    worked.right = written && ((worked.expected && agrees(worked.text, *written, *worked.expected)) ||
                               (unrounded && agrees(worked.text, *written, *unrounded)));
    keep(as_written, step.cell, written ? written : worked.expected);
    keep(carried, step.cell, worked.right && unrounded ? unrounded : (written ? written : worked.expected));
    working.push_back(std::move(worked));
  }
  return working;
}

}  // namespace halfdrop

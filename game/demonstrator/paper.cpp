#include "game/demonstrator/paper.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

#include "game/marking/calculation.h"

namespace halfdrop {

namespace {

std::string fixed_text(double value, int decimals) {
  std::array<char, 64> text{};
  const auto result =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
  return {text.data(), result.ptr};
}

}  // namespace

std::string hundredths_text(int hundredths) { return fixed_text(hundredths / 100.0, 2); }

std::string figures_text(double value, int figures) {
  int decimals = 0;
  // The place of the first figure after rounding: 9.996 to 3 figures is 10.0.
  for (double size = std::fabs(value);
       decimals < 20 && size * (1.0 + 0.5 * std::pow(10.0, -figures)) < std::pow(10.0, figures - 1);
       size *= 10.0) {
    ++decimals;
  }
  return fixed_text(value, decimals);
}

void Paper::initial(const std::string& run, int hundredths) {
  initials_[run] = hundredths;
  bench_.write(run + "/initial", hundredths_text(hundredths));
}

void Paper::final(const std::string& run, int hundredths) {
  bench_.write(run + "/final", hundredths_text(hundredths));
  titres_[run] = hundredths - initials_.at(run);
  bench_.write(run + "/titre", hundredths_text(titres_[run]));
}

std::optional<Paper::Pair> Paper::nearest_pair(const std::vector<std::string>& accurate_runs) const {
  std::optional<Pair> nearest;
  for (const std::string& other : accurate_runs) {
    for (const std::string& one : accurate_runs) {
      if (one == other) break;
      const int apart = std::abs(titres_.at(one) - titres_.at(other));
      if (!nearest || apart < nearest->apart_hundredths) nearest = Pair{one, other, apart};
    }
  }
  return nearest;
}

void Paper::work_out(const std::vector<std::string>& counted_runs) {
  double sum = 0.0;
  for (const std::string& run : counted_runs) {
    sum += titres_.at(run);
    bench_.write(run + "/counts", "yes");
  }
  const auto count = static_cast<double>(counted_runs.size());
  const int mean = static_cast<int>(std::floor(sum / count + 0.5));
  const std::vector<CalculationStep>& steps = bench_.level().calculation;
  for (const CalculationStep& step : steps) {
    if (step.cell == kMeanTitre) {
      write_number(step.cell, hundredths_text(mean));
    } else {
      work_step(step, &step == &steps.back());
    }
  }
}

void Paper::write_number(const std::string& cell, const std::string& text) {
  bench_.write(cell, text);
  written_[cell] = number_written(text).value_or(0.0);
}

void Paper::work_step(const CalculationStep& step, bool last) {
  const std::optional<double> value = evaluate(bench_.level(), step, written_);
  if (!value) return bench_.give_up(step.cell + ": a factor of the calculation is not known");
  // Carry one figure more than is asked for until the end (common practice).
  write_number(step.cell, figures_text(*value, step.least_figures + (last ? 0 : 1)));
}

}  // namespace halfdrop

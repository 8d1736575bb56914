#include "game/demonstrator/pencil.h"

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

bool has_thousand(const std::vector<Factor>& factors) {
  return std::find(factors.begin(), factors.end(), Factor(1000.0)) != factors.end();
}

/// Cell of the first line that goes from cm3 to dm3 or back.
std::string first_with_thousand(const Level& level) {
  for (const CalculationStep& step : level.calculation) {
    if (has_thousand(step.multiply) || has_thousand(step.divide)) return step.cell;
  }
  return {};
}

/// Where a factor is taken off more than once, the rest of it is not.
void take_off_once(CalculationStep& step, const Factor& factor) {
  const auto once = std::find(step.minus.begin(), step.minus.end(), factor);
  if (once == step.minus.end()) return;
  step.minus.erase(std::remove(once + 1, step.minus.end(), factor), step.minus.end());
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

std::string Pencil::figure(int hundredths) const {
  return fixed_text(hundredths / 100.0, habits_.reading.decimals);
}

void Pencil::initial(const std::string& run, int hundredths) {
  initials_[run] = hundredths;
  bench_.write(run + (habits_.reading.in_each_others_place ? "/final" : "/initial"), figure(hundredths));
}

void Pencil::first_endpoint(const std::string& run, int hundredths) {
  bench_.write(run + "/first endpoint", figure(hundredths));
  first_titres_[run] = hundredths - initials_.at(run);
  bench_.write(run + "/first titre", figure(first_titres_[run]));
}

int Pencil::apart(const std::string& one, const std::string& other) const {
  const int whole = std::abs(titres_.at(one) - titres_.at(other));
  const auto first = first_titres_.find(one), second = first_titres_.find(other);
  if (first == first_titres_.end() || second == first_titres_.end()) return whole;
  return std::max(whole, std::abs(first->second - second->second));
}

int Pencil::mean_of(const std::vector<std::string>& runs, const std::map<std::string, int>& titres) {
  double sum = 0.0;
  for (const std::string& run : runs) sum += titres.at(run);
  return static_cast<int>(std::floor(sum / static_cast<double>(runs.size()) + 0.5));
}

void Pencil::final(const std::string& run, int hundredths) {
  bench_.write(run + (habits_.reading.in_each_others_place ? "/initial" : "/final"), figure(hundredths));
  write_titre(run, hundredths);
}

void Pencil::write_titre(const std::string& run, int final_hundredths) {
  int began_at = habits_.working.final_is_titre ? 0 : initials_.at(run);
  if (habits_.working.titre_from_first_endpoint) began_at += first_titres_.at(run);
  titres_[run] = final_hundredths - began_at;
  bench_.write(run + "/titre", figure(titres_[run]));
}

void Pencil::adjust(const std::string& run, const std::string& to_run) {
  const int hundredths = initials_.at(run) + titres_.at(to_run);
  bench_.write(run + "/final", figure(hundredths));
  write_titre(run, hundredths);
}

std::optional<Pencil::Pair> Pencil::nearest_pair(const std::vector<std::string>& accurate_runs) const {
  std::optional<Pair> nearest;
  for (const std::string& other : accurate_runs) {
    for (const std::string& one : accurate_runs) {
      if (one == other) break;
      const int hundredths = apart(one, other);
      if (!nearest || hundredths < nearest->apart_hundredths) nearest = Pair{one, other, hundredths};
    }
  }
  return nearest;
}

void Pencil::work_out(const std::vector<std::string>& counted_runs) {
  for (const std::string& run : counted_runs) bench_.write(run + "/counts", "yes");
  const std::vector<CalculationStep>& steps = bench_.level().calculation;
  for (const CalculationStep& step : steps) {
    if (is_mean(step.cell)) {
      const bool whole = step.cell == kMeanTitre;
      write_number(step.cell, hundredths_text(mean_of(counted_runs, whole ? titres_ : first_titres_)));
    } else {
      work_step(step, &step == &steps.back());
    }
  }
}

void Pencil::write_number(const std::string& cell, const std::string& text) {
  bench_.write(cell, text);
  written_[cell] = number_written(text).value_or(0.0);
}

std::optional<double> Pencil::worked_out(CalculationStep step) const {
  const WorkingHabits& working = habits_.working;
  const auto leave_out = [&step](const Factor& factor) {
    const auto same = [&](std::vector<Factor>& factors) {
      const auto there = std::find(factors.begin(), factors.end(), factor);
      if (there != factors.end()) factors.erase(there);
    };
    same(step.multiply);
    same(step.divide);
  };
  if (working.omits_ratio) leave_out("ratio");
  if (working.takes_first_titre_off_once) take_off_once(step, kMeanFirstTitre);
  if (working.omits_dilution) leave_out("dilution");
  if (working.omits_thousand && first_with_thousand(bench_.level()) == step.cell) leave_out(1000.0);
  if (!working.aliquot_for_titre) return evaluate(bench_.level(), step, written_);
  Level level = bench_.level();
  std::map<std::string, double> figures = written_;
  std::swap(level.aliquot_cm3, figures[kMeanTitre]);
  return evaluate(level, step, figures);
}

int Pencil::figures_of(const CalculationStep& step, bool last) const {
  constexpr int kTooFew = 2, kAsACalculatorShows = 10;
  if (last && habits_.working.copies_every_figure) return kAsACalculatorShows;
  if (!last && habits_.working.rounds_early) return kTooFew;
  // Carry one figure more than is asked for until the end (common practice).
  return step.least_figures + (last ? 0 : 1);
}

void Pencil::work_step(const CalculationStep& step, bool last) {
  const std::optional<double> value = worked_out(step);
  if (!value) return bench_.give_up(step.cell + ": a factor of the calculation is not known");
  write_number(step.cell, figures_text(*value, figures_of(step, last)));
}

}  // namespace halfdrop

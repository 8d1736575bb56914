#include "game/marking/result_split.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/calculation.h"
#include "game/marking/cause_titles.h"
#include "game/marking/counted_runs.h"
#include "game/marking/criteria.h"

namespace halfdrop {

namespace {

std::optional<double> hundred_ln(std::optional<double> value) {
  if (!value || !(*value > 0.0) || !std::isfinite(*value)) return std::nullopt;
  return 100.0 * std::log(*value);
}

std::optional<double> hundred_ln_at(const Level& level, double titre_cm3) {
  return hundred_ln(result_from_mean(level, titre_cm3));
}

/// Mean slope of 100 ln(result) between two titres, per cm3; where they are as good as one, the slope there.
std::optional<double> mean_slope(const Level& level, double from_cm3, double to_cm3) {
  constexpr double kAsGoodAsOne_cm3 = 1e-6;
  if (std::fabs(to_cm3 - from_cm3) < kAsGoodAsOne_cm3) {
    const double aside_cm3 = 1e-3;
    return mean_slope(level, from_cm3 - aside_cm3, from_cm3 + aside_cm3);
  }
  const auto from = hundred_ln_at(level, from_cm3), to = hundred_ln_at(level, to_cm3);
  if (!from || !to) return std::nullopt;
  return (*to - *from) / (to_cm3 - from_cm3);
}

/// Runs the titres' causes are taken from: accurate ones, else whatever was ticked.
std::vector<const TitreRow*> base_runs(const std::vector<TitreRow>& titres) {
  std::vector<const TitreRow*> runs = counted_runs(titres);
  if (!runs.empty()) return runs;
  for (const TitreRow& row : titres) {
    if (row.used && row.breakdown) runs.push_back(&row);
  }
  return runs;
}

double mean_recorded_cm3(const std::vector<const TitreRow*>& runs) {
  double sum = 0.0;
  for (const TitreRow* row : runs) sum += row->breakdown->recorded_cm3;
  return sum / static_cast<double>(runs.size());
}

/// Of everything that was ticked; nothing while nothing was.
std::optional<double> mean_ticked_cm3(const std::vector<TitreRow>& titres) {
  double sum = 0.0;
  int count = 0;
  for (const TitreRow& row : titres) {
    if (!row.used || !row.recorded_cm3) continue;
    sum += *row.recorded_cm3;
    ++count;
  }
  return count > 0 ? std::optional(sum / count) : std::nullopt;
}

class Splitter {
 public:
  Splitter(const Level& level, const ResultsSheet& sheet, const std::vector<TitreRow>& titres)
      : level_(level), sheet_(sheet), titres_(titres) {}

  /// False where there is nothing that could be split.
  bool titres(const std::vector<const TitreRow*>& runs, double ideal_cm3) {
    mean_cm3_ = mean_recorded_cm3(runs);
    const auto start = hundred_ln_at(level_, ideal_cm3), at = hundred_ln_at(level_, mean_cm3_);
    const auto slope = mean_slope(level_, ideal_cm3, mean_cm3_);
    if (!start || !at || !slope) return false;
    start_ = *start;
    at_ = *at;
    parts_.larger_with_titre = *slope > 0.0;
    const auto means = mean_causes_cm3(runs);
    for (std::size_t i = kCauses; i-- > 0;) {
      const auto cause = static_cast<Cause>(i);
      add({std::string(cause_title(cause, means[i])), ResultPartOf::titres, cause, "", means[i] * *slope});
    }
    return true;
  }

  /// From the mean of those runs to the mean that was written.
  bool means() {
    const double ticked = mean_ticked_cm3(titres_).value_or(mean_cm3_);
    const double own = own_mean_cm3(titres_).value_or(ticked);
    const double written = sheet_.number(kMeanTitre).value_or(own);
    return go_on("part.choice", ResultPartOf::choice, ticked) &&
           go_on("part.subtraction", ResultPartOf::subtraction, own) &&
           go_on("part.mean", ResultPartOf::mean, written);
  }

  /// Line by line as it was written.
  bool working() {
    CellValues written = {{kMeanTitre, mean_cm3_}};
    ResultPart rounding{say("part.rounding"), ResultPartOf::rounding, {}, "", 0.0};
    ResultPart of_result{say("part.result"), ResultPartOf::rounding, {}, "", 0.0};
    std::vector<ResultPart> slips;
    for (const WorkedStep& line : check_working(level_, sheet_, own_mean_cm3(titres_))) {
      if (!line.written) continue;
      written[line.step.cell] = *line.written;
      const auto now = hundred_ln(result_with(level_, written));
      if (!now) return false;
      const bool last = line.step.cell == level_.calculation.back().cell;
      if (line.right) {
        (last ? of_result : rounding).percent += *now - at_;
      } else {
        slips.push_back({say("part.slip", {{"line", line.step.prompt}}),
                         ResultPartOf::slip,
                         {},
                         line.step.cell,
                         *now - at_});
      }
      at_ = *now;
    }
    for (ResultPart& slip : slips) add(std::move(slip));
    add(std::move(rounding));
    add(std::move(of_result));
    return true;
  }

  [[nodiscard]] ResultSplit split() && {
    parts_.percent = at_ - start_;
    return std::move(parts_);
  }

 private:
  void add(ResultPart part) {
    if (part.percent != 0.0) parts_.parts.push_back(std::move(part));
  }
  bool go_on(Phrase name, ResultPartOf of, double mean_cm3) {
    const auto now = hundred_ln_at(level_, mean_cm3);
    if (!now) return false;
    add({name, of, {}, "", *now - at_});
    at_ = *now;
    mean_cm3_ = mean_cm3;
    return true;
  }

  const Level& level_;
  const ResultsSheet& sheet_;
  const std::vector<TitreRow>& titres_;
  ResultSplit parts_;
  double mean_cm3_ = 0.0, start_ = 0.0, at_ = 0.0;
};

}  // namespace

std::optional<ResultSplit> result_split(const Level& level, const ResultsSheet& sheet,
                                        const std::vector<TitreRow>& titres, double ideal_titre_cm3) {
  if (level.calculation.empty() || !sheet.number(level.calculation.back().cell)) return std::nullopt;
  const auto runs = base_runs(titres);
  if (runs.empty()) return std::nullopt;
  Splitter splitter(level, sheet, titres);
  if (!splitter.titres(runs, ideal_titre_cm3) || !splitter.means() || !splitter.working()) {
    return std::nullopt;
  }
  return std::move(splitter).split();
}

}  // namespace halfdrop

#include "game/marking/result_split.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/calculation.h"
#include "game/marking/cause_titles.h"
#include "game/marking/counted_runs.h"
#include "game/marking/criteria.h"

namespace halfdrop {

namespace {

/// Which titre a cause worked on, where a flask has two endpoints.
enum class Titre { only, first, whole };

std::optional<double> hundred_ln(std::optional<double> value) {
  if (!value || !(*value > 0.0) || !std::isfinite(*value)) return std::nullopt;
  return 100.0 * std::log(*value);
}

std::optional<double> hundred_ln_at(const Level& level, const MeanTitres& titres) {
  return hundred_ln(result_from_means(level, titres));
}

/// Mean slope of 100 ln(result) over a titre, per cm3; where both ends are as good as one, the slope there.
/// `at`: the titres with this one at so many cm3.
template <class At>
std::optional<double> mean_slope(const Level& level, double from_cm3, double to_cm3, const At& at) {
  constexpr double kAsGoodAsOne_cm3 = 1e-6;
  if (std::fabs(to_cm3 - from_cm3) < kAsGoodAsOne_cm3) {
    const double aside_cm3 = 1e-3;
    return mean_slope(level, from_cm3 - aside_cm3, from_cm3 + aside_cm3, at);
  }
  const auto from = hundred_ln_at(level, at(from_cm3)), to = hundred_ln_at(level, at(to_cm3));
  if (!from || !to) return std::nullopt;
  return (*to - *from) / (to_cm3 - from_cm3);
}

struct Slopes {
  double whole = 0.0, first = 0.0;
};

/// Per cm3 of each titre on the way from one pair to another: the mean of both orders of moving them, so that
/// both ways' parts add up to the whole way.
std::optional<Slopes> mean_slopes(const Level& level, const MeanTitres& from, const MeanTitres& to) {
  const auto whole_at = [&](std::optional<double> first_cm3) {
    return mean_slope(level, from.whole_cm3, to.whole_cm3, [=](double cm3) {
      return MeanTitres{cm3, first_cm3};
    });
  };
  const auto before = whole_at(from.first_cm3);
  if (!before) return std::nullopt;
  if (!from.first_cm3 || !to.first_cm3) return Slopes{*before, 0.0};
  const auto first_at = [&](double whole_cm3) {
    return mean_slope(level, *from.first_cm3, *to.first_cm3, [=](double cm3) {
      return MeanTitres{whole_cm3, cm3};
    });
  };
  const auto after = whole_at(to.first_cm3);
  const auto first_before = first_at(from.whole_cm3), first_after = first_at(to.whole_cm3);
  if (!after || !first_before || !first_after) return std::nullopt;
  return Slopes{0.5 * (*before + *after), 0.5 * (*first_before + *first_after)};
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

/// Of the first titres only where every run has one.
MeanTitres mean_recorded(const std::vector<const TitreRow*>& runs) {
  MeanTitres sum{0.0, 0.0};
  for (const TitreRow* row : runs) {
    sum.whole_cm3 += row->breakdown->recorded_cm3;
    if (!row->first || !row->first->breakdown)
      sum.first_cm3.reset();
    else if (sum.first_cm3)
      *sum.first_cm3 += row->first->breakdown->recorded_cm3;
  }
  const auto count = static_cast<double>(runs.size());
  sum.whole_cm3 /= count;
  if (sum.first_cm3) *sum.first_cm3 /= count;
  return sum;
}

std::array<double, kCauses> mean_first_causes_cm3(const std::vector<const TitreRow*>& runs) {
  std::array<double, kCauses> means{};
  for (const TitreRow* row : runs) {
    for (std::size_t i = 0; i < kCauses; ++i)
      means[i] += row->first->breakdown->causes_cm3[i] / static_cast<double>(runs.size());
  }
  return means;
}

/// Of everything that was ticked; nothing while nothing was.
template <class Recorded>
std::optional<double> mean_ticked_cm3(const std::vector<TitreRow>& titres, const Recorded& recorded_of) {
  double sum = 0.0;
  int count = 0;
  for (const TitreRow& row : titres) {
    const std::optional<double> recorded = recorded_of(row);
    if (!row.used || !recorded) continue;
    sum += *recorded;
    ++count;
  }
  return count > 0 ? std::optional(sum / count) : std::nullopt;
}

class Splitter {
 public:
  Splitter(const Level& level, const ResultsSheet& sheet, const std::vector<TitreRow>& titres)
      : level_(level), sheet_(sheet), titres_(titres) {}

  /// False where there is nothing that could be split.
  bool titres(const std::vector<const TitreRow*>& runs, const MeanTitres& ideal) {
    means_ = mean_recorded(runs);
    if (ideal.first_cm3.has_value() != means_.first_cm3.has_value()) {
      if (ideal.first_cm3) return false;
      means_.first_cm3.reset();
    }
    const auto start = hundred_ln_at(level_, ideal), at = hundred_ln_at(level_, means_);
    const auto slopes = mean_slopes(level_, ideal, means_);
    if (!start || !at || !slopes) return false;
    start_ = *start;
    at_ = *at;
    parts_.larger_with_titre = slopes->whole > 0.0;
    if (ideal.first_cm3) add_causes(mean_first_causes_cm3(runs), slopes->first, Titre::first);
    add_causes(mean_causes_cm3(runs), slopes->whole, ideal.first_cm3 ? Titre::whole : Titre::only);
    return true;
  }

  /// From the means of those runs to the means that were written.
  bool means() {
    const auto whole = [](const TitreRow& row) { return row.recorded_cm3; };
    const auto first = [](const TitreRow& row) { return row.first ? row.first->recorded_cm3 : std::nullopt; };
    const bool two = means_.first_cm3.has_value();
    MeanTitres now = means_;
    const auto to = [&](std::optional<double> whole_cm3, std::optional<double> first_cm3) {
      now.whole_cm3 = whole_cm3.value_or(now.whole_cm3);
      if (two) now.first_cm3 = first_cm3.value_or(*now.first_cm3);
      return now;
    };
    return go_on("part.choice", ResultPartOf::choice,
                 to(mean_ticked_cm3(titres_, whole), mean_ticked_cm3(titres_, first))) &&
           go_on("part.subtraction", ResultPartOf::subtraction,
                 to(own_mean_cm3(titres_), own_first_mean_cm3(titres_))) &&
           go_on("part.mean", ResultPartOf::mean,
                 to(sheet_.number(kMeanTitre), sheet_.number(kMeanFirstTitre)));
  }

  /// Line by line as it was written.
  bool working() {
    CellValues written = means_.cells();
    ResultPart rounding{say("part.rounding"), ResultPartOf::rounding, {}, "", 0.0};
    ResultPart of_result{say("part.result"), ResultPartOf::rounding, {}, "", 0.0};
    std::vector<ResultPart> slips;
    for (const WorkedStep& line :
         check_working(level_, sheet_, own_mean_cm3(titres_), own_first_mean_cm3(titres_))) {
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
  void add_causes(const std::array<double, kCauses>& means_cm3, double slope, Titre of) {
    for (std::size_t i = kCauses; i-- > 0;) {
      const auto cause = static_cast<Cause>(i);
      const std::string name(cause_title(cause, means_cm3[i]));
      add({of == Titre::only    ? name
           : of == Titre::first ? say("part.of_first", {{"cause", name}})
                                : say("part.of_whole", {{"cause", name}}),
           ResultPartOf::titres, cause, "", means_cm3[i] * slope});
    }
  }
  bool go_on(Phrase name, ResultPartOf of, const MeanTitres& means) {
    const auto now = hundred_ln_at(level_, means);
    if (!now) return false;
    add({name, of, {}, "", *now - at_});
    at_ = *now;
    means_ = means;
    return true;
  }

  const Level& level_;
  const ResultsSheet& sheet_;
  const std::vector<TitreRow>& titres_;
  ResultSplit parts_;
  MeanTitres means_;
  double start_ = 0.0, at_ = 0.0;
};

}  // namespace

std::optional<ResultSplit> result_split(const Level& level, const ResultsSheet& sheet,
                                        const std::vector<TitreRow>& titres, const MeanTitres& ideal) {
  if (level.calculation.empty() || !sheet.number(level.calculation.back().cell)) return std::nullopt;
  const auto runs = base_runs(titres);
  if (runs.empty()) return std::nullopt;
  Splitter splitter(level, sheet, titres);
  if (!splitter.titres(runs, ideal) || !splitter.means() || !splitter.working()) {
    return std::nullopt;
  }
  return std::move(splitter).split();
}

std::optional<ResultSplit> result_split(const Level& level, const ResultsSheet& sheet,
                                        const std::vector<TitreRow>& titres, double ideal_titre_cm3) {
  return result_split(level, sheet, titres, MeanTitres{ideal_titre_cm3});
}

}  // namespace halfdrop

#include "game/marking/per_run.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/counted_runs.h"
#include "game/marking/never_measured.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

/// Largest first: the first of these is the one reported.
using Slips = std::vector<std::pair<std::string, Slip>>;

std::string others(const Slips& slips) {
  std::string text;
  for (std::size_t i = 1; i < slips.size(); ++i) text += (i == 1 ? "" : ", ") + run_text(slips[i].first);
  return text.empty() ? text : " " + say("find.also", {{"runs", text}});
}

template <class T>
const T* there(const std::optional<T>& value) {
  return value ? &*value : nullptr;
}

RunView view_of(const Case& marked, const TitreRow& row) {
  RunView run;
  run.name = row.run;
  run.row = &row;
  run.breakdown = there(row.breakdown);
  const auto readings = marked.readings.find(row.run);
  if (readings == marked.readings.end()) return run;
  run.initial = there(readings->second.initial);
  run.final = there(readings->second.final);
  run.story = &readings->second.story;
  const auto evidence = marked.evidence.runs.find(row.run);
  if (evidence != marked.evidence.runs.end()) run.flask = there(evidence->second.flask);
  return run;
}

Tick shown_at(const RunView& run, Shown shown) {
  if (shown == Shown::last_drop && run.flask != nullptr) return run.flask->last_entered;
  return (shown == Shown::initial || run.final == nullptr ? run.initial : run.final)->bench.tick;
}

/// Errors of the runs that count, and the words for them.
struct BandSums {
  int runs = 0;
  double size_cm3 = 0.0, sum_cm3 = 0.0, worst_cm3 = -1.0;

  void add(const Case& marked, const BandRule& rule, const RunView& run, Finding& finding) {
    finding.seen += (finding.seen.empty() ? "" : ", ") + run_text(run.name) + " ";
    if (const auto why = rule.cannot != nullptr ? rule.cannot(marked, run) : std::nullopt) {
      finding.seen += "(" + *why + ")";
      finding.tick = run.final->bench.tick;
      worst_cm3 = HUGE_VAL;
      return;
    }
    const double error_cm3 = rule.error_cm3(run);
    ++runs;
    size_cm3 += std::fabs(error_cm3);
    sum_cm3 += error_cm3;
    finding.seen += signed_cm3_text(error_cm3, 3);
    if (std::fabs(error_cm3) <= worst_cm3) return;
    worst_cm3 = std::fabs(error_cm3);
    finding.tick = run.final->bench.tick;
  }
};

std::string nothing_to_see(const Case& marked, const RunRule& rule) {
  const bool invented = std::any_of(marked.titres.begin(), marked.titres.end(), [&](const TitreRow& row) {
    return never_measured(marked, row.run).has_value();
  });
  if (invented) return say("find.no_run_measured");
  if (rule.needs == Needs::initial) return say("find.no_initial");
  return rule.accurate_only ? say("find.no_accurate_run") : say("find.no_run");
}

}  // namespace

std::optional<std::string> never_measured(const Case& marked, const std::string& run) {
  const auto readings = marked.readings.find(run);
  if (readings == marked.readings.end()) return std::nullopt;
  const auto evidence = marked.evidence.runs.find(run);
  return never_measured(readings->second,
                        evidence == marked.evidence.runs.end() ? nullptr : &evidence->second);
}

std::optional<double> RunView::cost(Cause cause) const {
  return breakdown != nullptr ? std::optional(breakdown->of(cause)) : std::nullopt;
}

std::optional<double> titre_meant_cm3(const Case& marked, const TitreRow& row) {
  if (row.recorded_cm3 && readings_swapped(view_of(marked, row))) return -*row.recorded_cm3;
  return row.recorded_cm3;
}

bool readings_swapped(const RunView& run) {
  constexpr double kSame_cm3 = 0.1;  // a division: a swap is far off or it is none
  if (run.initial == nullptr || run.final == nullptr) return false;
  const auto shows = [](const ReadingMoment& figure, const ReadingMoment& meniscus) {
    return std::fabs(figure.written_cm3 - meniscus.apparent_cm3) <= kSame_cm3;
  };
  return shows(*run.initial, *run.final) && shows(*run.final, *run.initial) &&
         !shows(*run.initial, *run.initial);
}

std::vector<RunView> runs_to_check(const Case& marked, Needs needs, bool accurate_only) {
  std::vector<RunView> runs;
  for (const TitreRow& row : marked.titres) {
    if ((accurate_only && row.run == "trial") || never_measured(marked, row.run)) continue;
    const RunView run = view_of(marked, row);
    const bool both = run.final != nullptr && run.flask != nullptr;
    if (run.initial != nullptr && (both || needs == Needs::initial)) runs.push_back(run);
  }
  return runs;
}

Finding judge(const Case& marked, const RunRule& rule) {
  Finding finding{rule.score, rule.id, false, 0.0, rule.of, "", marked.end(), std::nullopt, rule.advice};
  const std::vector<RunView> runs = runs_to_check(marked, rule.needs, rule.accurate_only);
  if (runs.empty()) {
    finding.seen = nothing_to_see(marked, rule);
    finding.judged = false;
    return finding;
  }
  Slips slips;
  for (const RunView& run : runs) {
    if (auto slip = rule.check(marked, run)) slips.emplace_back(run.name, std::move(*slip));
  }
  if (slips.empty()) {
    finding.met = true;
    finding.points = rule.of;
    finding.seen =
        say("find.right", {{"what", say(rule.right)}, {"runs", count_text(runs.size(), Counted::run)}});
    finding.tick = shown_at(runs.back(), rule.shown);
    finding.advice.clear();
    return finding;
  }
  std::stable_sort(slips.begin(), slips.end(),
                   [](const auto& a, const auto& b) { return a.second.size > b.second.size; });
  const auto& [run, worst] = slips.front();
  finding.seen = say("find.of_run", {{"run", sentence(run_text(run))}, {"what", worst.what}}) + others(slips);
  finding.tick = worst.tick;
  finding.cost_cm3 = worst.cost_cm3;
  return finding;
}

void report_if(const Case& marked, const RunRule& rule, std::vector<Finding>& findings) {
  if (runs_to_check(marked, rule.needs, rule.accurate_only).empty()) return;
  Finding finding = judge(marked, rule);
  if (!finding.met) findings.push_back(std::move(finding));
}

std::vector<RunView> runs_that_count(const Case& marked) {
  std::vector<RunView> runs = runs_to_check(marked, Needs::both, true);
  const std::vector<const TitreRow*> counted = counted_runs(marked.titres);
  std::erase_if(runs, [&](const RunView& run) {
    return std::find(counted.begin(), counted.end(), run.row) == counted.end();
  });
  return runs;
}

int band_points(std::span<const Band> bands, double error_cm3) {
  constexpr double kNotWorthAPoint_cm3 = 1e-4;  // a tenth of a microlitre
  for (const Band& band : bands) {
    if (std::fabs(error_cm3) <= band.limit + kNotWorthAPoint_cm3) return band.points;
  }
  return 0;
}

Finding judge_bands(const Case& marked, const BandRule& rule, std::span<const Band> bands) {
  const double of = bands.empty() ? 0.0 : bands.front().points;
  Finding finding{rule.score, rule.id, false, 0.0, of, "", marked.end(), std::nullopt, rule.advice};
  const std::vector<RunView> runs = runs_that_count(marked);
  if (runs.empty()) {
    finding.seen =
        nothing_to_see(marked, {rule.score, rule.id, of, Needs::both, Shown::final, true, {}, {}, nullptr});
    finding.judged = false;
    return finding;
  }
  BandSums sums;
  for (const RunView& run : runs) sums.add(marked, rule, run, finding);
  const double share = static_cast<double>(sums.runs) / static_cast<double>(runs.size());
  if (sums.runs > 0) {
    const double size = sums.size_cm3 / sums.runs;
    finding.points = std::floor(2.0 * share * band_points(bands, size)) / 2.0;
    finding.seen += say("find.off_on_average", {{"size", cm3_text(size, 3)}});
    finding.cost_cm3 = sums.sum_cm3 / sums.runs;
  }
  finding.met = finding.points >= of;
  finding.seen = say("find.of_bands", {{"what", sentence(say(rule.what))}, {"seen", finding.seen}});
  if (!finding.met) return finding;
  finding.advice.clear();
  finding.cost_cm3.reset();
  return finding;
}

}  // namespace halfdrop

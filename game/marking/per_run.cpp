#include "game/marking/per_run.h"

#include <algorithm>
#include <cmath>

#include "game/marking/wording.h"

namespace halfdrop {

namespace {

/// Largest first: the first of these is the one reported.
using Slips = std::vector<std::pair<std::string, Slip>>;

std::string others(const Slips& slips) {
  std::string text;
  for (std::size_t i = 1; i < slips.size(); ++i) text += (i == 1 ? "" : ", ") + run_text(slips[i].first);
  return text.empty() ? text : " (Also: " + text + ".)";
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

Tick last_tick(const std::vector<RunView>& runs) {
  Tick last = 0;
  for (const RunView& run : runs) {
    last = std::max(last, (run.final != nullptr ? run.final : run.initial)->bench.tick);
  }
  return last;
}

std::string nothing_to_see(const RunRule& rule) {
  if (rule.needs == Needs::initial) return "No initial reading was written.";
  return rule.accurate_only ? "No accurate run has both readings." : "No run has both readings.";
}

}  // namespace

std::optional<double> RunView::cost(Cause cause) const {
  return breakdown != nullptr ? std::optional(breakdown->of(cause)) : std::nullopt;
}

std::vector<RunView> runs_to_check(const Case& marked, Needs needs, bool accurate_only) {
  std::vector<RunView> runs;
  for (const TitreRow& row : marked.titres) {
    if (accurate_only && row.run == "trial") continue;
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
    finding.seen = nothing_to_see(rule);
    return finding;
  }
  Slips slips;
  for (const RunView& run : runs) {
    if (auto slip = rule.check(marked, run)) slips.emplace_back(run.name, std::move(*slip));
  }
  if (slips.empty()) {
    finding.met = true;
    finding.points = rule.of;
    finding.seen = std::string(rule.right) + " (" + count_text(runs.size(), "run") + ").";
    finding.tick = last_tick(runs);
    finding.advice.clear();
    return finding;
  }
  std::stable_sort(slips.begin(), slips.end(),
                   [](const auto& a, const auto& b) { return a.second.size > b.second.size; });
  const auto& [run, worst] = slips.front();
  finding.seen = sentence(run_text(run)) + ": " + worst.what + "." + others(slips);
  finding.tick = worst.tick;
  finding.cost_cm3 = worst.cost_cm3;
  return finding;
}

std::vector<RunView> runs_that_count(const Case& marked) {
  std::vector<RunView> runs = runs_to_check(marked, Needs::both, true);
  std::erase_if(runs, [](const RunView& run) { return run.breakdown == nullptr; });
  const bool any_ticked =
      std::any_of(runs.begin(), runs.end(), [](const RunView& run) { return run.row->used; });
  if (any_ticked) std::erase_if(runs, [](const RunView& run) { return !run.row->used; });
  return runs;
}

int band_points(std::span<const Band> bands, double error_cm3) {
  constexpr double kNotWorthAPoint_cm3 = 1e-4;  // a tenth of a microlitre
  for (const Band& band : bands) {
    if (error_cm3 <= band.limit + kNotWorthAPoint_cm3) return band.points;
  }
  return 0;
}

Finding judge_bands(const Case& marked, const BandRule& rule, std::span<const Band> bands) {
  const double of = bands.empty() ? 0.0 : bands.front().points;
  Finding finding{rule.score, rule.id, false, 0.0, of, "", marked.end(), std::nullopt, rule.advice};
  const std::vector<RunView> runs = runs_that_count(marked);
  if (runs.empty()) {
    finding.seen = "No accurate run has both readings.";
    return finding;
  }
  double size = 0.0;
  double sum = 0.0;
  double worst = -1.0;
  for (const RunView& run : runs) {
    const double error = rule.error_cm3(run);
    size += std::fabs(error) / static_cast<double>(runs.size());
    sum += error / static_cast<double>(runs.size());
    finding.seen += (finding.seen.empty() ? "" : ", ") + run_text(run.name) + " " + signed_cm3_text(error, 3);
    if (std::fabs(error) <= worst) continue;
    worst = std::fabs(error);
    finding.tick = run.final->bench.tick;
  }
  finding.points = band_points(bands, size);
  finding.met = finding.points >= of;
  finding.seen = sentence(rule.what) + ": " + finding.seen + "; " + cm3_text(size, 3) + " off on average.";
  finding.cost_cm3 = sum;
  if (finding.met) finding.advice.clear();
  return finding;
}

}  // namespace halfdrop

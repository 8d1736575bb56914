// What occurred and is no fault, though it is often taken for one: named, so that nobody unlearns it.

#include <algorithm>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

Finding harmless(Score score, const char* id, Tick tick, std::string seen) {
  return Finding{score, id, true, 0.0, 0.0, std::move(seen), tick, std::nullopt, ""};
}

void wet_flask(const std::vector<RunView>& runs, std::vector<Finding>& findings) {
  const auto wet =
      std::find_if(runs.begin(), runs.end(), [](const RunView& run) { return run.flask->wet_at_aliquot; });
  if (wet == runs.end()) return;
  findings.push_back(harmless(Score::hand, "harmless-wet-flask", wet->final->bench.tick,
                              say("harmless.wet_flask", {{"run", sentence(run_text(wet->name))}})));
}

void water_added(const std::vector<RunView>& runs, std::vector<Finding>& findings) {
  const auto washed =
      std::find_if(runs.begin(), runs.end(), [](const RunView& run) { return run.flask->washed_down > 0; });
  if (washed == runs.end()) return;
  findings.push_back(harmless(Score::hand, "harmless-washing-down", washed->flask->washed_down,
                              say("harmless.washing_down", {{"run", sentence(run_text(washed->name))}})));
}

void not_from_zero(const Case& marked, std::vector<Finding>& findings) {
  constexpr double kZero_cm3 = 0.05;
  for (const TitreRow& row : marked.titres) {
    if (!row.initial_cm3 || *row.initial_cm3 < kZero_cm3 - kSameFigure_cm3) continue;
    findings.push_back(harmless(
        Score::record, "harmless-not-from-zero", marked.sheet.written_at(row.run + "/initial"),
        say("harmless.not_from_zero",
            {{"run", sentence(run_text(row.run))}, {"reading", marked.sheet.text(row.run + "/initial")}})));
    return;
  }
}

void third_run(const std::vector<RunView>& runs, std::vector<Finding>& findings) {
  std::vector<RunView> accurate;
  std::copy_if(runs.begin(), runs.end(), std::back_inserter(accurate),
               [](const RunView& run) { return run.accurate(); });
  if (accurate.size() < 3) return;
  findings.push_back(harmless(Score::record, "harmless-third-run", accurate[2].final->bench.tick,
                              say("harmless.third_run", {{"count", std::to_string(accurate.size())}})));
}

/// Two drops past the end (our own choice) in a trial that is kept out of the mean.
void trial_past_the_end(const std::vector<RunView>& runs, std::vector<Finding>& findings) {
  constexpr double kTwoDrops_cm3 = 0.10;
  for (const RunView& run : runs) {
    const double past_cm3 = run.cost(Cause::overshoot).value_or(0.0);
    if (run.accurate() || run.row->used || past_cm3 < kTwoDrops_cm3) continue;
    findings.push_back(harmless(Score::hand, "harmless-trial-past-the-end", run.final->bench.tick,
                                say("harmless.trial_past", {{"past", cm3_text(past_cm3)}})));
    return;
  }
}

/// A run that starts higher up the burette than the one before it ended.
void refilled_between(const std::vector<RunView>& runs, std::vector<Finding>& findings) {
  for (std::size_t i = 1; i < runs.size(); ++i) {
    const auto &before = runs[i - 1].row->final_cm3, &initial = runs[i].row->initial_cm3;
    if (!before || !initial || *initial > *before - kSameFigure_cm3) continue;
    if (runs[i].initial->bench.tick < runs[i - 1].final->bench.tick) continue;
    findings.push_back(harmless(Score::hand, "harmless-refilled-between-runs", runs[i].initial->bench.tick,
                                say("harmless.refilled", {{"run", sentence(run_text(runs[i].name))}})));
    return;
  }
}

}  // namespace

bool is_harmless(const Finding& finding) { return finding.criterion.starts_with("harmless-"); }

void mark_harmless(const Case& marked, std::vector<Finding>& findings) {
  const std::vector<RunView> runs = runs_to_check(marked, Needs::both, false);
  wet_flask(runs, findings);
  water_added(runs, findings);
  not_from_zero(marked, findings);
  third_run(runs, findings);
  trial_past_the_end(runs, findings);
  refilled_between(runs, findings);
}

}  // namespace halfdrop

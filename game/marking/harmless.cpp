// What occurred and is no fault, though it is often taken for one: named, so that nobody unlearns it.

#include <algorithm>

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
  findings.push_back(
      harmless(Score::hand, "harmless-wet-flask", wet->final->bench.tick,
               sentence(run_text(wet->name)) +
                   ": the flask was wet with water when the aliquot went in. Harmless: the pipette "
                   "fixed what is in it."));
}

void water_added(const std::vector<RunView>& runs, std::vector<Finding>& findings) {
  const auto washed =
      std::find_if(runs.begin(), runs.end(), [](const RunView& run) { return run.flask->washed_down > 0; });
  if (washed == runs.end()) return;
  findings.push_back(
      harmless(Score::hand, "harmless-washing-down", washed->flask->washed_down,
               sentence(run_text(washed->name)) +
                   ": water went in with the washing down. Harmless: it adds nothing that reacts."));
}

void not_from_zero(const Case& marked, std::vector<Finding>& findings) {
  constexpr double kZero_cm3 = 0.05;
  for (const TitreRow& row : marked.titres) {
    if (!row.initial_cm3 || *row.initial_cm3 < kZero_cm3 - kSameFigure_cm3) continue;
    findings.push_back(
        harmless(Score::record, "harmless-not-from-zero", marked.sheet.written_at(row.run + "/initial"),
                 sentence(run_text(row.run)) + " started at " + marked.sheet.text(row.run + "/initial") +
                     ". Harmless: the difference counts."));
    return;
  }
}

void third_run(const std::vector<RunView>& runs, std::vector<Finding>& findings) {
  std::vector<RunView> accurate;
  std::copy_if(runs.begin(), runs.end(), std::back_inserter(accurate),
               [](const RunView& run) { return run.accurate(); });
  if (accurate.size() < 3) return;
  findings.push_back(
      harmless(Score::record, "harmless-third-run", accurate[2].final->bench.tick,
               std::to_string(accurate.size()) +
                   " accurate runs were made. Harmless: even faultless titres often want a third."));
}

}  // namespace

void mark_harmless(const Case& marked, std::vector<Finding>& findings) {
  const std::vector<RunView> runs = runs_to_check(marked, Needs::both, false);
  wet_flask(runs, findings);
  water_added(runs, findings);
  not_from_zero(marked, findings);
  third_run(runs, findings);
}

}  // namespace halfdrop

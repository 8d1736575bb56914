#include <algorithm>
#include <cmath>

#include "game/marking/criteria.h"
#include "game/marking/drill_marks.h"
#include "game/marking/never_measured.h"
#include "game/marking/recorded_standard.h"
#include "game/marking/scores.h"

namespace halfdrop {

namespace {

/// Replays an attempt once and keeps what marking needs.
struct Witness {
  ReadingMoments moments;
  RunsRead runs;
  Evidence evidence;
  ResultsSheet sheet;
  std::size_t changes_before = 0;

  void after_tick(const Session& session) {
    moments.after_tick(session);
    evidence.after_tick(session);
  }
  void before_change(const Session& session, const Change& change) {
    changes_before = session.attempt().changes.size();
    moments.before_change(session, change);
  }
  /// A change that was refused leaves no line in the session's own log.
  void change_done(const Session& session, const Change& change) {
    if (session.attempt().changes.size() == changes_before) return;
    moments.after_change(session, change);
    evidence.after_change(session, change);
    if (const auto* writing = std::get_if<Writing>(&change.what)) sheet.write(change.tick, *writing);
  }
};

Replay watch(const Attempt& attempt, Witness& witness) {
  ReplayWatcher watcher;
  watcher.after_tick = [&](const Session& session) { witness.after_tick(session); };
  watcher.before_change = [&](const Session& session, const Change& change) {
    witness.before_change(session, change);
  };
  watcher.after_change = [&](const Session& session, const Change& change) {
    witness.change_done(session, change);
  };
  Replay replayed = replay(attempt, watcher);
  witness.runs = witness.moments.runs();
  witness.evidence.runs = witness.runs.evidence;
  return replayed;
}

/// 21.65 - 0.15 as a person subtracts: without the binary tail.
double difference_cm3(double final_cm3, double initial_cm3) {
  const double raw = final_cm3 - initial_cm3;
  const double clean = std::round(raw * 1e9) / 1e9;
  return std::isfinite(clean) ? clean : raw;
}

/// What titres are measured against: level and bench with the standard as it was recorded.
struct Measure {
  Level level;
  BenchSpec spec;
};

/// A figure so far off any scale that sums lose their last digits.
bool far_off(const Measure& by, const ReadingMoment& moment) {
  constexpr double kFarOff_cm3 = 100.0;
  const double beyond_cm3 = by.spec.burette.nominal_cm3 + kFarOff_cm3;
  return moment.written_cm3 < -kFarOff_cm3 || moment.written_cm3 > beyond_cm3;
}

/// Nothing without both readings, or with one that is far off.
std::optional<TitreBreakdown> breakdown_of(const Measure& by, const std::string& run,
                                           const Witness& witness) {
  const auto found = witness.runs.readings.find(run);
  if (found == witness.runs.readings.end() || !found->second.complete()) return std::nullopt;
  const RunReadings& read = found->second;
  const auto evidence = witness.runs.evidence.find(run);
  if (never_measured(read, evidence == witness.runs.evidence.end() ? nullptr : &evidence->second)) {
    return std::nullopt;
  }
  if (far_off(by, *read.initial) || far_off(by, *read.final)) return std::nullopt;
  return break_down(by.spec, by.level.aliquot_cm3, *read.initial, *read.final, read.story,
                    by.spec.last_endpoint());
}

/// The run at the first of two endpoints; a breakdown only where the whole run has one.
FirstTitre first_titre(const Measure& by, const Witness& witness, const TitreRow& row) {
  const ResultsSheet& sheet = witness.sheet;
  FirstTitre first;
  first.reading_text = sheet.text(row.run + "/first endpoint");
  first.reading_cm3 = sheet.number(row.run + "/first endpoint");
  first.written_titre_cm3 = sheet.number(row.run + "/first titre");
  if (row.initial_cm3 && first.reading_cm3)
    first.recorded_cm3 = difference_cm3(*first.reading_cm3, *row.initial_cm3);
  const auto found = witness.runs.readings.find(row.run);
  if (!row.breakdown || found == witness.runs.readings.end() || !found->second.first_end) return first;
  const RunReadings& read = found->second;
  if (far_off(by, *read.first_end)) return first;
  first.breakdown = break_down(by.spec, by.level.aliquot_cm3, *read.initial, *read.first_end,
                               read.first_story, Endpoint::first);
  return first;
}

std::vector<TitreRow> titre_rows(const Measure& by, const Witness& witness) {
  std::vector<TitreRow> rows;
  const ResultsSheet& sheet = witness.sheet;
  for (const std::string& run : run_names(by.level)) {
    if (!sheet.begun(run)) continue;
    TitreRow row;
    row.run = run;
    row.initial_cm3 = sheet.number(run + "/initial");
    row.final_cm3 = sheet.number(run + "/final");
    row.written_titre_cm3 = sheet.number(run + "/titre");
    row.used = sheet.ticked(run);
    row.initial_text = sheet.text(run + "/initial");
    row.final_text = sheet.text(run + "/final");
    if (row.initial_cm3 && row.final_cm3) row.recorded_cm3 = difference_cm3(*row.final_cm3, *row.initial_cm3);
    row.breakdown = breakdown_of(by, run, witness);
    if (by.level.then) row.first = first_titre(by, witness, row);
    rows.push_back(std::move(row));
  }
  return rows;
}

/// The titres that count, in the player's own figures; else the mean that was written, as one.
std::vector<double> counted_titres_cm3(const MarkedAttempt& marked) {
  std::vector<double> titres_cm3;
  for (const TitreRow& row : marked.titres) {
    if (const auto titre = own_titre_cm3(row)) titres_cm3.push_back(*titre);
  }
  if (titres_cm3.empty() && marked.mean_titre_cm3) titres_cm3.push_back(*marked.mean_titre_cm3);
  return titres_cm3;
}

/// The same of the first of two endpoints.
std::vector<double> counted_first_titres_cm3(const MarkedAttempt& marked) {
  std::vector<double> titres_cm3;
  for (const TitreRow& row : marked.titres) {
    if (const auto titre = own_first_titre_cm3(row)) titres_cm3.push_back(*titre);
  }
  if (titres_cm3.empty() && marked.mean_first_titre_cm3) titres_cm3.push_back(*marked.mean_first_titre_cm3);
  return titres_cm3;
}

std::optional<OwnUncertainty> uncertainty_of(const Measure& by, const MarkedAttempt& marked) {
  if (!marked.reported) return std::nullopt;
  AssumedOfTheBench assumed;
  assumed.drop_cm3 = by.spec.settled.full_drop_cm3;
  return own_uncertainty(by.level, counted_titres_cm3(marked), assumed, counted_first_titres_cm3(marked));
}

std::vector<Finding> find(const Case& marked, const ReplayOutcome& outcome) {
  std::vector<Finding> findings;
  mark_safety(marked, findings);
  mark_hand(marked, findings);
  mark_eye(marked, findings);
  mark_record(marked, findings);
  findings.push_back(closing_line(outcome, marked.end()));
  mark_arithmetic(marked, findings);
  mark_harmless(marked, findings);
  return findings;
}

/// What the last line of the calculation asks for; the unknown's own strength where a level has no
/// calculation.
void conclude(const Measure& by, const ResultsSheet& sheet, MarkedAttempt& marked) {
  const Level& level = by.level;
  const BenchSpec& spec = by.spec;
  marked.ideal_titre_cm3 = ideal_titre_cm3(spec, level.aliquot_cm3, spec.last_endpoint());
  if (level.then) {
    marked.ideal_first_titre_cm3 = ideal_titre_cm3(spec, level.aliquot_cm3);
    marked.mean_first_titre_cm3 = sheet.number(kMeanFirstTitre);
  }
  marked.true_value = spec.unknown_in_flask ? spec.sample.true_mol_dm3 : spec.titrant.true_mol_dm3;
  marked.unit = "mol dm⁻³";
  marked.mean_titre_cm3 = sheet.number(kMeanTitre);
  marked.mean_text = sheet.text(kMeanTitre);
  if (level.calculation.empty()) return;
  const CalculationStep& result = level.calculation.back();
  marked.true_value = result_from_means(level, marked.ideal_titres()).value_or(marked.true_value);
  marked.unit = result.unit;
  marked.reported = sheet.number(result.cell);
  marked.reported_text = sheet.text(result.cell);
}

}  // namespace

MarkedAttempt mark(const Attempt& attempt) {
  if (attempt.level.drill) return mark_drill(attempt);
  Witness witness;
  const Replay replayed = watch(attempt, witness);
  const Session& session = replayed.session;
  MarkedAttempt marked;
  marked.level_id = attempt.level.id;
  marked.level_title = attempt.level.title;
  marked.alias = attempt.alias;
  marked.way = attempt.way;
  marked.outcome = replayed.outcome;
  Measure by{level_as_recorded(session, witness.sheet), {}};
  by.spec = bench_as_recorded(session.spec(), by.level);
  marked.titres = titre_rows(by, witness);
  conclude(by, witness.sheet, marked);
  marked.uncertainty = uncertainty_of(by, marked);
  marked.result_split = result_split(by.level, witness.sheet, marked.titres, marked.ideal_titres());
  marked.findings =
      find(Case{session, witness.evidence, witness.sheet, witness.runs.readings, marked.titres, &by.level},
           replayed.outcome);
  marked.marks = add_up(marked.findings);
  return marked;
}

}  // namespace halfdrop

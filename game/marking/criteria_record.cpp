// Record: the table as the trade keeps it.

#include <algorithm>
#include <array>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

/// Titrant this little before the initial reading was written is passed over: two drops (our own choice).
constexpr double kPassedOver_cm3 = 0.1;

constexpr Phrase kNoReading{"find.no_reading"};

Finding open_finding(const Case& marked, const char* id, double of) {
  return Finding{Score::record, id, false, 0.0, of, "", marked.end(), std::nullopt, ""};
}

void grant(Finding& finding, const std::string& seen) {
  finding.met = true;
  finding.points = finding.of;
  finding.seen = seen;
  finding.advice.clear();
}

Finding not_judged(Finding finding, const std::string& why) {
  finding.seen = why;
  finding.judged = false;
  return finding;
}

/// Runs whose figures may have been read off the bench.
std::vector<const TitreRow*> measured_rows(const Case& marked) {
  std::vector<const TitreRow*> rows;
  for (const TitreRow& row : marked.titres) {
    if (!never_measured(marked, row.run)) rows.push_back(&row);
  }
  return rows;
}

/// Cells of their readings in which something stands.
std::vector<std::string> written_readings(const Case& marked) {
  std::vector<std::string> cells;
  for (const TitreRow* row : measured_rows(marked)) {
    for (const std::string_view which : reading_rows(marked.level())) {
      const std::string cell = row->run + std::string(which);
      if (!marked.sheet.text(cell).empty()) cells.push_back(cell);
    }
  }
  return cells;
}

std::string cell_text(const std::string& cell) {
  const std::size_t slash = cell.rfind('/');
  const std::string run = run_text(cell.substr(0, slash)), row = cell.substr(slash + 1);
  if (row == "initial") return say("find.cell.initial", {{"run", run}});
  if (row == "final") return say("find.cell.final", {{"run", run}});
  if (row == "first endpoint") return say("find.cell.first_endpoint", {{"run", run}});
  if (row == "first titre") return say("find.cell.first_titre", {{"run", run}});
  return say("find.cell.titre", {{"run", run}});
}

Finding two_decimals(const Case& marked) {
  Finding finding = open_finding(marked, "two-decimals", 1.0);
  finding.advice = say("find.two_decimals.advice");
  const std::vector<std::string> cells = written_readings(marked);
  if (cells.empty()) return not_judged(std::move(finding), kNoReading);
  for (const std::string& cell : cells) {
    const std::string text = marked.sheet.text(cell);
    if (written_to_half_a_division(text)) continue;
    const std::string where = sentence(cell_text(cell));
    finding.seen = number_written(text)
                       ? say("find.two_decimals.wrong", {{"cell", where}, {"text", as_written(text)}})
                       : say("find.two_decimals.no_number", {{"cell", where}, {"text", as_written(text)}});
    finding.tick = marked.sheet.written_at(cell);
    return finding;
  }
  grant(finding, say("find.two_decimals.right", {{"readings", count_text(cells.size(), Counted::reading)}}));
  return finding;
}

/// What one run's line of the table lacks; empty when nothing.
std::string lacking(const Case& marked, const TitreRow& row) {
  std::string lacks;
  for (const std::string_view which : titre_rows(marked.level())) {
    const std::string cell = row.run + std::string(which);
    if (marked.sheet.number(cell)) continue;
    const std::string text = marked.sheet.text(cell);
    lacks +=
        (lacks.empty() ? "" : "; ") +
        (text.empty() ? say("find.table.missing", {{"cell", cell_text(cell)}})
                      : say("find.table.no_number", {{"cell", cell_text(cell)}, {"text", as_written(text)}}));
  }
  return lacks;
}

/// Initial and final in each other's place; empty when in none.
std::string swapped(const Case& marked) {
  for (const RunView& run : runs_to_check(marked, Needs::both, false)) {
    if (readings_swapped(run)) return say("find.table.swapped", {{"run", run_text(run.name)}});
  }
  return {};
}

Finding table_complete(const Case& marked) {
  Finding finding = open_finding(marked, "table-complete", 1.0);
  finding.advice = say("find.table.advice");
  const std::vector<const TitreRow*> rows = measured_rows(marked);
  if (rows.empty()) return not_judged(std::move(finding), kNoReading);
  std::vector<std::string> faults;
  const bool trial =
      std::any_of(rows.begin(), rows.end(), [](const auto* row) { return row->run == "trial"; });
  if (!trial) faults.emplace_back(say("find.table.no_trial"));
  for (const TitreRow* row : rows) faults.push_back(lacking(marked, *row));
  if (rows.size() < (trial ? 2U : 1U)) faults.emplace_back(say("find.table.no_accurate"));
  faults.push_back(swapped(marked));
  std::string all;
  for (const std::string& fault : faults) all += (all.empty() || fault.empty() ? "" : "; ") + fault;
  if (all.empty()) {
    grant(finding, say("find.table.right", {{"runs", count_text(rows.size(), Counted::run)}}));
  } else {
    finding.seen = sentence(all) + ".";
  }
  return finding;
}

Finding on_the_scale(const Case& marked) {
  Finding finding = open_finding(marked, "on-the-scale", 1.0);
  finding.advice = say("find.on_the_scale.advice");
  const double last_mark = marked.level().burette.nominal_cm3;
  const std::vector<std::string> cells = written_readings(marked);
  if (cells.empty()) return not_judged(std::move(finding), kNoReading);
  bool all_read = true;
  for (const std::string& cell : cells) {
    const std::optional<double> value = marked.sheet.number(cell);
    all_read = all_read && value;
    if (!value) continue;
    const bool starts_at_end = cell.ends_with("/initial") && *value >= last_mark - kSameFigure_cm3;
    if (*value >= 0.0 && *value <= last_mark + kSameFigure_cm3 && !starts_at_end) continue;
    finding.seen = say("find.on_the_scale.wrong",
                       {{"cell", sentence(cell_text(cell))}, {"text", marked.sheet.text(cell)}});
    finding.tick = marked.sheet.written_at(cell);
    return finding;
  }
  finding.seen = say("find.on_the_scale.unread");
  if (all_read) grant(finding, say("find.on_the_scale.right"));
  return finding;
}

std::vector<const TitreRow*> ticked_accurate(const Case& marked) {
  std::vector<const TitreRow*> rows;
  for (const TitreRow* row : measured_rows(marked)) {
    if (row->used && row->run != "trial") rows.push_back(row);
  }
  return rows;
}

double apart(const std::vector<double>& titres) {
  const auto [low, high] = std::minmax_element(titres.begin(), titres.end());
  return *high - *low;
}

/// Judged on final minus initial, so that a slip in a subtraction is not paid for twice.
Finding concordance(const Case& marked) {
  Finding finding = open_finding(marked, "concordance", 2.0);
  finding.advice = say("find.concordance.advice");
  std::vector<double> titres, firsts;
  for (const TitreRow* row : ticked_accurate(marked)) {
    if (const auto titre = titre_meant_cm3(marked, *row)) titres.push_back(*titre);
    if (row->first && row->first->recorded_cm3) firsts.push_back(*row->first->recorded_cm3);
    finding.tick = marked.sheet.written_at(row->run + "/counts");
  }
  if (titres.size() < 2) {
    finding.judged = !measured_rows(marked).empty();
    finding.seen = titres.empty() ? say("find.concordance.none") : say("find.concordance.one");
    return finding;
  }
  if (marked.level().then && firsts.size() != titres.size()) {
    finding.seen = say("find.concordance.first_missing");
    return finding;
  }
  const double apart_cm3 = apart(titres);
  const std::string count = std::to_string(titres.size());
  const std::string spread =
      firsts.empty()
          ? say("find.concordance.spread", {{"count", count}, {"spread", cm3_text(apart_cm3)}})
          : say("find.concordance.two_spreads",
                {{"count", count}, {"spread", cm3_text(apart_cm3)}, {"firsts", cm3_text(apart(firsts))}});
  const double most_cm3 = firsts.empty() ? apart_cm3 : std::max(apart_cm3, apart(firsts));
  if (most_cm3 <= kConcordant_cm3 + kSameFigure_cm3) {
    grant(finding, spread);
  } else {
    finding.seen = spread;
  }
  return finding;
}

Finding trial_kept_out(const Case& marked) {
  Finding finding = open_finding(marked, "trial-kept-out", 1.0);
  if (marked.sheet.ticked("trial")) {
    finding.seen = say("find.trial_kept_out.wrong");
    finding.tick = marked.sheet.written_at("trial/counts");
    finding.advice = say("find.trial_kept_out.wrong.advice");
  } else if (ticked_accurate(marked).empty()) {
    finding.seen = say("find.trial_kept_out.none");
    finding.judged = !measured_rows(marked).empty();
    finding.advice = say("find.trial_kept_out.none.advice");
  } else {
    grant(finding, say("find.trial_kept_out.right"));
  }
  return finding;
}

/// A slip of the pen put right within this is none (our own choice).
constexpr Tick kSlipOfThePen = Tick{30} * kTicksPerSecond;

std::string first_text(const Case& marked, const std::string& cell) {
  const std::vector<Entry>& history = marked.sheet.history(cell);
  const auto first =
      std::find_if(history.begin(), history.end(), [](const Entry& entry) { return !entry.text.empty(); });
  return first == history.end() ? std::string() : first->text;
}

enum class Changed { never, at_once, later, flask_gone };

bool flask_emptied_between(const Session& session, Tick from, Tick to) {
  const auto& changes = session.attempt().changes;
  return std::any_of(changes.begin(), changes.end(), [&](const Change& change) {
    const auto* deed = std::get_if<Deed>(&change.what);
    return deed != nullptr && (*deed == Deed::empty_flask || *deed == Deed::rinse_flask) &&
           change.tick >= from && change.tick <= to;
  });
}

/// The worst that was done to a cell's first figure.
Changed changed(const Case& marked, const std::string& cell) {
  Changed worst = Changed::never;
  const Entry* first = nullptr;
  std::string stood;
  for (const Entry& entry : marked.sheet.history(cell)) {
    const bool same = entry.text == stood || number_written(entry.text) == number_written(stood);
    if (first != nullptr && !entry.text.empty() && !same) {
      const bool soon = entry.tick - first->tick <= kSlipOfThePen;
      const bool gone = !soon && flask_emptied_between(marked.session, first->tick, entry.tick);
      worst = std::max(worst, soon ? Changed::at_once : gone ? Changed::flask_gone : Changed::later);
    }
    if (entry.text.empty()) continue;
    if (first == nullptr) first = &entry;
    stood = entry.text;
  }
  return worst;
}

/// Readings only: ticks, titres and working may be put right.
Finding nothing_overwritten(const Case& marked) {
  Finding finding = open_finding(marked, "nothing-overwritten", 1.0);
  if (written_readings(marked).empty()) return not_judged(std::move(finding), kNoReading);
  Changed worst = Changed::never;
  std::string cells;
  for (const std::string& cell : written_readings(marked)) {
    const Changed how = changed(marked, cell);
    if (how <= Changed::at_once) {
      worst = std::max(worst, how);
      continue;
    }
    if (cells.empty()) finding.tick = marked.sheet.written_at(cell);
    worst = std::max(worst, how);
    const std::string where = cell_text(cell), was = as_written(first_text(marked, cell)),
                      is = as_written(marked.sheet.text(cell));
    cells += (cells.empty() ? "" : "; ") +
             (how == Changed::flask_gone
                  ? say("find.overwritten.gone", {{"cell", where}, {"was", was}, {"is", is}})
                  : say("find.overwritten.cell", {{"cell", where}, {"was", was}, {"is", is}}));
  }
  if (cells.empty()) {
    grant(finding, worst == Changed::at_once ? say("find.overwritten.slip") : say("find.overwritten.none"));
    return finding;
  }
  finding.seen = say("find.overwritten.wrong", {{"cells", cells}});
  finding.advice =
      worst == Changed::flask_gone ? say("find.overwritten.gone.advice") : say("find.overwritten.advice");
  return finding;
}

std::optional<Slip> written_at_the_time(const Case& marked, const RunView& run) {
  const RunEvidence& evidence = marked.evidence.runs.at(run.name);
  if (evidence.poured_away_before_final) {
    return Slip{2.0, say("find.written_at_the_time.final"), run.final->bench.tick, {}};
  }
  const double before_cm3 = evidence.entered_before_initial_cm3;
  if (before_cm3 <= kPassedOver_cm3) return std::nullopt;
  return Slip{1.0,
              say("find.written_at_the_time.initial", {{"size", cm3_text(before_cm3)}}),
              run.initial->bench.tick,
              {}};
}

const RunRule kWrittenAtTheTime = {Score::record,
                                   "written-at-the-time",
                                   1.0,
                                   Needs::both,
                                   Shown::final,
                                   false,
                                   "find.written_at_the_time.right",
                                   "find.written_at_the_time.advice",
                                   written_at_the_time};

Finding handed_in(const Case& marked) {
  Finding finding = open_finding(marked, "handed-in", 0.0);
  const auto& changes = marked.session.attempt().changes;
  const auto* ending = changes.empty() ? nullptr : std::get_if<Ending>(&changes.back().what);
  finding.met = ending != nullptr && ending->how == "handed in";
  finding.seen = finding.met ? say("find.handed_in.right") : say("find.handed_in.wrong");
  if (!finding.met) finding.advice = say("find.handed_in.advice");
  return finding;
}

/// Said once for all runs whose figures nobody can have read.
void invented(const Case& marked, std::vector<Finding>& findings) {
  std::string runs;
  std::optional<std::string> why;
  Finding finding = open_finding(marked, "readings-taken", 0.0);
  for (const TitreRow& row : marked.titres) {
    const auto reason = never_measured(marked, row.run);
    if (!reason) continue;
    runs += (runs.empty() ? "" : ", ") + run_text(row.run);
    if (why) continue;
    why = reason;
    finding.tick = marked.sheet.written_at(row.run + "/initial");
  }
  if (!why) return;
  finding.seen = say("find.readings_taken.wrong", {{"runs", sentence(runs)}, {"why", *why}});
  finding.advice = say("find.readings_taken.advice");
  findings.push_back(std::move(finding));
}

constexpr std::array<Criterion, 6> kCriteria = {two_decimals, table_complete, on_the_scale,
                                                concordance,  trial_kept_out, nothing_overwritten};

}  // namespace

void mark_record(const Case& marked, std::vector<Finding>& findings) {
  std::vector<Finding> record;
  for (const Criterion criterion : kCriteria) record.push_back(criterion(marked));
  record.push_back(judge(marked, kWrittenAtTheTime));
  mark_weighing(marked, record);
  invented(marked, findings);
  append_findings(Score::record, std::move(record), findings);
  findings.push_back(handed_in(marked));
}

}  // namespace halfdrop

// Record: the table as the trade keeps it.

#include <algorithm>
#include <array>
#include <cmath>

#include "game/marking/per_run.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

/// Titrant this little before the initial reading was written is passed over: two drops (our own choice).
constexpr double kPassedOver_cm3 = 0.1;

Finding open_finding(const Case& marked, const char* id, double of) {
  return Finding{Score::record, id, false, 0.0, of, "", marked.end(), std::nullopt, ""};
}

void grant(Finding& finding, const std::string& seen) {
  finding.met = true;
  finding.points = finding.of;
  finding.seen = seen;
  finding.advice.clear();
}

/// Cells of readings in which something stands.
std::vector<std::string> written_readings(const Case& marked) {
  std::vector<std::string> cells;
  for (const TitreRow& row : marked.titres) {
    for (const char* which : {"/initial", "/final"}) {
      if (!marked.sheet.text(row.run + which).empty()) cells.push_back(row.run + which);
    }
  }
  return cells;
}

std::string cell_text(const std::string& cell) {
  const std::size_t slash = cell.rfind('/');
  return run_text(cell.substr(0, slash)) + ", " + cell.substr(slash + 1);
}

Finding two_decimals(const Case& marked) {
  Finding finding = open_finding(marked, "two-decimals", 1.0);
  finding.advice = "Write every reading with two decimals, the second 0 or 5: 0.00, 21.65.";
  const std::vector<std::string> cells = written_readings(marked);
  finding.seen = "No reading was written.";
  if (cells.empty()) return finding;
  for (const std::string& cell : cells) {
    const std::string text = marked.sheet.text(cell);
    if (written_to_half_a_division(text)) continue;
    finding.seen = sentence(cell_text(cell)) + " reading: \"" + text + "\".";
    finding.tick = marked.sheet.written_at(cell);
    return finding;
  }
  grant(finding, "All " + count_text(cells.size(), "reading") + " have two decimals, the second 0 or 5.");
  return finding;
}

Finding table_complete(const Case& marked) {
  Finding finding = open_finding(marked, "table-complete", 1.0);
  finding.advice = "Write initial, final and titre of every run, the trial included.";
  std::string missing;
  for (const TitreRow& row : marked.titres) {
    for (const char* which : {"/initial", "/final", "/titre"}) {
      if (marked.sheet.number(row.run + which)) continue;
      missing += (missing.empty() ? "" : "; ") + cell_text(row.run + which);
    }
  }
  const bool trial =
      std::any_of(marked.titres.begin(), marked.titres.end(), [](auto& row) { return row.run == "trial"; });
  if (!trial) missing = "the whole trial run" + (missing.empty() ? missing : "; " + missing);
  if (marked.titres.size() < (trial ? 2U : 1U)) missing += "; every accurate run";
  if (missing.empty()) {
    grant(finding,
          "Initial, final and titre are written for all " + count_text(marked.titres.size(), "run") + ".");
  } else {
    finding.seen = "Missing: " + missing + ".";
  }
  return finding;
}

Finding on_the_scale(const Case& marked) {
  Finding finding = open_finding(marked, "on-the-scale", 1.0);
  finding.advice = "Start below 50.00 and stop above it: what stands off the scale cannot be read.";
  finding.seen = "No reading was written.";
  const double last_mark = marked.level().burette.nominal_cm3;
  const std::vector<std::string> cells = written_readings(marked);
  for (const std::string& cell : cells) {
    const std::optional<double> value = marked.sheet.number(cell);
    if (!value) continue;
    const bool starts_at_end = cell.ends_with("/initial") && *value >= last_mark - kSameFigure_cm3;
    if (*value >= 0.0 && *value <= last_mark + kSameFigure_cm3 && !starts_at_end) continue;
    finding.seen = sentence(cell_text(cell)) + " reading: " + marked.sheet.text(cell) + " is off the scale.";
    finding.tick = marked.sheet.written_at(cell);
    return finding;
  }
  if (!cells.empty()) grant(finding, "Every reading lies on the scale.");
  return finding;
}

std::vector<const TitreRow*> ticked_accurate(const Case& marked) {
  std::vector<const TitreRow*> rows;
  for (const TitreRow& row : marked.titres) {
    if (row.used && row.run != "trial") rows.push_back(&row);
  }
  return rows;
}

/// Judged on final minus initial, so that a slip in a subtraction is not paid for twice.
Finding concordance(const Case& marked) {
  Finding finding = open_finding(marked, "concordance", 2.0);
  finding.advice = "Repeat until two titres lie within 0.10 cm³ of each other, and tick those.";
  std::vector<double> titres;
  for (const TitreRow* row : ticked_accurate(marked)) {
    if (row->recorded_cm3) titres.push_back(*row->recorded_cm3);
    finding.tick = marked.sheet.written_at(row->run + "/counts");
  }
  if (titres.size() < 2) {
    finding.seen = titres.empty() ? "No accurate titre was ticked." : "Only one accurate titre was ticked.";
    return finding;
  }
  const auto [low, high] = std::minmax_element(titres.begin(), titres.end());
  const std::string spread = "The " + std::to_string(titres.size()) + " ticked titres lie within " +
                             cm3_text(*high - *low) + " of each other.";
  if (*high - *low <= kConcordant_cm3 + kSameFigure_cm3) {
    grant(finding, spread);
  } else {
    finding.seen = spread;
  }
  return finding;
}

Finding trial_kept_out(const Case& marked) {
  Finding finding = open_finding(marked, "trial-kept-out", 1.0);
  if (marked.sheet.ticked("trial")) {
    finding.seen = "The trial run was ticked.";
    finding.tick = marked.sheet.written_at("trial/counts");
    finding.advice = "The trial only shows where the end lies; keep it out of the mean.";
  } else if (ticked_accurate(marked).empty()) {
    finding.seen = "No titre was ticked.";
    finding.advice = "Tick the titres that the mean is made from.";
  } else {
    grant(finding, "The trial run was kept out of the mean.");
  }
  return finding;
}

/// Readings only: ticks, titres and working may be put right.
Finding nothing_overwritten(const Case& marked) {
  Finding finding = open_finding(marked, "nothing-overwritten", 1.0);
  finding.advice =
      "Look twice, write once. A reading that was wrong is struck through and explained, not replaced.";
  std::string changed;
  for (const std::string& run : run_names(marked.level())) {
    for (const char* which : {"/initial", "/final"}) {
      const std::string cell = run + which;
      if (marked.sheet.corrections(cell) == 0) continue;
      if (changed.empty()) finding.tick = marked.sheet.written_at(cell);
      changed += (changed.empty() ? "" : "; ") + cell_text(cell) + ", " +
                 count_text(static_cast<std::size_t>(marked.sheet.corrections(cell)), "time");
    }
  }
  if (!changed.empty()) {
    finding.seen = "Readings were changed after they were written: " + changed + ".";
  } else if (written_readings(marked).empty()) {
    finding.seen = "No reading was written.";
  } else {
    grant(finding, "No reading was changed after it was written.");
  }
  return finding;
}

std::optional<Slip> written_at_the_time(const Case& marked, const RunView& run) {
  const RunEvidence& evidence = marked.evidence.runs.at(run.name);
  if (run.flask->untouched()) {
    return Slip{
        2.0, "the final reading was written after the flask had been emptied", run.final->bench.tick, {}};
  }
  const double before_cm3 = evidence.entered_before_initial_cm3;
  if (before_cm3 <= kPassedOver_cm3) return std::nullopt;
  return Slip{1.0,
              "the initial reading was written after " + cm3_text(before_cm3) + " had run in",
              run.initial->bench.tick,
              {}};
}

const RunRule kWrittenAtTheTime = {
    Score::record,
    "written-at-the-time",
    1.0,
    Needs::both,
    false,
    "Readings were written when they were taken",
    "Write each reading at once: before the tap is opened, and before the flask is emptied.",
    written_at_the_time};

Finding handed_in(const Case& marked) {
  Finding finding = open_finding(marked, "handed-in", 0.0);
  finding.met = marked.evidence.ended;
  finding.seen = finding.met ? "The attempt was ended by the player."
                             : "The attempt was not ended; it is marked as it stands.";
  if (!finding.met) finding.advice = "Hand the sheet in when you have finished.";
  return finding;
}

constexpr std::array<Criterion, 7> kCriteria = {
    two_decimals, table_complete, on_the_scale, concordance, trial_kept_out, nothing_overwritten, handed_in};

}  // namespace

void mark_record(const Case& marked, std::vector<Finding>& findings) {
  for (const Criterion criterion : kCriteria) findings.push_back(criterion(marked));
  findings.push_back(judge(marked, kWrittenAtTheTime));
}

}  // namespace halfdrop

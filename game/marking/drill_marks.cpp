#include "game/marking/drill_marks.h"

#include <limits>
#include <map>

#include "game/marking/scores.h"

namespace halfdrop {

namespace {

/// Replays a drill once and keeps what its kind needs.
struct Witness {
  Evidence evidence;
  ReadingWatch reading;
  DeliveryWatch delivery;
  FillingWatch filling;
  DrillKind kind = DrillKind::read_meniscus;
  std::size_t changes_before = 0;

  void before_change(const Session& session, const Change& change) {
    changes_before = session.attempt().changes.size();
    if (kind == DrillKind::read_meniscus) reading.before_change(session, change);
  }
  /// A change that was refused leaves no line in the session's own log.
  void change_done(const Session& session, const Change& change) {
    if (session.attempt().changes.size() == changes_before) return;
    evidence.after_change(session, change);
    if (kind == DrillKind::read_meniscus) reading.after_change(session, change);
    if (kind == DrillKind::deliver_exactly) delivery.after_change(session, change);
    if (kind == DrillKind::fill_without_air) filling.after_change(session, change);
  }
  [[nodiscard]] DrillFigures figures(const Session& session) {
    if (kind == DrillKind::read_meniscus) return reading.figures(session);
    if (kind == DrillKind::deliver_exactly) return delivery.figures(session);
    if (kind == DrillKind::know_apparatus) return knowing_drill(session);
    return filling.figures(session);
  }
};

Replay watch(const Attempt& attempt, Witness& witness) {
  ReplayWatcher watcher;
  watcher.after_tick = [&](const Session& session) { witness.evidence.after_tick(session); };
  watcher.before_change = [&](const Session& session, const Change& change) {
    witness.before_change(session, change);
  };
  watcher.after_change = [&](const Session& session, const Change& change) {
    witness.change_done(session, change);
  };
  return replay(attempt, watcher);
}

/// Turning pictures over handles no liquid, and learning the pieces only water: there the gate stands open.
void find_safety(const Session& session, const Evidence& evidence, std::vector<Finding>& findings) {
  const DrillKind kind = session.level().drill->kind;
  if (kind == DrillKind::read_meniscus || kind == DrillKind::know_apparatus) return;
  const ResultsSheet no_sheet;
  const std::map<std::string, RunReadings> no_readings;
  const std::vector<TitreRow> no_titres;
  mark_safety(Case{session, evidence, no_sheet, no_readings, no_titres}, findings);
}

}  // namespace

MarkedAttempt mark_drill(const Attempt& attempt) {
  Witness witness;
  witness.kind = attempt.level.drill->kind;
  const Replay replayed = watch(attempt, witness);
  const Session& session = replayed.session;
  MarkedAttempt marked;
  marked.level_id = attempt.level.id;
  marked.level_title = attempt.level.title;
  marked.alias = attempt.alias;
  marked.way = attempt.way;
  marked.outcome = replayed.outcome;
  marked.ideal_titre_cm3 = marked.true_value = std::numeric_limits<double>::quiet_NaN();
  marked.drill = witness.figures(session);
  find_safety(session, witness.evidence, marked.findings);
  if (const auto* reading = std::get_if<ReadingDrill>(&*marked.drill))
    find_in_reading(*reading, attempt.level, marked.findings);
  if (const auto* delivery = std::get_if<DeliveryDrill>(&*marked.drill))
    find_in_delivery(*delivery, attempt.level, marked.findings);
  if (const auto* filling = std::get_if<FillingDrill>(&*marked.drill))
    find_in_filling(*filling, attempt.level, marked.findings);
  if (const auto* knowing = std::get_if<KnowingDrill>(&*marked.drill))
    find_in_knowing(*knowing, marked.findings);
  if (attempt.level.filling_below_eye)
    marked.findings.push_back(filled_below_eye(witness.evidence, session.state().tick));
  marked.findings.push_back(closing_line(replayed.outcome, session.state().tick));
  marked.marks = add_up(marked.findings);
  return marked;
}

}  // namespace halfdrop

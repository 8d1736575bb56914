#include "game/marking/reading_moments.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "game/session/view.h"

namespace halfdrop {

namespace {

/// More writings into one cell than this are not looked at: a sheet is no diary.
constexpr std::size_t kMostLooks = 64;

constexpr const char* kFirstEndpoint = "/first endpoint";

ReadingMoment look_now(const BenchSpec& spec, const BenchState& bench) {
  const ReadingSeen seen = reading_seen(spec, bench);
  return ReadingMoment{0.0, seen.bottom_cm3, seen.edge_cm3, bench};
}

/// Two readings closer than this see the same meniscus: the wall's film runs down meanwhile.
constexpr double kRunsDown_cm3 = 0.003;

double column_cm3(const BenchState& bench) { return bench.ledger.balance(Account::column).volume_cm3(); }

bool is_reading(const std::string& cell) {
  return !cell.starts_with("calculation/") &&
         (cell.ends_with("/initial") || cell.ends_with("/final") || cell.ends_with(kFirstEndpoint));
}

/// What the flask got and lost between its own beginning and a final reading; and what came into an earlier
/// flask after the initial reading.
FlaskStory story_of(const Ledger& begun, const ReadingMoment* initial, const Ledger& final) {
  const auto since = [&](Account from, Account to) { return final.moved(from, to) - begun.moved(from, to); };
  FlaskStory story;
  story.blown_out = since(Account::pipette_wet, Account::flask);
  story.from_pipette = since(Account::pipette, Account::flask) +
                       since(Account::pipette_outside, Account::flask) + story.blown_out;
  story.lost = since(Account::flask, Account::bench_top);
  if (initial == nullptr) return story;
  const Parcel before_begun = into_the_flask(begun) - into_the_flask(initial->bench.ledger);
  if (before_begun.volume > 0) story.poured_away = before_begun;
  return story;
}

std::string run_of(const std::string& cell) { return cell.substr(0, cell.rfind('/')); }

}  // namespace

void ReadingMoments::before_change(const Session& session, const Change& change) {
  if (const auto* deed = std::get_if<Deed>(&change.what)) flask_.before_deed(session, *deed);
}

void ReadingMoments::after_change(const Session& session, const Change& change) {
  if (const auto* deed = std::get_if<Deed>(&change.what)) {
    flask_.after_deed(session, *deed);
  } else if (const auto* writing = std::get_if<Writing>(&change.what); writing && is_reading(writing->cell)) {
    written(session, *writing);
  }
}

void ReadingMoments::written(const Session& session, const Writing& writing) {
  Cell& cell = cells_[writing.cell];
  cell.text = writing.text;
  if (writing.text.empty() || cell.looks.size() >= kMostLooks) return;
  if (writing.cell.ends_with("/final")) look_at_poured_away(session, cell);
  cell.looks.push_back(Look{look_now(session.spec(), session.state()), flask_.now(), false});
}

void ReadingMoments::look_at_poured_away(const Session& session, Cell& cell) const {
  const PouredAway* gone = flask_.poured_away();
  if (gone == nullptr) return;
  BenchState then = gone->bench;
  const bool meniscus_stands = std::fabs(column_cm3(then) - column_cm3(session.state())) < kRunsDown_cm3;
  const bool read_before = std::any_of(cell.looks.begin(), cell.looks.end(), [&](const Look& look) {
    return look.flask.number == gone->flask.number;
  });
  if (read_before && !meniscus_stands) return;
  if (meniscus_stands) then.hands.eye_mm = eye_above_zero_mm(session.hands()) + then.hands.clamp_mm;
  cell.looks.push_back(Look{look_now(session.spec(), then), gone->flask, true});
}

/// How well two looks suit the figures of a run; less is better.
struct ReadingMoments::Fit {
  double beyond_cm3 = 0.0;  ///< further off than a reading may be
  bool backwards = false;
  int flasks_wasted = 0;
  double off_cm3 = 0.0;
  Tick apart = 0;

  [[nodiscard]] bool better_than(const Fit& other) const {
    if (differ(beyond_cm3, other.beyond_cm3)) return beyond_cm3 < other.beyond_cm3;
    if (backwards != other.backwards) return other.backwards;
    if (flasks_wasted != other.flasks_wasted) return flasks_wasted < other.flasks_wasted;
    if (differ(off_cm3, other.off_cm3)) return off_cm3 < other.off_cm3;
    return apart < other.apart;
  }
  static bool differ(double a_cm3, double b_cm3) { return std::fabs(a_cm3 - b_cm3) > kRunsDown_cm3; }
};

ReadingMoments::Fit ReadingMoments::fit(const std::optional<double>& initial_cm3,
                                        const std::optional<double>& final_cm3, const Taken& pair) const {
  Fit fit;
  const auto add = [&](const std::optional<double>& figure_cm3, const Look* look) {
    if (!figure_cm3 || look == nullptr) return;
    const double off_cm3 = std::fabs(*figure_cm3 - look->moment.apparent_cm3);
    fit.off_cm3 += off_cm3;
    if (off_cm3 > kMayBeRead_cm3) fit.beyond_cm3 += off_cm3;
  };
  add(initial_cm3, pair.initial);
  add(final_cm3, pair.final);
  if (pair.initial == nullptr || pair.final == nullptr) return fit;
  const Tick first = pair.initial->moment.bench.tick;
  const Tick last = pair.final->moment.bench.tick;
  fit.backwards = first > last;
  fit.flasks_wasted = flask_.flasks_wasted(first, last);
  fit.apart = std::abs(last - first);
  return fit;
}

ReadingMoments::Taken ReadingMoments::taken(const std::string& run) const {
  const auto looks = [&](const char* row, std::optional<double>& figure_cm3) {
    std::vector<const Look*> found;
    const auto cell = cells_.find(run + row);
    if (cell != cells_.end()) figure_cm3 = number_written(cell->second.text);
    if (figure_cm3) {
      for (const Look& look : cell->second.looks) found.push_back(&look);
    }
    if (found.empty()) found.push_back(nullptr);
    return found;
  };
  std::optional<double> initial_cm3, final_cm3;
  const std::vector<const Look*> initials = looks("/initial", initial_cm3);
  const std::vector<const Look*> finals = looks("/final", final_cm3);
  Taken best{initials.front(), finals.front()};
  Fit best_fit = fit(initial_cm3, final_cm3, best);
  for (const Look* initial : initials) {
    for (const Look* final : finals) {
      const Fit now = fit(initial_cm3, final_cm3, {initial, final});
      if (!now.better_than(best_fit)) continue;
      best = {initial, final};
      best_fit = now;
    }
  }
  // Each written when it was read, but into the other's row: the looks are of their readings all the same.
  if (best_fit.backwards && best_fit.beyond_cm3 == 0.0 && initial_cm3 > final_cm3)
    std::swap(best.initial, best.final);
  return best;
}

/// Of the looks between both readings at the same flask, the one that the figure fits best.
const ReadingMoments::Look* ReadingMoments::first_end_of(const std::string& run, const Taken& own) const {
  const auto cell = cells_.find(run + kFirstEndpoint);
  if (cell == cells_.end() || own.initial == nullptr || own.final == nullptr) return nullptr;
  const std::optional<double> figure_cm3 = number_written(cell->second.text);
  if (!figure_cm3) return nullptr;
  const Look* best = nullptr;
  double nearest_cm3 = HUGE_VAL;
  for (const Look& look : cell->second.looks) {
    const Tick at = look.moment.bench.tick;
    const double off_cm3 = std::fabs(*figure_cm3 - look.moment.apparent_cm3);
    if (look.flask.number != own.final->flask.number || at < own.initial->moment.bench.tick ||
        at > own.final->moment.bench.tick || off_cm3 > nearest_cm3 - kRunsDown_cm3)
      continue;
    best = &look;
    nearest_cm3 = off_cm3;
  }
  return best;
}

void ReadingMoments::add_first_end(const std::string& run, const Taken& own, const Begin& begin,
                                   RunsRead& runs) const {
  const Look* const first = first_end_of(run, own);
  if (first == nullptr) return;
  RunReadings& read = runs.readings[run];
  read.first_end = moment(first, run + kFirstEndpoint);
  read.first_story = story_of(begin.books, &*read.initial, read.first_end->bench.ledger);
  runs.evidence[run].first_flask = begin.unemptied ? first->flask.use.since(begin.use) : first->flask.use;
}

/// The last emptying, or the latest other final reading from the same flask after which something went in.
ReadingMoments::Begin ReadingMoments::begin_of(const std::string& run, const AllTaken& all) {
  const Look& own = *all.at(run).final;
  Begin begin{own.flask.begun, {}, false};
  Tick latest = -1;
  for (const auto& [name, other] : all) {
    if (name == run || other.final == nullptr || other.final->flask.number != own.flask.number) continue;
    const Tick at = other.final->moment.bench.tick;
    const FlaskUse& then = other.final->flask.use;
    if (at <= latest || at > own.moment.bench.tick || !own.flask.use.got_more_than(then)) continue;
    latest = at;
    begin = Begin{other.final->moment.bench.ledger, then, true};
  }
  return begin;
}

std::optional<ReadingMoment> ReadingMoments::moment(const Look* look, const std::string& cell) const {
  if (look == nullptr) return std::nullopt;
  ReadingMoment read = look->moment;
  read.written_cm3 = number_written(cells_.at(cell).text).value_or(0.0);
  return read;
}

RunsRead ReadingMoments::runs() const {
  AllTaken all;
  for (const auto& [cell, unused] : cells_) all.try_emplace(run_of(cell), taken(run_of(cell)));
  RunsRead runs;
  for (const auto& [name, own] : all) {
    if (own.initial == nullptr && own.final == nullptr) continue;
    RunReadings& read = runs.readings[name];
    RunEvidence& done = runs.evidence[name];
    read.initial = moment(own.initial, name + "/initial");
    read.final = moment(own.final, name + "/final");
    if (own.final == nullptr) continue;
    const Begin begin = begin_of(name, all);
    const FlaskLook& flask = own.final->flask;
    read.story = story_of(begin.books, read.initial ? &*read.initial : nullptr, read.final->bench.ledger);
    done.flask = begin.unemptied ? flask.use.since(begin.use) : flask.use;
    done.poured_away_before_final = own.final->poured_away;
    add_first_end(name, own, begin, runs);
    if (own.initial == nullptr || own.initial->flask.number != flask.number) continue;
    done.entered_before_initial_cm3 =
        std::max(0.0, own.initial->flask.use.entered_cm3 - begin.use.entered_cm3);
  }
  return runs;
}

}  // namespace halfdrop

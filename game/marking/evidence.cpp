#include "game/marking/evidence.h"

#include <algorithm>

#include "physics/burette/tap.h"
#include "physics/flask/mixing.h"

namespace halfdrop {

namespace {

double cm3(Quanta volume) { return static_cast<double>(volume) * kVolumeQuantum_cm3; }

Quanta moved(const Ledger& books, Account from, Account to) { return books.moved(from, to).volume; }

/// Sets `known` to `now`; what came on top.
Quanta news(Quanta& known, Quanta now) {
  const Quanta more = now - known;
  known = now;
  return more;
}

FlaskUse fresh_flask(FlaskUse::Before before) {
  FlaskUse flask;
  flask.before = before;
  return flask;
}

bool handles_liquid(Deed deed) {
  switch (deed) {
    case Deed::empty_beaker:
    case Deed::fill_pipette:
    case Deed::deliver_aliquot:
    case Deed::add_indicator:
    case Deed::touch_off_drop:
    case Deed::empty_flask:
    case Deed::rinse_flask:
    case Deed::wipe_bench:
      return true;
    default:
      return false;
  }
}

}  // namespace

void Evidence::after_tick(const Session& session) {
  const BenchState& bench = session.state();
  if (books_changed(bench.ledger)) liquid_handled(bench);
  if (!first_spill && !bench.ledger.balance(Account::bench_top).empty()) first_spill = bench.tick;
  watch_pouring(session);
  watch_tip(bench);
  watch_flask(session);
}

void Evidence::liquid_handled(const BenchState& bench) {
  if (!first_liquid) {
    first_liquid = bench.tick;
    goggles_off_.reset();
  }
  if (!without_goggles) {
    if (goggles_off_) without_goggles = goggles_off_;
    if (!bench.goggles_on) without_goggles = std::min(bench.tick, without_goggles.value_or(bench.tick));
  }
  if (!without_coat && !bench.coat_on) without_coat = bench.tick;
  goggles_off_.reset();
}

/// Whether liquid was handled since the last look: out of a bottle, in the tube, through the air.
bool Evidence::books_changed(const Ledger& books) {
  const bool first_look = titrant_in_bottle_ < 0;
  const Quanta titrant = news(titrant_in_bottle_, books.balance(Account::titrant_bottle).volume);
  const Quanta water = news(water_in_bottle_, books.balance(Account::wash_bottle).volume);
  const Quanta column = news(in_column_, books.balance(Account::column).volume);
  const Quanta flight = news(in_flight_, books.balance(Account::in_flight).volume);
  return !first_look && (titrant != 0 || water != 0 || column != 0 || flight != 0);
}

void Evidence::watch_pouring(const Session& session) {
  const Ledger& books = session.state().ledger;
  const Quanta through = news(through_tap_, moved(books, Account::column, Account::jet));
  const Quanta poured = news(poured_, moved(books, Account::titrant_bottle, Account::column) +
                                          moved(books, Account::titrant_bottle, Account::funnel));
  if (poured <= 0) return;
  poured_cm3 += cm3(poured);
  const double tap = session.hands().tap;
  if (tap != tap_looked_at_) {
    tap_looked_at_ = tap;
    tap_open_ = tap_opening(session.spec().tap, tap).area_mm2 > 0.0;
  }
  if (!tap_open_) return;
  if (!poured_tap_open) poured_tap_open = session.state().tick;
  ran_through_cm3 += cm3(through);
}

void Evidence::watch_tip(const BenchState& bench) {
  const Ledger& books = bench.ledger;
  const Quanta fallen = moved(books, Account::pendant_drop, Account::in_flight);
  if (fallen == fallen_) return;
  fallen_ = fallen;
  const Quanta touched_off = moved(books, Account::pendant_drop, Account::flask_wall) +
                             moved(books, Account::pendant_drop, Account::beaker);
  drops.push_back(FallenDrop{bench.tick, cm3(fallen + touched_off)});
}

void Evidence::watch_flask(const Session& session) {
  const BenchState& bench = session.state();
  const Ledger& books = bench.ledger;
  const Quanta fell = news(landed_, moved(books, Account::in_flight, Account::flask_landing));
  const Quanta washed = news(from_wall_, moved(books, Account::flask_wall, Account::flask_landing));
  if (fell > 0 || washed > 0) {
    flask_.entered_cm3 += cm3(fell);
    flask_.last_entered = bench.tick;
    flask_.last_on_tile = flask_on_tile(bench);
  }
  stir(session, cm3(fell));
  const double on_wall_cm3 = books.balance(Account::flask_wall).volume_cm3();
  if (on_wall_cm3 > 0.0 && flask_.most_on_wall_cm3 <= 0.0) flask_.wall_wet = bench.tick;
  flask_.most_on_wall_cm3 = std::max(flask_.most_on_wall_cm3, on_wall_cm3);
  if (session.hands().wash > 0.0 && flask_.entered_cm3 > 0.0) flask_.washed_down = bench.tick;
}

void Evidence::stir(const Session& session, double fell_cm3) {
  const Tick now = session.state().tick;
  if (session.hands().swirl >= kSwirling) {
    flask_.swirled_in_cm3 += fell_cm3 + waiting_cm3_;
    waiting_cm3_ = 0.0;
    return;
  }
  if (waiting_cm3_ > 0.0 && now - waiting_since_ > kStirredSoon) waiting_cm3_ = 0.0;
  if (fell_cm3 <= 0.0) return;
  if (waiting_cm3_ <= 0.0) waiting_since_ = now;
  waiting_cm3_ += fell_cm3;
}

void Evidence::after_change(const Session& session, const Change& change, const ReadingMoments& moments) {
  if (const auto* deed = std::get_if<Deed>(&change.what)) {
    deed_done(session.state(), *deed);
    flask_deed(session, *deed);
  } else if (const auto* writing = std::get_if<Writing>(&change.what)) {
    reading_written(session, *writing, moments);
  } else if (std::holds_alternative<Ending>(change.what)) {
    ended = true;
  }
}

void Evidence::deed_done(const BenchState& bench, Deed deed) {
  if (deed == Deed::take_off_goggles && first_liquid && !goggles_off_) goggles_off_ = bench.tick;
  // What the deed moved is known from here on: the next tick must not find it again.
  if (books_changed(bench.ledger) || handles_liquid(deed)) liquid_handled(bench);
}

void Evidence::flask_deed(const Session& session, Deed deed) {
  if (deed == Deed::rinse_flask || deed == Deed::empty_flask) {
    const bool rinsed =
        deed == Deed::rinse_flask || (flask_.untouched() && flask_.before != FlaskUse::Before::only_emptied);
    flask_ = fresh_flask(rinsed ? FlaskUse::Before::rinsed : FlaskUse::Before::only_emptied);
    flask_read_for_.clear();
    waiting_cm3_ = 0.0;
    return;
  }
  if (deed != Deed::deliver_aliquot && deed != Deed::add_indicator) return;
  if (!flask_read_for_.empty()) {  // the last run's liquid is still in it
    flask_ = fresh_flask(FlaskUse::Before::not_emptied);
    flask_read_for_.clear();
  }
  if (deed == Deed::add_indicator) {
    ++flask_.indicator_drops;
    return;
  }
  const double in_flask_cm3 = flask_liquid(session.state().ledger).volume_cm3();
  if (flask_.untouched() && flask_.before == FlaskUse::Before::rinsed) {
    flask_.wet_at_aliquot = in_flask_cm3 > session.spec().pipette.true_cm3 + 0.1;
  }
  ++flask_.aliquots;
}

void Evidence::reading_written(const Session& session, const Writing& writing,
                               const ReadingMoments& moments) {
  const std::size_t slash = writing.cell.rfind('/');
  const std::string run = writing.cell.substr(0, slash);
  const std::string row = writing.cell.substr(slash + 1);
  const auto found = moments.runs().find(run);
  if (found == moments.runs().end()) return;
  const auto taken_now = [&](const std::optional<ReadingMoment>& moment) {
    return moment && moment->bench.tick == session.state().tick;
  };
  if (row == "initial" && taken_now(found->second.initial)) {
    runs[run].entered_before_initial_cm3 = flask_read_for_.empty() ? flask_.entered_cm3 : 0.0;
  }
  if (row != "final" || !taken_now(found->second.final)) return;
  if (!flask_read_for_.empty() && flask_read_for_ != run) flask_ = fresh_flask(FlaskUse::Before::not_emptied);
  flask_read_for_ = run;
  runs[run].flask = flask_;
}

}  // namespace halfdrop

#include "game/marking/flask_watch.h"

#include <algorithm>
#include <utility>

#include "physics/bench/bench.h"
#include "physics/bench/pipette.h"
#include "physics/bench/pipette_by_hand.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

double cm3(Quanta volume) { return static_cast<double>(volume) * kVolumeQuantum_cm3; }

/// What fell or was washed into the flask since the last look.
Quanta news(Quanta& known, const Ledger& books, Account from) {
  const Quanta now = books.moved(from, Account::flask).volume;
  return now - std::exchange(known, now);
}

}  // namespace

bool FlaskUse::got_more_than(const FlaskUse& earlier) const {
  return aliquots > earlier.aliquots || indicator_drops > earlier.indicator_drops ||
         second_indicator_drops > earlier.second_indicator_drops || entered_cm3 > earlier.entered_cm3;
}

FlaskUse FlaskUse::since(const FlaskUse& earlier) const {
  FlaskUse use = *this;
  use.before = Before::not_emptied;
  use.aliquots -= earlier.aliquots;
  use.indicator_drops -= earlier.indicator_drops;
  use.second_indicator_drops -= earlier.second_indicator_drops;
  use.entered_cm3 -= earlier.entered_cm3;
  use.swirled_in_cm3 = std::min(use.swirled_in_cm3 - earlier.swirled_in_cm3, use.entered_cm3);
  use.wet_at_aliquot = false;
  if (use.washed_down == earlier.washed_down) use.washed_down = 0;
  return use;
}

void FlaskWatch::after_tick(const Session& session) {
  const BenchState& bench = session.state();
  FlaskUse& use = now_.use;
  const Quanta fell = news(landed_, bench.ledger, Account::in_flight);
  const Quanta washed = news(from_wall_, bench.ledger, Account::flask_wall);
  if (fell > 0 || washed > 0) {
    use.entered_cm3 += cm3(fell);
    use.last_entered = bench.tick;
    use.last_on_tile = flask_on_tile(bench);
  }
  watch_pipette(session);
  stir(session, cm3(fell));
  const double on_wall_cm3 = bench.ledger.balance(Account::flask_wall).volume_cm3();
  if (on_wall_cm3 > 0.0 && use.most_on_wall_cm3 <= 0.0) use.wall_wet = bench.tick;
  use.most_on_wall_cm3 = std::max(use.most_on_wall_cm3, on_wall_cm3);
  if (session.hands().wash > 0.0 && use.entered_cm3 > 0.0) use.washed_down = bench.tick;
}

/// By hand an aliquot is in once some of what was drawn up has run in.
void FlaskWatch::watch_pipette(const Session& session) {
  const BenchState& bench = session.state();
  if (!session.spec().pipette.by_hand) return;
  if (bench.hands.valve != 0.0 && !pipette_over_flask(bench))
    eye_above_line_mm_ = bench.hands.eye_mm - kPipetteLine_mm;
  if (bench.pipette_place == PipettePlace::dipped && bench.hands.valve < 0.0) filled_ = true;
  const Quanta ran_in = news(from_pipette_, bench.ledger, Account::pipette);
  if (!filled_ || ran_in <= 0) return;
  filled_ = false;
  aliquot_in(flask_liquid(bench.ledger).volume_cm3() - cm3(ran_in));
}

void FlaskWatch::pipette_held(const Session& session, Deed deed) {
  const BenchState& bench = session.state();
  PipetteUse& use = now_.use.pipette;
  const double holds_cm3 = bench.ledger.balance(Account::pipette).volume_cm3();
  if (deed == Deed::lift_pipette) {
    const bool from_flask = std::exchange(pipette_over_, false);
    if (!from_flask || filled_) return;
    const double clings_cm3 = bench.ledger.balance(Account::pipette_wet).volume_cm3();
    use.not_given_cm3 = holds_cm3 + clings_cm3 - kPipetteKeeps_cm3;
    use.taken_away = bench.tick;
    return;
  }
  pipette_over_ = true;
  const double outside_cm3 = cm3(news(from_outside_, bench.ledger, Account::pipette_outside));
  if (filled_) {
    use = {};
    use.at_flask = std::max<Tick>(bench.tick, 1);
    use.air_cm3 = cm3(bench.pipette_air);
    use.off_line_cm3 = holds_cm3 + use.air_cm3 - pipette_line_cm3(session.spec());
    use.eye_above_mm = eye_above_line_mm_;
  }
  use.outside_cm3 += outside_cm3;
}

void FlaskWatch::stir(const Session& session, double fell_cm3) {
  const Tick now = session.state().tick;
  if (session.hands().swirl >= kSwirling) {
    now_.use.swirled_in_cm3 += fell_cm3 + waiting_cm3_;
    waiting_cm3_ = 0.0;
    return;
  }
  if (waiting_cm3_ > 0.0 && now - waiting_since_ > kStirredSoon) waiting_cm3_ = 0.0;
  if (fell_cm3 <= 0.0) return;
  if (waiting_cm3_ <= 0.0) waiting_since_ = now;
  waiting_cm3_ += fell_cm3;
}

void FlaskWatch::before_deed(const Session& session, Deed deed) {
  if (deed != Deed::empty_flask && deed != Deed::rinse_flask && deed != Deed::rinse_flask_with_sample) return;
  if (now_.use.entered_cm3 <= 0.0 || check(session.spec(), session.state(), deed)) return;
  poured_away_.assign(1, PouredAway{session.state(), now_});
  wasted_.push_back(Wasted{now_.use.last_entered, session.state().tick});
}

void FlaskWatch::after_deed(const Session& session, Deed deed) {
  switch (deed) {
    case Deed::rinse_flask:
      return emptied(session, FlaskUse::Before::rinsed);
    case Deed::rinse_flask_with_sample:
      return emptied(session, FlaskUse::Before::rinsed_with_sample);
    case Deed::empty_flask:
      return emptied(session, left_by_emptying());
    case Deed::add_indicator:
      ++now_.use.indicator_drops;
      return;
    case Deed::add_second_indicator:
      ++now_.use.second_indicator_drops;
      return;
    case Deed::deliver_aliquot:
      return aliquot_in(flask_liquid(session.state().ledger).volume_cm3() - session.spec().pipette.true_cm3);
    case Deed::lift_pipette:
    case Deed::lean_pipette:
    case Deed::hold_pipette_free:
      return pipette_held(session, deed);
    default:
      return;
  }
}

/// A flask that nothing came into stays what it was; one that was new is as good as rinsed.
FlaskUse::Before FlaskWatch::left_by_emptying() const {
  if (!now_.use.untouched()) return FlaskUse::Before::only_emptied;
  return now_.use.before == FlaskUse::Before::first_use ? FlaskUse::Before::rinsed : now_.use.before;
}

void FlaskWatch::emptied(const Session& session, FlaskUse::Before before) {
  now_ = FlaskLook{now_.number + 1, session.state().ledger, {}};
  now_.use.before = before;
  waiting_cm3_ = 0.0;
}

void FlaskWatch::aliquot_in(double before_cm3) {
  FlaskUse& use = now_.use;
  if (use.untouched() && use.before == FlaskUse::Before::rinsed) use.wet_at_aliquot = before_cm3 > 0.1;
  ++use.aliquots;
}

const PouredAway* FlaskWatch::poured_away() const {
  return poured_away_.empty() || now_.use.entered_cm3 > 0.0 ? nullptr : &poured_away_.front();
}

int FlaskWatch::flasks_wasted(Tick after, Tick until) const {
  return static_cast<int>(std::count_if(wasted_.begin(), wasted_.end(), [&](const Wasted& flask) {
    return flask.last_entered > after && flask.at <= until;
  }));
}

}  // namespace halfdrop

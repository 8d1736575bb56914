#include "game/marking/evidence.h"

#include <algorithm>

#include "physics/bench/clamp.h"

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

bool handles_liquid(Deed deed) {
  switch (deed) {
    case Deed::empty_beaker:
    case Deed::fill_pipette:
    case Deed::deliver_aliquot:
    case Deed::add_indicator:
    case Deed::add_second_indicator:
    case Deed::touch_off_drop:
    case Deed::empty_flask:
    case Deed::rinse_flask:
    case Deed::wipe_bench:
    case Deed::rinse_pipette_with_water:
    case Deed::rinse_pipette_with_sample:
    case Deed::blow_out_pipette:
    case Deed::rinse_flask_with_sample:
    case Deed::dip_pipette:
    case Deed::lift_pipette:
    case Deed::wipe_pipette:
    case Deed::lean_pipette:
    case Deed::hold_pipette_free:
    case Deed::dissolve_standard:
    case Deed::pour_into_volumetric:
    case Deed::rinse_into_volumetric:
    case Deed::invert_volumetric:
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
  standard.after_tick(session);
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

/// Whether liquid was handled since the last look: out of a bottle, in the tube, through the air; or a solid.
bool Evidence::books_changed(const Ledger& books) {
  const bool first_look = titrant_in_bottle_ < 0;
  const Quanta titrant = news(titrant_in_bottle_, books.balance(Account::titrant_bottle).volume);
  const Quanta sample = news(sample_in_bottle_, books.balance(Account::sample_bottle).volume);
  const Quanta water = news(water_in_bottle_, books.balance(Account::wash_bottle).volume);
  // Film that runs down the wall and a plug that leaks are nobody's doing.
  const Quanta tube =
      news(in_tube_, books.balance(Account::column).volume + books.balance(Account::wall_film).volume +
                         moved(books, Account::column, Account::plug_drop));
  const Parcel& weighing = books.balance(Account::weighing_bottle);
  const Quanta solid =
      news(solid_in_bottle_, weighing.amount(Component::titrant) + weighing.amount(Component::analyte));
  const Quanta flight = news(in_flight_, books.balance(Account::in_flight).volume);
  return !first_look && (titrant != 0 || sample != 0 || water != 0 || tube != 0 || flight != 0 || solid != 0);
}

void Evidence::watch_pouring(const Session& session) {
  const Ledger& books = session.state().ledger;
  const Quanta through = news(through_tap_, moved(books, Account::column, Account::jet));
  const Quanta poured = news(poured_, moved(books, Account::titrant_bottle, Account::column) +
                                          moved(books, Account::titrant_bottle, Account::funnel));
  watch_top(session);
  if (poured <= 0) return;
  poured_cm3 += cm3(poured);
  if (through <= 0) return;
  if (!poured_tap_open) poured_tap_open = session.state().tick;
  ran_through_cm3 += cm3(through);
}

/// Whatever is poured: what runs over comes down from the top.
void Evidence::watch_top(const Session& session) {
  const Ledger& books = session.state().ledger;
  Quanta into_tube = 0;
  for (const Account bottle : {Account::titrant_bottle, Account::sample_bottle, Account::wash_bottle})
    into_tube += moved(books, bottle, Account::column) + moved(books, bottle, Account::funnel);
  if (news(into_tube_, into_tube) <= 0) return;
  poured_top_mm = std::max(poured_top_mm, top_above_bench_mm(session.spec(), session.hands()));
  if (!poured_above_eye && !top_below_eye(session.spec(), session.hands()))
    poured_above_eye = session.state().tick;
}

void Evidence::watch_tip(const BenchState& bench) {
  const Ledger& books = bench.ledger;
  const Quanta fell = news(fallen_, moved(books, Account::pendant_drop, Account::in_flight));
  const Quanta touched = news(touched_off_, moved(books, Account::pendant_drop, Account::flask_wall) +
                                                moved(books, Account::pendant_drop, Account::beaker));
  if (fell == 0 && touched == 0) return;
  let_out.push_back(FallenDrop{bench.tick, cm3(fallen_ + touched_off_)});
  if (fell != 0) drops.push_back(let_out.back());
}

void Evidence::after_change(const Session& session, const Change& change) {
  if (const auto* deed = std::get_if<Deed>(&change.what)) {
    deed_done(session.state(), *deed);
    standard.after_deed(session, *deed);
  } else if (const auto* ending = std::get_if<Ending>(&change.what)) {
    ended = ending->how == "handed in";
  }
}

void Evidence::deed_done(const BenchState& bench, Deed deed) {
  if (deed == Deed::take_off_goggles && first_liquid && !goggles_off_) goggles_off_ = bench.tick;
  // What the deed moved is known from here on: the next tick must not find it again.
  if (books_changed(bench.ledger) || handles_liquid(deed)) liquid_handled(bench);
}

}  // namespace halfdrop

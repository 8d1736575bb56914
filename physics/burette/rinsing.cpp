#include "physics/burette/rinsing.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

namespace {

/// cm2 of one of the film's lengths.
double length_area_cm2(const BuretteSpec& burette) {
  const double room_cm3 = burette.above_zero_cm3 + burette.nominal_cm3 + burette.below_scale_cm3;
  const double mm_per_cm3 = burette.scale_length_mm / burette.nominal_cm3;
  const double radius_mm = std::sqrt(1000.0 / (kPi * mm_per_cm3));
  return 2.0 * kPi * radius_mm * mm_per_cm3 * room_cm3 / static_cast<double>(kFilmLengths) * 0.01;
}

}  // namespace

bool held_aslant(const BenchState& state) { return state.hands.tilt_degrees >= kRolls_degrees; }

void wet_tube(const BenchSpec& spec, BenchState& state, const Parcel& water) {
  const Quanta each = volume_quanta(spec.burette.wet_cm3) / static_cast<Quanta>(kFilmLengths);
  Ledger& ledger = state.ledger;
  ledger.open(Account::wall_film, water.share(each * static_cast<Quanta>(kFilmLengths)));
  state.film.runs.fill(each);
}

void roll(const BenchSpec& spec, BenchState& state) {
  if (!held_aslant(state) || state.tick % kFilmTicks != 0) return;
  Ledger& ledger = state.ledger;
  const Quanta over = ledger.balance(Account::column).volume - volume_quanta(kMostToRoll_cm3);
  if (over > 0) ledger.transfer(Account::column, Account::sink, over);
  if (ledger.balance(Account::column).volume_cm3() < kLeastToRoll_cm3) return;
  const double share = seconds(kFilmTicks) / kRollsRound_s;
  const double wets_mm = film_laid_mm(spec.burette, spec.settled.liquid, kRolls_mm_s);
  const Quanta wets = volume_quanta(share * wets_mm * 0.1 * length_area_cm2(spec.burette));
  for (Quanta& here : state.film.runs) {
    const auto returns = static_cast<Quanta>(share * static_cast<double>(here));
    ledger.transfer(Account::wall_film, Account::column, returns);
    here += ledger.transfer(Account::column, Account::wall_film, wets).volume - returns;
  }
}

}  // namespace halfdrop

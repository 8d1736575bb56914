#include "physics/burette/rinsing.h"

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

namespace {

double length_cm3(const BuretteSpec& burette) {
  return (burette.above_zero_cm3 + burette.nominal_cm3 + burette.below_scale_cm3) /
         static_cast<double>(kFilmLengths);
}

}  // namespace

bool held_aslant(const BenchState& state) { return state.hands.tilt_degrees >= kRolls_degrees; }

void wet_tube(const BenchSpec& spec, BenchState& state, const Parcel& water) {
  const Quanta each = volume_quanta(spec.burette.wet_cm3) / static_cast<Quanta>(kFilmLengths);
  const auto greasy = static_cast<Quanta>(spec.burette.grease * static_cast<double>(each));
  Ledger& ledger = state.ledger;
  ledger.open(Account::wall_film, water.share(each * static_cast<Quanta>(kFilmLengths)));
  state.film.runs.fill(each - greasy);
  state.film.greasy.fill(greasy);
}

void roll(const BenchSpec& spec, BenchState& state) {
  if (state.tick % kFilmTicks != 0) return;
  Ledger& ledger = state.ledger;
  const Quanta over = ledger.balance(Account::column).volume - volume_quanta(kMostToRoll_cm3);
  if (over > 0) ledger.transfer(Account::column, Account::sink, over);
  if (ledger.balance(Account::column).volume_cm3() < kLeastToRoll_cm3) return;
  const double share = seconds(kFilmTicks) / kRollsRound_s;
  const double wets_mm =
      (1.0 - spec.burette.grease) * film_laid_mm(spec.burette, spec.settled.liquid, kRolls_mm_s);
  const Quanta wets =
      volume_quanta(share * wets_mm * 0.1 * wall_area_cm2(spec.burette, length_cm3(spec.burette)));
  const auto give_up = [&](Quanta& clings) {
    const auto returns = static_cast<Quanta>(share * static_cast<double>(clings));
    ledger.transfer(Account::wall_film, Account::column, returns);
    clings -= returns;
  };
  for (std::size_t i = 0; i < kFilmLengths; ++i) {
    give_up(state.film.runs[i]);
    give_up(state.film.greasy[i]);
    state.film.runs[i] += ledger.transfer(Account::column, Account::wall_film, wets).volume;
  }
}

}  // namespace halfdrop

#include "physics/burette/rinsing.h"

#include <doctest/doctest.h>

#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

constexpr double kWet_cm3 = 0.3;

BenchSpec wet_bench() {
  BenchSpec spec = titration_bench();
  spec.burette.wet_cm3 = kWet_cm3;
  settle(spec);
  return spec;
}

Hands aslant() {
  Hands hands = at_rest();
  hands.tilt_degrees = kFlat_degrees;
  return hands;
}

void pour_in(const BenchSpec& spec, BenchState& state, double volume_cm3) {
  Hands hands = at_rest();
  hands.pour = 1.0;
  state.funnel_in = true;
  run(spec, state, hands, volume_cm3 / spec.pour_cm3_s);
  state.funnel_in = false;
}

void run_out(const BenchSpec& spec, BenchState& state) {
  state.beaker_under = true;
  Hands hands = tap_at(1.0);
  hands.flask_x_cm = 26.0;
  run(spec, state, hands, 60.0);
}

/// Rinsed once with so much titrant, rolled for so long, and let out through the jet.
void rinse(const BenchSpec& spec, BenchState& state, double volume_cm3, double for_s) {
  pour_in(spec, state, volume_cm3);
  run(spec, state, aslant(), for_s);
  run_out(spec, state);
}

double weaker(const BenchSpec& spec, const Parcel& liquid) {
  return 1.0 -
         1000.0 * liquid.amount_mol(Component::titrant) / (liquid.volume_cm3() * spec.titrant.true_mol_dm3);
}

/// How much weaker than its bottle what is in the tube is, when it has been filled to about the zero mark.
double weaker_when_filled(const BenchSpec& spec, BenchState state) {
  pour_in(spec, state, column_volume_cm3(spec.burette, 0.0) - cm3(state, Account::column));
  return weaker(spec, state.ledger.balance(Account::column));
}

}  // namespace

TEST_CASE("a burette left wet has its water on the wall, and nowhere else") {
  const BenchState state = lay_out(wet_bench());
  CHECK_NEAR(cm3(state, Account::wall_film), kWet_cm3, 1e-9);
  CHECK(quanta(state, Account::column) == 0);
  CHECK(quanta(state, Account::jet) == 0);
}

// Dilution by what clings: 0.3 cm3 in a tube that holds 50 cm3 and more, a little under 0.6 % (arithmetic).
TEST_CASE("water left in a burette dilutes the titrant by the share that it has of the tube") {
  const BenchSpec spec = wet_bench();
  const double of_the_tube = kWet_cm3 / column_volume_cm3(spec.burette, 0.0);
  const double weaker = weaker_when_filled(spec, lay_out(spec));
  CHECK(weaker > 0.7 * of_the_tube);
  CHECK(weaker <= 1.001 * of_the_tube);
}

// Perfect mixing of what clings with what is poured in leaves w / (w + v) of the water (arithmetic).
TEST_CASE("turned about, what clings is as good as mixed with what was poured in") {
  const BenchSpec spec = wet_bench();
  BenchState state = lay_out(spec);
  pour_in(spec, state, 8.0);
  run(spec, state, aslant(), 12.0);
  const double volume_cm3 = cm3(state, Account::column) + cm3(state, Account::wall_film);
  CHECK_NEAR(weaker(spec, state.ledger.balance(Account::wall_film)), kWet_cm3 / volume_cm3, 0.002);
  CHECK_NEAR(weaker(spec, state.ledger.balance(Account::column)), kWet_cm3 / volume_cm3, 0.002);
}

TEST_CASE("rinsed twice with titrant a wet burette fills undiluted; unrinsed it does not") {
  const BenchSpec spec = wet_bench();
  BenchState state = lay_out(spec);
  const double unrinsed = weaker_when_filled(spec, state);
  rinse(spec, state, 8.0, 8.0);
  const double once = weaker_when_filled(spec, state);
  rinse(spec, state, 8.0, 8.0);
  CHECK(weaker_when_filled(spec, state) < 1e-5);
  CHECK(once < 1e-3);
  CHECK(unrinsed >= -1e-12);
  CHECK(quanta(state, Account::bench_top) == 0);
}

TEST_CASE("titrant run straight through, the burette upright, leaves more water than rolled") {
  const BenchSpec spec = wet_bench();
  BenchState rolled = lay_out(spec), upright = lay_out(spec);
  rinse(spec, rolled, 8.0, 8.0);
  rinse(spec, upright, 8.0, 0.0);
  const auto water_cm3 = [&](const BenchState& state) {
    const Parcel& film = state.ledger.balance(Account::wall_film);
    return film.volume_cm3() * weaker(spec, film);
  };
  CHECK(water_cm3(rolled) < 0.5 * water_cm3(upright));
}

TEST_CASE("held level it lets nothing out at the tap, and what is too much out at the rim") {
  const BenchSpec spec = titration_bench();
  BenchState state = filled_bench(spec, 20.0);
  const Quanta jet = quanta(state, Account::jet);
  Hands hands = aslant();
  hands.tap = 1.0;
  run(spec, state, hands, 5.0);
  CHECK(quanta(state, Account::jet) == jet);
  CHECK(quanta(state, Account::pendant_drop) == 0);
  CHECK(cm3(state, Account::column) <= kMostToRoll_cm3);
  CHECK(cm3(state, Account::sink) > 5.0);
}

TEST_CASE("a little liquid does not reach all round") {
  const BenchSpec spec = wet_bench();
  BenchState state = lay_out(spec);
  pour_in(spec, state, 0.5 * kLeastToRoll_cm3);
  const Quanta before = state.ledger.balance(Account::wall_film).amount(Component::titrant);
  run(spec, state, aslant(), 5.0);
  CHECK(state.ledger.balance(Account::wall_film).amount(Component::titrant) == before);
}

TEST_CASE("set upright again, nothing is held to cling below the meniscus") {
  const BenchSpec spec = wet_bench();
  BenchState state = lay_out(spec);
  pour_in(spec, state, 15.0);
  run(spec, state, aslant(), 4.0);
  run(spec, state, at_rest(), 1.0);
  CHECK(state.film.runs.back() == 0);
  CHECK(state.film.runs.front() > 0);
}

TEST_CASE("greasy glass gives up its drops when it is turned about, and the books know where all of it is") {
  BenchSpec spec = wet_bench();
  spec.burette.grease = 0.5;
  settle(spec);
  BenchState state = lay_out(spec);
  const auto clings = [&](const std::array<Quanta, kFilmLengths>& film) {
    Quanta sum = 0;
    for (const Quanta here : film) sum += here;
    return sum;
  };
  const Quanta greasy = clings(state.film.greasy);
  CHECK_NEAR(static_cast<double>(greasy) * kVolumeQuantum_cm3, 0.5 * kWet_cm3, 1e-6);
  pour_in(spec, state, 8.0);
  run(spec, state, aslant(), 12.0);
  CHECK(clings(state.film.greasy) < greasy / 100);
  CHECK(clings(state.film.runs) + clings(state.film.greasy) == quanta(state, Account::wall_film));
}

}  // namespace halfdrop

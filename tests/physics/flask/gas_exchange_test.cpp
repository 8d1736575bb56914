#include "physics/flask/gas_exchange.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

BenchSpec without_air() {
  BenchSpec spec = titration_bench();
  spec.air = false;
  spec.indicator.fading = {};
  settle(spec);
  return spec;
}

/// Titrant past equivalence (cm3) in an aliquot with indicator, all mixed, nothing left of the carbon dioxide
/// that sample and water brought: as after a titration in which the first tint was waited for.
BenchState titrated(const BenchSpec& spec, double past_cm3) {
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  const double equivalent_cm3 = spec.pipette.true_cm3 * spec.sample.true_mol_dm3 / spec.titrant.true_mol_dm3;
  state.ledger.transfer(Account::column, Account::flask, volume_quanta(equivalent_cm3 + past_cm3));
  const Parcel& rest = state.ledger.balance(Account::flask);
  state.ledger.move(Account::flask, Account::air,
                    Parcel::amount_of(Component::carbon_dioxide, rest.amount(Component::carbon_dioxide)));
  return state;
}

double tint(const BenchSpec& spec, const BenchState& state) {
  return visible_change(spec, flask_liquid(state.ledger));
}

/// Enhancement in a film without any formula for it: the two forms diffuse and react on a grid, step by small
/// step, from a film at equilibrium until nothing changes. Surface: carbon dioxide held at 1, no carbonate
/// passes; bottom: both at the equilibrium of the liquid, carbon dioxide 0.5.
double enhancement_on_a_grid(const carbon_dioxide::Rates& rates, double film_m_s, double diffusion_m2_s) {
  constexpr int kCells = 60;
  constexpr double kDeep = 0.5;
  const double dx_m = diffusion_m2_s / film_m_s / kCells;
  const double step_s = 0.4 * dx_m * dx_m / diffusion_m2_s;
  const double exchange = step_s * diffusion_m2_s / (dx_m * dx_m);
  std::vector<double> dioxide(kCells + 1, kDeep);
  std::vector<double> carbonate(kCells + 1, kDeep * rates.forward_per_s / rates.backward_per_s);
  dioxide[0] = 1.0;
  const auto spread = [&](std::vector<double>& amounts, std::size_t i, double reacted) {
    return amounts[i] + exchange * (amounts[i - 1] - 2.0 * amounts[i] + amounts[i + 1]) + reacted;
  };
  for (int round = 0; round < 60 * kCells * kCells; ++round) {
    std::vector<double> next_dioxide = dioxide, next_carbonate = carbonate;
    for (std::size_t i = 1; i < kCells; ++i) {
      const double reacted =
          step_s * (rates.forward_per_s * dioxide[i] - rates.backward_per_s * carbonate[i]);
      next_dioxide[i] = spread(dioxide, i, -reacted);
      next_carbonate[i] = spread(carbonate, i, reacted);
    }
    next_carbonate[0] = (4.0 * next_carbonate[1] - next_carbonate[2]) / 3.0;  // level at the surface
    dioxide.swap(next_dioxide);
    carbonate.swap(next_carbonate);
  }
  const double slope = (1.5 * dioxide[0] - 2.0 * dioxide[1] + 0.5 * dioxide[2]) / dx_m;
  return slope * diffusion_m2_s / (film_m_s * (1.0 - kDeep));
}

/// Seconds until the tint is fainter than `least`; `most` if it is not by then.
double lasts_s(const BenchSpec& spec, BenchState state, const Hands& hands, double least, double most_s) {
  double passed_s = 0.0;
  while (passed_s < most_s && tint(spec, state) >= least) {
    run(spec, state, hands, 0.5);
    passed_s += 0.5;
  }
  return passed_s;
}

}  // namespace

// Source: Maier and others, shaken flasks: kLa of oxygen = 6.67e-6 N^1.16 V^-0.83 d0^0.38 d^1.92 s^-1 (turns
// a minute, cm3, cm, cm); 250 cm3 flask of 8.3 cm, orbit 2.5 cm, 100 cm3 at 200 turns, 50 cm2 of surface.
TEST_CASE("swirled hard, the film lets as much through as a shaken flask's") {
  const double per_s =
      6.67e-6 * std::pow(200.0, 1.16) * std::pow(100.0, -0.83) * std::pow(2.5, 0.38) * std::pow(8.3, 1.92);
  CHECK_NEAR(kSwirledOxygen_m_s / (per_s * 100e-6 / 50e-4), 1.0, 0.05);
  CHECK(kSwirled_m_s < kSwirledOxygen_m_s);  // carbon dioxide diffuses more slowly
}

// Source: 1 to 2 cm an hour for quiet water (from memory of work on lakes and pools).
TEST_CASE("at rest the film lets through what quiet water does") {
  CHECK(kStill_m_s * 100.0 * 3600.0 > 1.0);
  CHECK(kStill_m_s * 100.0 * 3600.0 <= 2.0);
}

// Source: common practice: the first permanent pink fades in about a minute in an open, swirled flask, and
// that is no reason to add more.
TEST_CASE(
    "a first just visible tint is half gone in about a minute of swirling, and fades more slowly at rest") {
  const BenchSpec spec = titration_bench();
  constexpr double kHalf = 0.5 * kFirstVisibleChange;
  const Parcel mixed = flask_liquid(titrated(spec, 0.0).ledger);
  const BenchState state = titrated(spec, *first_visible_change_cm3(spec, mixed) + 1e-4);
  const double swirled_s = lasts_s(spec, state, swirling(1.0), kHalf, 3600.0);
  const double still_s = lasts_s(spec, state, swirling(0.0), kHalf, 3600.0);
  MESSAGE("a tint of " << tint(spec, state) << " is half gone after " << swirled_s << " s swirled, "
                       << still_s << " s at rest");
  CHECK(swirled_s > 30.0);
  CHECK(swirled_s < 120.0);
  CHECK(still_s > 3.0 * swirled_s);
}

TEST_CASE("a whole drop too many stays pink for many minutes of swirling") {
  const BenchSpec spec = titration_bench();
  const BenchState state = titrated(spec, 0.05);
  const double lasts = lasts_s(spec, state, swirling(1.0), kFirstVisibleChange, 7200.0);
  MESSAGE("a drop of 0.05 cm3 too many lasts " << lasts / 60.0 << " min");
  CHECK(lasts > 8.0 * 60.0);
}

TEST_CASE("without carbon dioxide a tint stays as long as somebody looks") {
  const BenchSpec spec = without_air();
  BenchState state = titrated(spec, 0.01);
  const double before = tint(spec, state);
  run(spec, state, swirling(0.8), 600.0);
  CHECK_NEAR(tint(spec, state), before, 1e-9);
}

// Source: water open to air of 420 ppm at 25 C has pH 5.60, worked out from Henry's law and the first
// constant.
TEST_CASE("pure water left open comes to pH 5.6") {
  BenchSpec spec = titration_bench();
  spec.temperature_c = 25.0;
  settle(spec);
  BenchState state = lay_out(spec);
  Parcel boiled;
  boiled.volume = volume_quanta(50.0);
  state.ledger.open(Account::flask, boiled);
  CHECK_NEAR(equilibrium_of(spec, flask_liquid(state.ledger)).ph, 7.0, 0.01);
  run(spec, state, swirling(0.8), 3600.0);
  CHECK_NEAR(equilibrium_of(spec, flask_liquid(state.ledger)).ph, 5.60, 0.01);
}

// Source: Hatta's film for an irreversible reaction of first order, E = Ha / tanh(Ha) (Danckwerts, Gas-Liquid
// Reactions, from memory); where the reaction is at equilibrium all through the film, as in acid, it helps
// nothing.
TEST_CASE("the film's enhancement lies between none and Hatta's, the less the more carbonate turns back") {
  constexpr double kDiffusion_m2_s = 1.9e-9;
  for (const double film_m_s : {5e-6, 2e-5, 1e-4}) {
    for (const double forward_per_s : {0.02, 0.3, 5.0, 300.0}) {
      CAPTURE(film_m_s);
      CAPTURE(forward_per_s);
      const double hatta = std::sqrt(forward_per_s * kDiffusion_m2_s) / film_m_s;
      double before = film_enhancement({forward_per_s, 0.0}, film_m_s, kDiffusion_m2_s);
      CHECK_NEAR(before / (hatta / std::tanh(hatta)), 1.0, 1e-12);
      for (double backward_per_s = 1e-4; backward_per_s < 1e12; backward_per_s *= 10.0) {
        const double now = film_enhancement({forward_per_s, backward_per_s}, film_m_s, kDiffusion_m2_s);
        CHECK(now >= 1.0);
        CHECK(now <= before);
        before = now;
      }
      CHECK_NEAR(before, 1.0, 1e-6);
    }
  }
}

// Source: worked by hand from Hoover and Berkshire's formula, 25 C, no salt: k 0.037 s^-1, D 1.91e-9 m2/s, kL
// 5e-6 m/s. pH 6.351, tau 2: Qz 2.378, E 2 / (1 + 0.9829 / 2.378) = 1.415. pH 6.000, tau 3.244: Qz 3.028, E
// 3.244 / (2.244 + 0.9953 / 3.028) = 1.261.
TEST_CASE("at rest carbon dioxide crosses the surface of a weakly acid liquid about 1.3 times faster") {
  CHECK_NEAR(film_enhancement({0.037, 0.037}, 5e-6, 1.91e-9), 1.415, 0.001);
  CHECK_NEAR(film_enhancement({0.037, 0.037 * 2.244}, 5e-6, 1.91e-9), 1.261, 0.001);
}

TEST_CASE("the film's enhancement is that of diffusion and reaction followed step by step") {
  for (const double backward_per_s : {0.002, 0.037, 0.4}) {
    CAPTURE(backward_per_s);
    const carbon_dioxide::Rates rates{0.037, backward_per_s};
    CHECK_NEAR(film_enhancement(rates, 5e-6, 1.9e-9), enhancement_on_a_grid(rates, 5e-6, 1.9e-9), 0.005);
  }
}

// Source: Bade and Cole, J. Geophys. Res. 111 (2006), abstract: floating chambers on a fertilized lake, k600
// 1.83 cm/h; carbon dioxide 3.5 to 7.5 times faster, a little more than the model they compare with. The
// lake's pH, above 9, is not in the abstract (from memory).
TEST_CASE("water of pH 9 to 10 takes up carbon dioxide several times faster, as a fertilized lake does") {
  const auto enhancement = [](double ph) {
    const double hydroxide_mol_dm3 = std::pow(10.0, ph - 13.9945);
    const double forward_per_s = carbon_dioxide::hydration_per_s(25.0) +
                                 carbon_dioxide::hydroxylation_dm3_mol_s(25.0) * hydroxide_mol_dm3;
    const double tau_less_1 = std::pow(10.0, carbon_dioxide::pk_first(25.0) - ph);
    return film_enhancement({forward_per_s, forward_per_s * tau_less_1}, 1.83e-2 / 3600.0,
                            carbon_dioxide::diffusion_m2_s(25.0));
  };
  CHECK(enhancement(5.0) < 1.05);
  CHECK(enhancement(9.0) > 2.0);
  CHECK(enhancement(9.0) < 3.5);
  CHECK(enhancement(10.0) > 6.5);
  CHECK(enhancement(10.0) < 8.5);
}

TEST_CASE("oxygen's exchange becomes that of carbon dioxide by the root of their diffusion coefficients") {
  // Source: Han and Bartels 1996, oxygen: log10 of D in cm2/s -4.410 + 773.8/T - (506.4/T)^2.
  const double t = 298.15;
  const double oxygen_m2_s = 1e-4 * std::pow(10.0, -4.410 + 773.8 / t - 506.4 * 506.4 / (t * t));
  CHECK_NEAR(kSlowerThanOxygen, std::sqrt(carbon_dioxide::diffusion_m2_s(25.0) / oxygen_m2_s), 0.001);
}

TEST_CASE("a film of liquid in an empty flask fills up with carbon dioxide and never beyond what air holds") {
  const BenchSpec spec = titration_bench();
  BenchState state = lay_out(spec);
  Parcel film;
  film.volume = volume_quanta(0.05);
  state.ledger.open(Account::flask, film);
  state.hands = swirling(0.8);
  double before = 0.0;
  for (int i = 0; i < 100; ++i) {
    exchange_gas(spec, state);
    state.tick += kGasTicks;
    const double now = mol_dm3(state.ledger.balance(Account::flask), Component::carbon_dioxide);
    CHECK(now >= before - 1e-9);  // less what becomes carbonate
    CHECK(now <= spec.settled.saturated_co2_mol_dm3 + 1e-12);
    before = now;
  }
  CHECK_NEAR(before / spec.settled.saturated_co2_mol_dm3, 1.0, 0.001);
}

TEST_CASE("carbon goes from air to water and between its forms, and none is lost") {
  const BenchSpec spec = titration_bench();
  BenchState state = titrated(spec, 0.05);
  const Parcel before = state.ledger.total();
  run(spec, state, swirling(0.6), 120.0);
  CHECK(state.ledger.total() == before);
  const Parcel taken_up = state.ledger.moved(Account::air, Account::flask);
  CHECK(taken_up.amount(Component::carbon_dioxide) > 0);
  CHECK(state.ledger.balance(Account::reactions).amount(Component::carbonate) < 0);
}

// Source: books on titration agree: sodium hydroxide that has taken up carbon dioxide gives a titre too high
// with phenolphthalein, for each carbonate ion then takes up one proton for two (common practice; Vogel, from
// memory).
TEST_CASE("old alkali shows its endpoint later, by one equivalent of the carbonate in it") {
  BenchSpec spec = without_air();
  spec.titrant.carbonate_mol_dm3 = 0.002;  // a fiftieth of its strength
  const BenchState fresh = titrated(without_air(), 0.0);
  const BenchState old = titrated(spec, 0.0);
  const double late_cm3 = *first_visible_change_cm3(spec, flask_liquid(old.ledger)) -
                          *first_visible_change_cm3(without_air(), flask_liquid(fresh.ledger));
  const double carbonate_mol = 0.002 * 25.0 / 1000.0;
  CHECK_NEAR(late_cm3, carbonate_mol / 0.1 * 1000.0, 0.05);
}

TEST_CASE("an acid run into carbonate drives the gas out, not beyond what there is") {
  BenchSpec spec = titration_bench();
  spec.sample.substance = {"hydrochloric acid", {{"Cl-", -1}}, {}};
  settle(spec);
  BenchState state = lay_out(spec);
  Parcel liquid = Parcel::solution(50.0, Component::analyte, 0.1);
  liquid.dissolve(Component::carbonate, 0.05);
  state.ledger.open(Account::flask, liquid);
  run(spec, state, at_rest(), 1.0);
  const Parcel& rest = state.ledger.balance(Account::flask);
  CHECK(rest.amount(Component::carbonate) >= 0);
  CHECK(mol_dm3(rest, Component::carbon_dioxide) > 0.0499);  // more acid than carbonate: all of it, at once
  const Quanta dissolved = rest.amount(Component::carbon_dioxide);
  run(spec, state, swirling(0.8), 300.0);
  CHECK(state.ledger.balance(Account::flask).amount(Component::carbon_dioxide) < dissolved / 2);
}

// Analytic: what relaxes to an equilibrium comes to it from one side, however coarse the steps.
TEST_CASE("near a carbonate's second endpoint the pH creeps, and swings from step to step nowhere") {
  BenchSpec spec = titration_bench();
  spec.titrant.substance = {"hydrochloric acid", {{"Cl-", -1}}, {}};
  spec.sample.substance = {"sodium carbonate", {{"Na+", 1, 2.0}}, {}};
  spec.sample.carbonate_per_mol = 1.0;
  spec.sample.true_mol_dm3 = spec.sample.label_mol_dm3 = 0.05;
  spec.titrant_per_analyte = 2.0;
  settle(spec);
  for (const double titrant_cm3 : {12.5, 20.0, 24.0, 24.5, 24.7, 24.8, 24.9, 25.0, 25.2}) {
    CAPTURE(titrant_cm3);
    BenchState state = filled_bench(spec);
    charge_flask(spec, state);
    state.ledger.transfer(Account::column, Account::flask, volume_quanta(titrant_cm3));
    double before = 0.0, last = 0.0, largest_swing = 0.0;
    for (int i = 0; i < 300; ++i) {
      exchange_gas(spec, state);
      state.tick += kGasTicks;
      const double ph = equilibrium_of(spec, flask_liquid(state.ledger)).ph;
      const bool turned_back = (ph - last) * (last - before) < 0.0;
      if (i > 20 && turned_back)
        largest_swing = std::max(largest_swing, std::min(std::fabs(ph - last), std::fabs(last - before)));
      before = last;
      last = ph;
    }
    CHECK(largest_swing < 1e-4);
    // Within what the open surface keeps away from it.
    CHECK_NEAR(last, equilibrium_of(spec, flask_liquid(state.ledger), Hydration::complete).ph, 0.02);
  }
}

// Source: common practice: near the second endpoint of a carbonate the gas has to be driven out, by boiling
// or long swirling, for its acid holds the pH down.
TEST_CASE("a carbonate's endpoint drifts as its gas leaves: swirling raises the pH") {
  BenchSpec spec = titration_bench();
  spec.titrant.substance = {"hydrochloric acid", {{"Cl-", -1}}, {}};
  spec.sample.substance = {"sodium carbonate", {{"Na+", 1, 2.0}}, {}};
  spec.sample.carbonate_per_mol = 1.0;
  spec.sample.true_mol_dm3 = spec.sample.label_mol_dm3 = 0.05;
  spec.titrant_per_analyte = 2.0;
  settle(spec);
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  CHECK_NEAR(equilibrium_of(spec, flask_liquid(state.ledger)).ph, 11.3, 0.2);
  state.ledger.transfer(Account::column, Account::flask, volume_quanta(24.9));
  run(spec, state, at_rest(), 30.0);
  const double at_once = equilibrium_of(spec, flask_liquid(state.ledger)).ph;
  run(spec, state, swirling(0.8), 900.0);
  const double later = equilibrium_of(spec, flask_liquid(state.ledger)).ph;
  MESSAGE("0.1 cm3 before the second endpoint: pH " << at_once << ", after 15 min of swirling " << later);
  CHECK(later > at_once + 0.3);
  CHECK(state.ledger.moved(Account::flask, Account::air).amount(Component::carbon_dioxide) > 0);
}

}  // namespace halfdrop

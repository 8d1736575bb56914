#include "physics/flask/gas_exchange.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/flask/contents.h"
#include "physics/flask/mixing.h"
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
  state.ledger.transfer(Account::column, Account::flask_rest, volume_quanta(equivalent_cm3 + past_cm3));
  const Parcel& rest = state.ledger.balance(Account::flask_rest);
  state.ledger.move(Account::flask_rest, Account::air,
                    Parcel::amount_of(Component::carbon_dioxide, rest.amount(Component::carbon_dioxide)));
  return state;
}

double tint(const BenchSpec& spec, const BenchState& state) {
  return visible_change(spec, flask_liquid(state.ledger));
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
  run(spec, state, swirling(1.0), 600.0);
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
  state.ledger.open(Account::flask_rest, boiled);
  CHECK_NEAR(equilibrium_of(spec, flask_liquid(state.ledger)).ph, 7.0, 0.01);
  run(spec, state, swirling(1.0), 3600.0);
  CHECK_NEAR(equilibrium_of(spec, flask_liquid(state.ledger)).ph, 5.60, 0.01);
}

TEST_CASE("carbon goes from air to water and between its forms, and none is lost") {
  const BenchSpec spec = titration_bench();
  BenchState state = titrated(spec, 0.05);
  const Parcel before = state.ledger.total();
  run(spec, state, swirling(0.6), 120.0);
  CHECK(state.ledger.total() == before);
  const Parcel taken_up = state.ledger.moved(Account::air, Account::flask_rest);
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
  BenchState state = lay_out(spec);
  Parcel liquid = Parcel::solution(50.0, Component::analyte, 0.1);
  liquid.dissolve(Component::carbonate, 0.05);
  state.ledger.open(Account::flask_rest, liquid);
  run(spec, state, at_rest(), 1.0);
  const Parcel& rest = state.ledger.balance(Account::flask_rest);
  CHECK(rest.amount(Component::carbonate) >= 0);
  CHECK(mol_dm3(rest, Component::carbon_dioxide) > 0.0499);  // more acid than carbonate: all of it, at once
  const Quanta dissolved = rest.amount(Component::carbon_dioxide);
  run(spec, state, swirling(1.0), 300.0);
  CHECK(state.ledger.balance(Account::flask_rest).amount(Component::carbon_dioxide) < dissolved / 2);
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
  state.ledger.transfer(Account::column, Account::flask_rest, volume_quanta(24.9));
  run(spec, state, at_rest(), 30.0);
  const double at_once = equilibrium_of(spec, flask_liquid(state.ledger)).ph;
  run(spec, state, swirling(1.0), 900.0);
  const double later = equilibrium_of(spec, flask_liquid(state.ledger)).ph;
  MESSAGE("0.1 cm3 before the second endpoint: pH " << at_once << ", after 15 min of swirling " << later);
  CHECK(later > at_once + 0.3);
  CHECK(state.ledger.moved(Account::flask_rest, Account::air).amount(Component::carbon_dioxide) > 0);
}

}  // namespace halfdrop

// One flask of carbonate and hydrogencarbonate with two indicators: phenolphthalein, then methyl orange.

#include <doctest/doctest.h>

#include <algorithm>

#include "physics/bench/deeds.h"
#include "physics/flask/appearance.h"
#include "physics/flask/contents.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

constexpr double kCarbonate_mol_dm3 = 0.060, kHydrogencarbonate_mol_dm3 = 0.020;
constexpr double kShare = kHydrogencarbonate_mol_dm3 / kCarbonate_mol_dm3;

Indicator methyl_orange() {
  Indicator indicator;
  indicator.name = "methyl orange";
  indicator.system = AcidSystem{1, {3.40, 0.0, 0.0}, 0};
  indicator.strong_charge = 1.0;
  indicator.bands = {AbsorptionBand{0, 507.0, 36.0, 40000.0}, AbsorptionBand{1, 464.0, 42.0, 27000.0}};
  indicator.stock_mol_dm3 = 0.00306;
  return indicator;
}

/// 0.060 carbonate and 0.020 hydrogencarbonate with 0.100 acid: 15.00 and 35.00 cm3 for 25.0 cm3.
BenchSpec carbonate_bench(bool two = true) {
  BenchSpec spec;
  spec.temperature_c = 25.0;
  spec.titrant.substance = {"hydrochloric acid", {{"Cl-", -1}}, {}};
  spec.sample.substance = {"sodium carbonate", {{"Na+", 1, 2.0 + kShare}}, {}};
  spec.sample.carbonate_per_mol = 1.0 + kShare;
  spec.sample.true_mol_dm3 = spec.sample.label_mol_dm3 = kCarbonate_mol_dm3;
  spec.indicator = phenolphthalein();
  spec.titrant_per_analyte = 1.0;
  spec.gains_colour = false;
  if (two) spec.then = SecondEndpoint{methyl_orange(), 2.0 + kShare, true};
  spec.flask.fineness = 0.25;
  settle(spec);
  return spec;
}

/// As it is once its carbonate has met the acid: so much of it is carbon dioxide.
Parcel stood(const BenchSpec& spec, Parcel liquid) {
  const Equilibrium there = equilibrium_of(spec, liquid, Hydration::complete);
  const double share =
      spec.settled.complete.form_fractions(static_cast<std::size_t>(Solute::carbonic), there)[0];
  Quanta& carbonate = liquid.amounts[static_cast<std::size_t>(Component::carbonate)];
  const auto dioxide = static_cast<Quanta>(share * static_cast<double>(carbonate));
  carbonate -= dioxide;
  liquid.amounts[static_cast<std::size_t>(Component::carbon_dioxide)] += dioxide;
  return liquid;
}

Parcel flask_at(const BenchSpec& spec, double titrant_cm3, int first_drops = 3, int second_drops = 3) {
  const double drop_cm3 = spec.indicator_drop_cm3;
  Parcel liquid = Parcel::solution(25.0, Component::analyte, spec.sample.true_mol_dm3) +
                  Parcel::solution(titrant_cm3, Component::titrant, spec.titrant.true_mol_dm3) +
                  Parcel::solution(drop_cm3 * first_drops, Component::indicator, 0.00314);
  if (second_drops > 0)
    liquid += Parcel::solution(drop_cm3 * second_drops, Component::second_indicator, 0.00306);
  return stood(spec, without_carbon_dioxide(spec, liquid));
}

Xyz seen(const BenchSpec& spec, const Parcel& liquid) {
  return colour_of(spec, liquid, 6.0, Backdrop::white_tile, Hydration::complete);
}

/// How far a colour leans from green to red, and from blue to yellow.
Lab lab(const BenchSpec& spec, const Parcel& liquid) { return to_lab(seen(spec, liquid)); }

}  // namespace

// Textbook: at the first equivalence all is hydrogencarbonate, pH = (pK1 + pK2) / 2 = 8.34 without activity;
// half-way on to the second [HCO3-] = [CO2] and pH = pK1 = 6.35. Activity takes 0.1 to 0.2 off each.
TEST_CASE("the first equivalence is the carbonate's one proton, whatever hydrogencarbonate stands beside") {
  const BenchSpec spec = carbonate_bench();
  CHECK_NEAR(equilibrium_of(spec, flask_at(spec, 15.0), Hydration::complete).ph, 8.34 - 0.1, 0.15);
  CHECK_NEAR(equilibrium_of(spec, flask_at(spec, 25.0), Hydration::complete).ph, 6.35 - 0.1, 0.1);
  CHECK_NEAR(excess_titrant_mol(spec, flask_at(spec, 15.0), Endpoint::first), 0.0, 1e-15);
  // Total = 2 P + hydrogencarbonate: 30.00 + 5.00 cm3.
  CHECK_NEAR(excess_titrant_mol(spec, flask_at(spec, 35.0), Endpoint::second), 0.0, 1e-15);
}

TEST_CASE("two indicators absorb together: neither lets through what the other takes") {
  const BenchSpec spec = carbonate_bench();
  const Parcel both = flask_at(spec, 5.0);
  const Xyz pink = seen(spec, flask_at(spec, 5.0, 3, 0)), yellow = seen(spec, flask_at(spec, 5.0, 0, 3)),
            mixed = seen(spec, both);
  CHECK(mixed.x < std::min(pink.x, yellow.x));
  CHECK(mixed.y < std::min(pink.y, yellow.y));
  CHECK(mixed.z < std::min(pink.z, yellow.z));
  CHECK(lab(spec, both).a > 10.0);                                           // red of the one
  CHECK(lab(spec, both).b > lab(spec, flask_at(spec, 5.0, 3, 0)).b + 10.0);  // yellow of the other
  // Beer and Lambert, term by term.
  const Equilibrium there = equilibrium_of(spec, both, Hydration::complete);
  const FormShares first = indicator_forms(spec, there),
                   second = indicator_forms(spec, there, Solute::second_indicator);
  Spectrum sum = absorbance_per_cm(spec.indicator, mol_dm3(both, Component::indicator), first);
  const Spectrum more =
      absorbance_per_cm(spec.then->indicator, mol_dm3(both, Component::second_indicator), second);
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] = 6.0 * (sum[i] + more[i]);
  const Xyz wanted = seen_through(white_tile(), sum);
  CHECK_NEAR(mixed.x, wanted.x, 1e-9);
  CHECK_NEAR(mixed.z, wanted.z, 1e-9);
}

TEST_CASE("pink goes at the first endpoint, yellow turns at the second; each by its own change") {
  const BenchSpec spec = carbonate_bench();
  const auto first = first_visible_change_cm3(spec, flask_at(spec, 15.0, 3, 0), Endpoint::first);
  const auto second = first_visible_change_cm3(spec, flask_at(spec, 35.0), Endpoint::second);
  REQUIRE(first);
  REQUIRE(second);
  // Soft both: within 0.5 cm3, and early (handbooks have phenolphthalein colourless from pH 8.2 down).
  CHECK_NEAR(*first, -0.2, 0.3);
  CHECK_NEAR(*second, -0.3, 0.3);
  CHECK(shows_endpoint(spec, flask_at(spec, 15.0 + *first + 0.02, 3, 0)));
  CHECK_FALSE(shows_endpoint(spec, flask_at(spec, 15.0 + *first - 0.1, 3, 0)));
  // The last trace of pink is no orange: the second change is not seen at once.
  CHECK_FALSE(shows_endpoint(spec, flask_at(spec, 15.0 + *first), Endpoint::second));
  CHECK_FALSE(shows_endpoint(spec, flask_at(spec, 30.0), Endpoint::second));
  CHECK(shows_endpoint(spec, flask_at(spec, 36.5), Endpoint::second));
}

TEST_CASE("the endpoint that is due follows the second indicator into the flask") {
  const BenchSpec spec = carbonate_bench();
  CHECK(endpoint_due(spec, flask_at(spec, 15.0, 3, 0)) == Endpoint::first);
  CHECK(endpoint_due(spec, flask_at(spec, 15.0)) == Endpoint::second);
  CHECK_FALSE(first_visible_change_cm3(spec, flask_at(spec, 35.0, 3, 0), Endpoint::second).has_value());
  const BenchSpec one = carbonate_bench(false);
  CHECK(endpoint_due(one, flask_at(one, 15.0, 3, 0)) == Endpoint::first);
  CHECK(one.last_endpoint() == Endpoint::first);
}

TEST_CASE("a bench that is made for two is the same as one for one, as long as only the first is in") {
  const BenchSpec one = carbonate_bench(false), two = carbonate_bench();
  for (const double cm3 : {0.0, 7.0, 14.5, 15.0, 16.0}) {
    CAPTURE(cm3);
    const Parcel liquid = flask_at(one, cm3, 3, 0);
    CHECK_NEAR(equilibrium_of(two, liquid).ph, equilibrium_of(one, liquid).ph, 1e-12);
    CHECK_NEAR(seen(two, liquid).y, seen(one, liquid).y, 1e-12);
  }
}

TEST_CASE("drops of a second indicator spread, get even, and none of them is lost") {
  const BenchSpec spec = carbonate_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  run(spec, state, swirling(0.8), 2.0);
  const Parcel all = state.ledger.total();
  for (int i = 0; i < 3; ++i) {
    REQUIRE_FALSE(check(spec, state, Deed::add_second_indicator).has_value());
    apply(spec, state, Deed::add_second_indicator);
  }
  const Quanta came = flask_liquid(state.ledger).amount(Component::second_indicator);
  CHECK_NEAR(static_cast<double>(came) * kAmountQuantum_mol, 3 * 0.04e-3 * 0.00306, 1e-15);
  for (int i = 0; i < 60; ++i) {
    run(spec, state, swirling(0.8), 0.5);
    CHECK(state.ledger.total().amount(Component::second_indicator) ==
          all.amount(Component::second_indicator));
    CHECK(total(state.flask.of(Source::second_indicator)) == state.flask.second_indicator.volume);
  }
  CHECK(state.flask.even());
  CHECK(flask_liquid(state.ledger).amount(Component::second_indicator) == came);
  const LiquidLook look = look_at(spec, state, 2);
  double amount = 0.0;
  for (const float form : look.second_mean) amount += static_cast<double>(form);
  CHECK_NEAR(amount, mol_dm3(flask_liquid(state.ledger), Component::second_indicator), 1e-10);
}

TEST_CASE("a streak of the second indicator is seen where it is, and nowhere else") {
  const BenchSpec spec = carbonate_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  run(spec, state, at_rest(), 0.2);
  apply(spec, state, Deed::add_second_indicator);
  run(spec, state, at_rest(), 0.3);
  const LiquidLook look = look_at(spec, state, 1);
  REQUIRE(look.second_forms.size() == look.forms.size());
  float most = 0.0F, least = 1.0F;
  for (const FormAmounts& forms : look.second_forms) {
    most = std::max(most, forms[1]);
    least = std::min(least, forms[1]);
  }
  CHECK(most > 10.0F * look.second_mean[1]);
  CHECK(least == 0.0F);
}

TEST_CASE("where there is no second indicator there is none to add") {
  const BenchSpec spec = titration_bench();
  const BenchState state = lay_out(spec);
  CHECK(check(spec, state, Deed::add_second_indicator) == Refusal::not_there);
  CHECK(state.ledger.balance(Account::second_indicator_bottle).empty());
}

}  // namespace halfdrop

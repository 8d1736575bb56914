#include "physics/flask/contents.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/units.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

/// 25 cm3 of 0.1 mol/dm3 ethanoic acid, drops of indicator, and titrant up to a volume past equivalence.
Parcel titrated(const BenchSpec& spec, double past_cm3, int drops = 3) {
  Parcel liquid = Parcel::solution(25.0, Component::analyte, spec.sample.true_mol_dm3);
  liquid +=
      Parcel::solution(spec.indicator_drop_cm3 * drops, Component::indicator, spec.indicator.stock_mol_dm3);
  liquid += Parcel::solution(25.0 + past_cm3, Component::titrant, spec.titrant.true_mol_dm3);
  return liquid;
}

}  // namespace

// Source: geometry, frustum pi h / 3 (R^2 + R r + r^2).
TEST_CASE("liquid stands in the flask as deep as a cone with a neck holds it") {
  const FlaskSpec flask;
  const double cone_cm = flask.height_cm - flask.neck_length_cm;
  for (double depth = 0.1; depth < cone_cm; depth += 0.3) {
    const double top = flask.base_radius_cm + (flask.neck_radius_cm - flask.base_radius_cm) * depth / cone_cm;
    const double volume =
        kPi * depth / 3.0 *
        (flask.base_radius_cm * flask.base_radius_cm + flask.base_radius_cm * top + top * top);
    CHECK_NEAR(liquid_depth_cm(flask, volume), depth, 1e-9);
  }
  const double in_cone_cm3 =
      kPi * cone_cm / 3.0 *
      (flask.base_radius_cm * flask.base_radius_cm + flask.base_radius_cm * flask.neck_radius_cm +
       flask.neck_radius_cm * flask.neck_radius_cm);
  const double neck_cm2 = kPi * flask.neck_radius_cm * flask.neck_radius_cm;
  CHECK_NEAR(liquid_depth_cm(flask, in_cone_cm3 + 2.0 * neck_cm2), cone_cm + 2.0, 1e-9);
  CHECK(liquid_depth_cm(flask, 1e4) == flask.height_cm);
  CHECK(liquid_depth_cm(flask, 0.0) == 0.0);
  CHECK(liquid_depth_cm(flask, flask.capacity_cm3) < flask.height_cm);
  CHECK_NEAR(sight_path_cm(flask, 60.0), 2.0 * liquid_depth_cm(flask, 60.0), 1e-12);
}

TEST_CASE("a straight flask is as deep as volume over area") {
  FlaskSpec flask;
  flask.base_radius_cm = flask.neck_radius_cm = 2.0;
  for (const double volume : {1.0, 20.0, 100.0})
    CHECK_NEAR(liquid_depth_cm(flask, volume), volume / (kPi * 4.0), 1e-9);
}

// Source: OpenStax Chemistry 2e, section 14.7, 25.00 cm3 of 0.100 M acetic acid with 0.100 M NaOH: pH 2.87 at
// 0, 4.74 at 12.5, 8.72 at 25 cm3, 11.96 at 30 cm3 (ideal, 25 C; with activity the weak acid's curve lies up
// to 0.15 lower about half way).
TEST_CASE("a parcel of flask liquid has the pH of its titration curve") {
  BenchSpec spec = titration_bench();
  spec.temperature_c = 25.0;
  settle(spec);
  CHECK_NEAR(equilibrium_of(spec, titrated(spec, -25.0, 0)).ph, 2.87, 0.03);
  CHECK_NEAR(equilibrium_of(spec, titrated(spec, -12.5, 0)).ph, 4.74, 0.15);
  CHECK_NEAR(equilibrium_of(spec, titrated(spec, 0.0, 0)).ph, 8.72, 0.12);
  CHECK_NEAR(equilibrium_of(spec, titrated(spec, 5.0, 0)).ph, 11.96, 0.12);
}

// Source: Davies at I = 0.0333 (half way, sodium ethanoate): pH = pKa + log gamma = 4.756 - 0.077 (derived).
TEST_CASE("half way the pH is the acid's pK, lowered by activity") {
  BenchSpec spec = titration_bench();
  spec.temperature_c = 25.0;
  settle(spec);
  CHECK_NEAR(equilibrium_of(spec, titrated(spec, -12.5, 0)).ph, 4.756 - 0.073, 0.01);
}

TEST_CASE("what a settled bench has ready gives the pH of its mixture, whatever neighbour it starts from") {
  const BenchSpec spec = titration_bench();
  for (const double past_cm3 : {-25.0, -10.0, -0.01, 0.01, 5.0}) {
    CAPTURE(past_cm3);
    Parcel liquid = titrated(spec, past_cm3);
    liquid.dissolve(Component::carbonate, 2e-4);
    liquid.dissolve(Component::carbon_dioxide, 1e-5);
    Mixture mixture;
    mixture.add(spec.titrant.substance, mol_dm3(liquid, Component::titrant));
    mixture.add(spec.sample.substance, mol_dm3(liquid, Component::analyte));
    add(mixture, spec.indicator, mol_dm3(liquid, Component::indicator));
    Mixture met = mixture;
    mixture.add(carbon_dioxide::carbonate_pair(), 2e-4);
    met.add(carbon_dioxide::carbonic_acid(), 2.1e-4);
    const double as_it_stands = solve(mixture, solver_options(spec)).ph;
    CHECK_NEAR(equilibrium_of(spec, liquid).ph, as_it_stands, 1e-9);
    CHECK_NEAR(equilibrium_of(spec, liquid, Hydration::complete).ph, solve(met, solver_options(spec)).ph,
               1e-9);
    for (const double other_cm3 : {-25.0, 0.0, 10.0}) {
      const Equilibrium near = equilibrium_of(spec, titrated(spec, other_cm3));
      CHECK_NEAR(equilibrium_of(spec, liquid, Hydration::as_it_stands, near).ph, as_it_stands, 1e-9);
    }
  }
}

TEST_CASE("no titrant, no change; no indicator, no endpoint") {
  const BenchSpec spec = titration_bench();
  CHECK(visible_change(spec, titrated(spec, -25.0)) == 0.0);
  CHECK(visible_change(spec, Parcel{}) == 0.0);
  CHECK_FALSE(first_visible_change_cm3(spec, titrated(spec, 0.0, 0)).has_value());
  CHECK_FALSE(first_visible_change_cm3(spec, Parcel{}).has_value());
}

TEST_CASE("excess titrant is what went in beyond the analyte") {
  const BenchSpec spec = titration_bench();
  CHECK_NEAR(excess_titrant_mol(spec, titrated(spec, 0.0)), 0.0, 1e-15);
  CHECK_NEAR(excess_titrant_mol(spec, titrated(spec, 0.5)), 0.5e-4, 1e-15);
  CHECK_NEAR(excess_titrant_mol(spec, titrated(spec, -1.0)), -1e-4, 1e-15);
}

// Our own reckoning, no published figure: well under half a drop from equivalence for 25 cm3 of 0.1 mol/dm3.
TEST_CASE("phenolphthalein first shows within a fifth of a drop of equivalence of ethanoic acid") {
  const BenchSpec spec = titration_bench();
  const Parcel flask = titrated(spec, 0.0);
  const auto change = first_visible_change_cm3(spec, flask);
  REQUIRE(change.has_value());
  MESSAGE("first visible change " << *change << " cm3 past equivalence, pH "
                                  << equilibrium_of(spec, titrated(spec, *change)).ph);
  CHECK(std::fabs(*change) < 0.01);
  CHECK(visible_change(spec, titrated(spec, *change - 0.01)) < kFirstVisibleChange);
  CHECK(visible_change(spec, titrated(spec, *change + 0.01)) > kFirstVisibleChange);
}

TEST_CASE("the change is where the mixed flask has just the stated colour difference") {
  const BenchSpec spec = titration_bench();
  Parcel flask = titrated(spec, 0.0);
  const double past_cm3 = first_visible_change_cm3(spec, flask).value_or(0.0);
  flask.amounts[0] += amount_quanta(past_cm3 * spec.breakdown_mol_dm3() / 1000.0);
  CHECK_NEAR(visible_change(spec, flask), kFirstVisibleChange, 1e-4);
}

// By hand: sodium hydroxide left over is what keeps phenolphthalein pink; it is gone below pH 8.2 (handbooks'
// range, from memory), 1.6e-6 mol/dm3 of OH-: 50 cm3 of that take 0.0008 cm3 of 0.1 mol/dm3. Pink half gone,
// pH 9.3, takes ten times as much.
TEST_CASE(
    "a colour that goes has its endpoint at its last sight, at equivalence; its first paling comes before") {
  BenchSpec spec = titration_bench();
  spec.titrant.substance = {"strong acid", {{"Cl-", -1, 1.0}}, {}};
  spec.sample.substance = {"strong base", {{"Na+", 1, 1.0}}, {}};
  settle(spec);
  const Parcel flask = titrated(spec, 0.0);
  const auto paling = first_visible_change_cm3(spec, flask);
  spec.gains_colour = false;
  const auto gone = first_visible_change_cm3(spec, flask);
  REQUIRE(paling.has_value());
  REQUIRE(gone.has_value());
  CHECK_NEAR(*gone, -0.001, 0.004);
  CHECK(*paling < *gone - 0.02);
  CHECK(*paling > -0.3);
  CHECK_FALSE(shows_endpoint(spec, titrated(spec, *gone - 0.01)));
  CHECK(shows_endpoint(spec, titrated(spec, *gone + 0.01)));
  CHECK_FALSE(shows_endpoint(spec, titrated(spec, -25.0)));
}

TEST_CASE("a colour that neither comes nor goes has no endpoint") {
  BenchSpec spec = titration_bench();
  for (const bool gains : {true, false}) {
    spec.gains_colour = gains;
    CHECK_FALSE(first_visible_change_cm3(spec, titrated(spec, 0.0, 0)).has_value());
    CHECK_FALSE(shows_endpoint(spec, titrated(spec, 0.0, 0)));
    CHECK_FALSE(shows_endpoint(spec, Parcel{}));
  }
}

TEST_CASE("more indicator shows sooner") {
  const BenchSpec spec = titration_bench();
  double before_cm3 = 1.0;
  for (const int drops : {1, 2, 4, 8}) {
    const auto change = first_visible_change_cm3(spec, titrated(spec, 0.0, drops));
    REQUIRE(change.has_value());
    CHECK(*change < before_cm3);
    before_cm3 = *change;
  }
}

TEST_CASE("a pale pink is easier to see on a white tile than on the bench") {
  const BenchSpec spec = titration_bench();
  const Parcel pink = titrated(spec, 0.0);
  const Parcel clear = titrated(spec, -5.0);
  const auto contrast = [&](Backdrop backdrop) {
    return ciede2000(to_lab(colour_of(spec, pink, 3.0, backdrop)),
                     to_lab(colour_of(spec, clear, 3.0, backdrop)));
  };
  CHECK(contrast(Backdrop::white_tile) > 1.3 * contrast(Backdrop::bare_bench));
}

}  // namespace halfdrop

#include "physics/chemistry/solver.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "physics/chemistry/water.h"
#include "physics/random.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

using namespace halfdrop;

namespace {

const Substance kSodiumHydroxide{"sodium hydroxide", {{"Na+", 1}}, {}};
const Substance kSodiumCarbonate{
    "sodium carbonate", {{"Na+", 1, 2.0}}, {{2, {6.351, 10.329}, 0, {9.15, 14.70}, {-371.0, -249.0}}}};
const Substance kSodiumHydrogencarbonate{
    "sodium hydrogencarbonate", {{"Na+", 1}}, {{2, {6.351, 10.329}, 0, {9.15, 14.70}, {-371.0, -249.0}}}};
const Substance kEthanoicAcid{"ethanoic acid", {}, {{1, {4.756}, 0, {-0.41}, {-142.0}}}};
const Substance kCitricAcid{"citric acid", {}, {{3, {3.128, 4.761, 6.396}, 0}}};
const AcidSystem kPhenolphthalein{2, {9.05, 9.50}, 0};

SolverOptions at(double temperature_c) {
  SolverOptions options;
  options.temperature_c = temperature_c;
  options.pkw = water::pkw(temperature_c);
  return options;
}

}  // namespace

TEST_CASE("a prepared solver gives what a mixture gives, at any temperature") {
  Random random{11};
  for (const double temperature_c : {5.0, 20.0, 25.0, 40.0}) {
    Solver solver(at(temperature_c));
    solver.add(kSodiumHydroxide);
    solver.add(kSodiumCarbonate);
    solver.add(kSodiumHydrogencarbonate);
    solver.add(kCitricAcid);
    const std::size_t indicator = solver.add(kPhenolphthalein);
    REQUIRE(solver.ingredients() == 5);
    for (int i = 0; i < 200; ++i) {
      const double c[] = {random.uniform(0.0, 0.5), random.uniform(0.0, 0.1), random.uniform(0.0, 0.1),
                          random.uniform(0.0, 0.2), random.uniform(0.0, 1e-4)};
      Mixture mixture;
      mixture.add(kSodiumHydroxide, c[0]);
      mixture.add(kSodiumCarbonate, c[1]);
      mixture.add(kSodiumHydrogencarbonate, c[2]);
      mixture.add(kCitricAcid, c[3]);
      mixture.add(kPhenolphthalein, c[4]);
      const Equilibrium expected = solve(mixture, at(temperature_c));
      const Equilibrium found = solver.solve(c);
      CHECK_NEAR(found.ph, expected.ph, 1e-12);
      CHECK_NEAR(found.ionic_strength_mol_dm3, expected.ionic_strength_mol_dm3, 1e-12);
      const FormShares shares = form_fractions(kPhenolphthalein, expected, at(temperature_c));
      CHECK_NEAR(solver.form_fractions(indicator, found)[2], shares[2], 1e-12);
    }
  }
}

TEST_CASE("from wherever a warm start begins it ends where a cold one does") {
  Random random{12};
  Solver solver(at(20.0));
  solver.add(kSodiumHydroxide);
  solver.add(kEthanoicAcid);
  solver.add(kCitricAcid);
  solver.add(kPhenolphthalein);
  Equilibrium neighbour;
  double worst = 0.0;
  const int times = test::rounds(2000, 100000);
  for (int i = 0; i < times; ++i) {
    const double c[] = {random.uniform() < 0.2 ? 0.0 : random.uniform(0.0, 0.3), random.uniform(0.0, 0.2),
                        random.uniform() < 0.5 ? 0.0 : random.uniform(0.0, 0.1), random.uniform(0.0, 1e-4)};
    const Equilibrium cold = solver.solve(c);
    neighbour = solver.solve(c, neighbour);  // as far away as chance will have it
    worst = std::max(worst, std::abs(neighbour.ph - cold.ph));
  }
  for (const double wild_h : {0.0, 1e-30, 1e9}) {
    const double c[] = {0.05, 0.1, 0.0, 1e-5};
    Equilibrium wild;
    wild.h_mol_dm3 = wild_h;
    wild.ionic_strength_mol_dm3 = wild_h;
    worst = std::max(worst, std::abs(solver.solve(c, wild).ph - solver.solve(c).ph));
  }
  MESSAGE("warm and cold differ by " << worst << " in pH at most");
  CHECK(worst < 1e-9);
}

// Source: OpenStax Chemistry 2e, section 14.7 (module m68809), table 14.4: two decimals, which differ from an
// exact solution by up to 0.015.
TEST_CASE("a whole titration from neighbour to neighbour meets the table") {
  SolverOptions textbook;
  textbook.ideal = true;
  textbook.pkw = 14.0;
  Solver solver(textbook);
  solver.add(kSodiumHydroxide);
  AcidSystem ethanoic;
  ethanoic.pk[0] = -std::log10(1.8e-5);
  solver.add(ethanoic);
  const double table[][2] = {{0.0, 2.87},   {5.0, 4.14},   {10.0, 4.57},  {15.0, 4.92},  {20.0, 5.35},
                             {22.0, 5.61},  {24.0, 6.13},  {24.5, 6.44},  {24.9, 7.14},  {25.0, 8.72},
                             {25.1, 10.30}, {25.5, 11.00}, {26.0, 11.29}, {28.0, 11.75}, {30.0, 11.96},
                             {35.0, 12.22}, {40.0, 12.36}, {45.0, 12.46}, {50.0, 12.52}};
  Equilibrium neighbour;
  for (const auto& [added_cm3, ph] : table) {
    const double total_cm3 = 25.0 + added_cm3;
    const double c[] = {0.100 * added_cm3 / total_cm3, 0.100 * 25.0 / total_cm3};
    neighbour = solver.solve(c, neighbour);
    CHECK_NEAR(neighbour.ph, ph, 0.015);
  }
}

TEST_CASE("more systems than usual are no more trouble") {
  Solver solver(at(25.0));
  Mixture mixture;
  std::vector<double> c;
  for (int i = 0; i < 20; ++i) {
    const AcidSystem acid{1, {1.0 + 0.6 * i, 0.0, 0.0}, i % 2};
    solver.add(acid);
    mixture.add(acid, 0.01);
    c.push_back(0.01);
  }
  CHECK_NEAR(solver.solve(c).ph, solve(mixture, at(25.0)).ph, 1e-12);
}

TEST_CASE("nothing dissolved is water") {
  Solver solver(at(20.0));
  CHECK_NEAR(solver.solve({}).ph, water::pkw(20.0) / 2.0, 1e-9);
  solver.add(kEthanoicAcid);
  const double none[] = {0.0};
  CHECK_NEAR(solver.solve(none).ph, water::pkw(20.0) / 2.0, 1e-9);
}

TEST_CASE("four boric acids in one borax are four") {
  AcidSystem boric{1, {9.237, 0.0, 0.0}, 0};
  Mixture one_by_one;
  one_by_one.add({"alkali", {{"Na+", 1, 2.0}}, {boric, boric, boric, boric}}, 0.01);
  boric.count = 4.0;
  Mixture counted;
  counted.add({"borax", {{"Na+", 1, 2.0}}, {boric}}, 0.01);
  CHECK_NEAR(solve(counted, at(25.0)).ph, solve(one_by_one, at(25.0)).ph, 1e-12);
}

// What the breakdown says of the endpoint: the indicator's share, carbon dioxide's, and what is past it.

#include "tests/game/marking/by_the_books.h"

namespace halfdrop {
namespace {

using namespace test;

/// The flask's mixed liquid on its tile against the same liquid without titrant, as someone looks who stirs
/// well.
double change_seen(const Run& run) {
  const Parcel liquid = flask_liquid(run.bench.ledger);
  Parcel before = liquid;
  before.amounts.at(static_cast<std::size_t>(Component::titrant)) = 0;
  const double path_cm = sight_path_cm(run.spec.flask, liquid.volume_cm3());
  const auto seen = [&](const Parcel& parcel) {
    return to_lab(colour_of(run.spec, parcel, path_cm, Backdrop::white_tile));
  };
  return ciede2000(seen(liquid), seen(before));
}

TEST_CASE(
    "who stops at the first change that is seen has no overshoot: past equivalence, all was the "
    "indicator's") {
  constexpr double kStep_cm3 = 0.001;
  Run run(1.00, 20.0);
  run.aliquot();
  run.books().transfer(Account::indicator_bottle, Account::flask, volume_quanta(0.12));
  run.read_initial(1.00);
  run.run_in(19.95);
  REQUIRE(change_seen(run) < kFirstVisibleChange);
  double ran_cm3 = 19.95;
  while (change_seen(run) < kFirstVisibleChange && ran_cm3 < 20.5) {
    run.run_in(kStep_cm3);
    ran_cm3 += kStep_cm3;
  }
  const TitreBreakdown found = run.finish(21.0, 21.0);
  CHECK_NEAR(found.of(Cause::overshoot), 0.5 * kStep_cm3, 0.5 * kStep_cm3);
  CHECK_NEAR(found.of(Cause::indicator_blank) + found.of(Cause::overshoot), ran_cm3 - 20.0, kExact_cm3);
  run.run_in(0.05);  // a drop more is overshoot
  const TitreBreakdown later = run.finish(21.0, 21.0);
  CHECK_NEAR(later.of(Cause::overshoot) - found.of(Cause::overshoot), 0.05, 1e-4);
}

TEST_CASE("carbonate in the flask puts the endpoint off by one equivalent, under its own name") {
  constexpr double kCarbonate_mol = 2e-5;
  const auto titrated = [](double carbonate_mol) {
    Run run(1.00, 20.0);
    run.aliquot();
    run.books().transfer(Account::indicator_bottle, Account::flask, volume_quanta(0.12));
    run.books().open(Account::flask, Parcel::amount_of(Component::carbonate, amount_quanta(carbonate_mol)));
    run.read_initial(1.00);
    run.run_in(20.0);
    return run.finish(21.0, 21.0);
  };
  const TitreBreakdown with = titrated(kCarbonate_mol), without = titrated(0.0);
  CHECK(without.of(Cause::carbon_dioxide) == 0.0);
  CHECK_NEAR(with.of(Cause::carbon_dioxide), kCarbonate_mol / 0.1 * 1000.0, 0.01);
  CHECK_NEAR(with.of(Cause::overshoot) - without.of(Cause::overshoot), -with.of(Cause::carbon_dioxide), 1e-3);
}

}  // namespace
}  // namespace halfdrop

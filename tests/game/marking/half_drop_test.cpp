// Half-drop work by hands and books: a part-drop grown at the tip, the tap shut, touched off, rinsed down.

#include <doctest/doctest.h>

#include <functional>

#include "physics/flask/liquid.h"
#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::held;
using test::in;
using test::RunPlan;

constexpr double kExact_cm3 = 1e-9;
constexpr double kParked_cm = 26.0;

double in_flask_cm3(const BenchHands& hands) { return flask_liquid(hands.bench().ledger).volume_cm3(); }

double in_burette_cm3(const BenchHands& hands) {
  return in(hands, Account::column) + in(hands, Account::wall_film) + in(hands, Account::jet);
}

/// A part-drop at the tip, and the tap shut; returns its size.
double hang_half_drop(BenchHands& hands) {
  hands.hold(held(&HandsChange::tap, hands.tap_for(0.5)));
  while (in(hands, Account::pendant_drop) < kHalfDrop_cm3) hands.session().tick();
  hands.hold(held(&HandsChange::tap, 0.0));
  hands.wait(5.0);
  return in(hands, Account::pendant_drop);
}

double water_cm3(const BenchHands& hands) {
  return hands.bench().ledger.moved(Account::wash_bottle, Account::flask).volume_cm3();
}

void rinse_down(BenchHands& hands) {
  hands.hold(held(&HandsChange::wash, 1.0));
  hands.wait(3.0);
  hands.hold(held(&HandsChange::wash, 0.0));
}

/// A run that stops just short of the endpoint; what is done then, and the final reading.
TitreRow run_with(const std::function<void(BenchHands&)>& last) {
  BenchHands hands(test::good_level(), 11);
  hands.protect();
  hands.act(Deed::lay_tile);
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.prepare_flask(2);
  hands.read("1/initial");
  hands.hold(held(&HandsChange::flask_x_cm, 0.0));
  RunPlan plan;
  plan.past_cm3 = -0.05;
  hands.titrate(plan);
  last(hands);
  hands.read("1/final");
  return test::titre(mark(hands.session().attempt()), "1");
}

const TitreRow& without_half_drop() {
  static const TitreRow row = run_with([](BenchHands&) {});
  return row;
}

/// What the meniscus had fallen by, whatever was written.
double unrounded_cm3(const TitreRow& row) { return *row.recorded_cm3 - row.breakdown->of(Cause::rounding); }

TEST_CASE("a half drop hangs still once the tap is shut, and nothing is added yet") {
  run_with([](BenchHands& hands) {
    const double flask_cm3 = in_flask_cm3(hands);
    const double hangs_cm3 = hang_half_drop(hands);
    CHECK_NEAR(hangs_cm3, kHalfDrop_cm3, 0.001);
    hands.wait(30.0);
    CHECK(in(hands, Account::pendant_drop) == hangs_cm3);
    CHECK(in_flask_cm3(hands) == flask_cm3);
  });
}

TEST_CASE("touched off on the flask's neck and rinsed down, a half drop is the flask's to the last bit") {
  double hung_cm3 = 0.0;
  const TitreRow row = run_with([&](BenchHands& hands) {
    const double flask_cm3 = in_flask_cm3(hands), burette_cm3 = in_burette_cm3(hands);
    REQUIRE(in(hands, Account::flask_wall) == 0.0);
    hung_cm3 = hang_half_drop(hands);
    hands.act(Deed::touch_off_drop);
    CHECK(in(hands, Account::pendant_drop) == 0.0);
    CHECK(in(hands, Account::flask_wall) == hung_cm3);
    const double water_before_cm3 = water_cm3(hands);
    rinse_down(hands);
    CHECK(in(hands, Account::flask_wall) == 0.0);
    const double gained_cm3 = in_flask_cm3(hands) - flask_cm3 - (water_cm3(hands) - water_before_cm3);
    CHECK_NEAR(gained_cm3, hung_cm3, kExact_cm3);
    CHECK_NEAR(burette_cm3 - in_burette_cm3(hands), hung_cm3, kExact_cm3);
  });
  CHECK_NEAR(hung_cm3, kHalfDrop_cm3, 0.001);
  CHECK_NEAR(unrounded_cm3(row) - unrounded_cm3(without_half_drop()), hung_cm3, 0.001);
  for (const Cause none : {Cause::hanging_drop, Cause::flask_wall, Cause::missed_flask}) {
    CAPTURE(cause_id(none));
    CHECK_NEAR(row.breakdown->of(none), 0.0, kExact_cm3);
  }
  CHECK_NEAR(row.breakdown->remainder_cm3, 0.0, kExact_cm3);
}

TEST_CASE("a half drop left on the neck is the flask wall's cause, as large as it is") {
  double hung_cm3 = 0.0;
  const TitreRow row = run_with([&](BenchHands& hands) {
    hung_cm3 = hang_half_drop(hands);
    hands.act(Deed::touch_off_drop);
  });
  CHECK_NEAR(row.breakdown->of(Cause::flask_wall), hung_cm3, 1e-6);
  CHECK_NEAR(row.breakdown->of(Cause::hanging_drop), 0.0, kExact_cm3);
}

TEST_CASE("a half drop touched off on the beaker is lost: the titre has it, under missed_flask") {
  double hung_cm3 = 0.0;
  const TitreRow row = run_with([&](BenchHands& hands) {
    const double flask_cm3 = in_flask_cm3(hands);
    hung_cm3 = hang_half_drop(hands);
    hands.hold(held(&HandsChange::flask_x_cm, kParked_cm));
    hands.act(Deed::put_beaker_under);
    hands.act(Deed::touch_off_drop);
    hands.act(Deed::take_beaker_away);
    hands.hold(held(&HandsChange::flask_x_cm, 0.0));
    CHECK(in_flask_cm3(hands) == flask_cm3);
  });
  CHECK_NEAR(unrounded_cm3(row) - unrounded_cm3(without_half_drop()), hung_cm3, 0.001);
  CHECK_NEAR(row.breakdown->of(Cause::missed_flask), hung_cm3, 1e-6);
  CHECK_NEAR(row.breakdown->of(Cause::hanging_drop), 0.0, kExact_cm3);
  CHECK_NEAR(row.breakdown->of(Cause::flask_wall), 0.0, kExact_cm3);
}

}  // namespace
}  // namespace halfdrop

#include "physics/flask/stirring.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "physics/flask/appearance.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

BenchSpec bench_of(double fineness) {
  BenchSpec spec = titration_bench();
  spec.flask.fineness = fineness;
  settle(spec);
  return spec;
}
BenchSpec whole_bench() { return bench_of(1.0); }
/// A coarser grid than a player's: a quarter of the columns and rows.
BenchSpec coarse_bench() { return bench_of(0.25); }

/// 5 g cm/s: 0.05 cm3 at 1 m/s.
void drop_in(const BenchSpec& spec, BenchState& state, double momentum_g_cm_s = 5.0) {
  const Parcel drop = state.ledger.balance(Account::column).share(volume_quanta(spec.settled.full_drop_cm3));
  let_drop_in(state, Account::column, drop, 0.0, momentum_g_cm_s);
}

/// An aliquot, titrant mixed in up to a share of equivalence, then one drop.
BenchState one_more_drop(const BenchSpec& spec, double share_of_equivalence, double swirl = 0.0) {
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  state.ledger.transfer(Account::titrant_bottle, Account::flask,
                        volume_quanta(share_of_equivalence * spec.pipette.true_cm3));
  run(spec, state, swirling(swirl), 4.0);
  drop_in(spec, state);
  return state;
}

Quanta titrant_in_cells(const FlaskLiquid& flask) {
  Quanta sum = flask.drops.liquid.volume;
  for (const Source stage : {Source::fresh, Source::meeting, Source::titrant}) sum += total(flask.of(stage));
  return sum;
}

/// Mean height of the titrant over the bottom, in parts of the liquid's depth.
double titrant_height(const BenchSpec& spec, const BenchState& state) {
  double sum = 0.0, lifted = 0.0;
  for (const Source stage : {Source::fresh, Source::meeting, Source::titrant}) {
    const CellField& field = state.flask.of(stage);
    for (std::size_t c = 0; c < field.size(); ++c) {
      sum += field[c];
      lifted += field[c] * (static_cast<double>(c / spec.flask.columns()) + 0.5);
    }
  }
  return lifted / sum / static_cast<double>(spec.flask.rows());
}

/// Largest difference of a cell's share of titrant from the mean, in parts of the mean.
double unevenness(const BenchSpec& spec, const BenchState& state) {
  if (state.flask.even()) return 0.0;
  const std::vector<double> volume = cell_quanta(spec, state.flask.laid_out);
  const double mean =
      static_cast<double>(titrant_in_cells(state.flask)) / static_cast<double>(state.flask.laid_out);
  double worst = 0.0;
  for (std::size_t i = 0; i < volume.size(); ++i) {
    double titrant = 0.0;
    for (const Source stage : {Source::fresh, Source::meeting, Source::titrant})
      if (!state.flask.of(stage).empty()) titrant += state.flask.of(stage)[i];
    worst = std::max(worst, std::fabs(titrant / volume[i] / mean - 1.0));
  }
  return worst;
}

double seconds_to_mix(const BenchSpec& spec, double swirl, double limit_s) {
  BenchState state = one_more_drop(spec, 0.5, swirl);
  const Tick start = state.tick;
  run(spec, state, swirling(swirl), 0.2);
  while (unevenness(spec, state) > 0.05 && seconds(state.tick - start) < limit_s)
    run(spec, state, swirling(swirl), 0.1);
  return seconds(state.tick - start);
}

/// CIEDE2000 between the flask before titrant and its most changed place.
double flash(const BenchSpec& spec, const BenchState& state) {
  const double path_cm = sight_path_cm(spec.flask, flask_liquid(state.ledger).volume_cm3());
  Parcel before = flask_liquid(state.ledger);
  before.amounts[static_cast<std::size_t>(Component::titrant)] = 0;
  const Lab colourless = to_lab(colour_of(spec, before, path_cm, Backdrop::white_tile));
  double most = 0.0;
  for (const FormAmounts& forms : look_at(spec, state, 1).forms)
    most =
        std::max(most, ciede2000(to_lab(colour_of(spec, forms, path_cm, Backdrop::white_tile)), colourless));
  return most;
}

}  // namespace

// Bench experience, no source: a swirled flask is mixed in one to five seconds, a still one streaks for
// minutes.
TEST_CASE("swirled well, 95 % of a drop is mixed in within seconds; left alone it takes minutes") {
  const BenchSpec spec = coarse_bench();
  const double hard_s = seconds_to_mix(spec, 1.0, 60.0);
  CHECK(hard_s >= 1.0);
  CHECK(hard_s <= 6.0);
  CHECK(seconds_to_mix(spec, 0.1, 60.0) > 20.0);
  CHECK(seconds_to_mix(spec, 0.0, 120.0) >= 120.0);
}

TEST_CASE("the harder the swirling, the faster the mixing") {
  const BenchSpec spec = coarse_bench();
  double before_s = 1000.0;
  for (const double swirl : {0.2, 0.4, 0.6, 0.8, 1.0}) {
    const double now_s = seconds_to_mix(spec, swirl, 120.0);
    CHECK(now_s < before_s);
    before_s = now_s;
  }
}

TEST_CASE("a drop flashes where it lands, early in a run and late, and swirling takes it away") {
  const BenchSpec spec = whole_bench();
  for (const double share : {0.1, 0.5, 0.9}) {
    BenchState state = one_more_drop(spec, share);
    run(spec, state, at_rest(), 0.1);
    CHECK(flash(spec, state) > (share > 0.8 ? 4.0 : 1.5) * kFirstVisibleChange);
    run(spec, state, swirling(0.8), 4.0);
    CHECK(flash(spec, state) < 0.2 * kFirstVisibleChange);
  }
}

TEST_CASE("near the endpoint a drop's colour lasts longer than early in the run") {
  const BenchSpec spec = whole_bench();
  const auto lasts_s = [&](double share) {
    BenchState state = one_more_drop(spec, share, 0.5);
    const Tick start = state.tick;
    run(spec, state, swirling(0.5), 2.0 * kStir_s);
    while (flash(spec, state) > kFirstVisibleChange && seconds(state.tick - start) < 20.0)
      run(spec, state, swirling(0.5), kStir_s);
    return seconds(state.tick - start);
  };
  const double early_s = lasts_s(0.1), late_s = lasts_s(0.99);
  CHECK(early_s < 0.5);
  CHECK(late_s > early_s + 0.3);
  CHECK(late_s < 10.0);
}

TEST_CASE("past the endpoint the pink stays") {
  const BenchSpec spec = coarse_bench();
  BenchState past = one_more_drop(spec, 1.004, 1.0);
  run(spec, past, swirling(0.8), 20.0);
  CHECK(past.flask.even());
  CHECK(flash(spec, past) > kFirstVisibleChange);
}

TEST_CASE("an hour of drops, washing and swirling leaves every quantum of titrant where it was booked") {
  const BenchSpec spec = coarse_bench();
  BenchState state = one_more_drop(spec, 0.3);
  const Parcel all = state.ledger.total();
  for (int minute = 0; minute < 60; ++minute) {
    Hands hands = swirling(minute % 3 == 0 ? 0.0 : 0.4);
    hands.wash = minute % 7 == 0 ? 0.01 : 0.0;
    drop_in(spec, state);
    run(spec, state, hands, 60.0);
    REQUIRE(titrant_in_cells(state.flask) == state.flask.titrant.volume + state.flask.drops.liquid.volume);
    REQUIRE(state.ledger.total() == all);
    REQUIRE(rest_of(state).volume >= 0);
  }
}

TEST_CASE("no cell is ever overfull, nor holds less than none of anything") {
  const BenchSpec spec = coarse_bench();
  BenchState state = one_more_drop(spec, 0.3);
  for (int i = 0; i < 300; ++i) {
    if (i % 20 == 0) drop_in(spec, state);
    run(spec, state, swirling(i % 50 < 25 ? 0.0 : 0.7), 0.1);
    if (state.flask.even()) continue;
    const std::vector<double> volume = cell_quanta(spec, state.flask.laid_out);
    for (std::size_t c = 0; c < volume.size(); ++c) {
      double sum = 0.0;
      for (const CellField& field : state.flask.field) {
        if (field.empty()) continue;
        REQUIRE(field[c] >= -64.0);
        sum += field[c];
      }
      REQUIRE(sum <= volume[c] + 64.0);
    }
  }
}

TEST_CASE("a still, even flask is left alone: nothing in it moves") {
  const BenchSpec spec = coarse_bench();
  BenchState state = filled_bench(spec);
  charge_flask(spec, state);
  run(spec, state, at_rest(), 10.0);
  CHECK(state.flask == FlaskLiquid{});
}

TEST_CASE("a copy of a stirred flask goes on as the original does") {
  const BenchSpec spec = coarse_bench();
  BenchState state = one_more_drop(spec, 0.5);
  run(spec, state, swirling(0.3), 0.4);
  BenchState copy = state;
  run(spec, state, swirling(0.5), 2.0);
  run(spec, copy, swirling(0.5), 2.0);
  CHECK(state == copy);
}

TEST_CASE("heavier titrant laid in gently sinks in a still flask, lighter stays up") {
  const auto height = [](double rise_kg_m3) {
    BenchSpec spec = coarse_bench();
    spec.titrant.substance.density_rise_kg_m3 = rise_kg_m3;
    spec.sample.substance.density_rise_kg_m3 = 0.0;
    BenchState state = filled_bench(spec);
    charge_flask(spec, state);
    drop_in(spec, state, 0.0);
    run(spec, state, at_rest(), 6.0);
    return titrant_height(spec, state);
  };
  CHECK(height(43.0) < height(0.0) - 0.05);
  CHECK(height(-43.0) > height(0.0) + 0.02);
}

TEST_CASE("a drop dives as far in a still flask at half the player's grid as at the whole") {
  const auto height = [](double fineness) {
    const BenchSpec spec = bench_of(fineness);
    BenchState state = one_more_drop(spec, 0.5);
    run(spec, state, at_rest(), 1.0);
    return titrant_height(spec, state);
  };
  const double at_once = 0.8, half = height(0.5), whole = height(1.0);
  CHECK(whole < at_once - 0.15);
  CHECK_NEAR(half, whole, 0.03);
}

}  // namespace halfdrop

// What the bench asks of its chemistry: the pH and the colour of a parcel, the first visible change, the
// steps of gas and fading, and a whole second of it.

#include <benchmark/benchmark.h>

#include <cstdlib>

#include "game/level/level.h"
#include "physics/bench/bench.h"
#include "physics/bench/flight.h"
#include "physics/burette/jet.h"
#include "physics/burette/plug.h"
#include "physics/burette/wall_film.h"
#include "physics/flask/contents.h"
#include "physics/flask/fading.h"
#include "physics/flask/gas_exchange.h"
#include "physics/flask/liquid.h"

namespace halfdrop {
namespace {

const BenchSpec& first_level() {
  static const BenchSpec spec = [] {
    const Result<Level> level = read_level(HALFDROP_SOURCE_FOLDER "/levels/01-spirit-vinegar.json");
    if (!level) std::abort();
    return bench_spec(*level, 1);
  }();
  return spec;
}

/// An aliquot with three drops of indicator and titrant up to a volume past equivalence, burette and jet
/// full.
BenchState titrated(const BenchSpec& spec, double past_cm3) {
  BenchState state = lay_out(spec);
  state.hands.flask_x_cm = 0.0;
  Ledger& ledger = state.ledger;
  ledger.transfer(Account::titrant_bottle, Account::column, volume_quanta(40.0));
  ledger.transfer(Account::titrant_bottle, Account::jet, volume_quanta(spec.burette.jet_cm3));
  ledger.transfer(Account::sample_bottle, Account::flask, volume_quanta(spec.pipette.true_cm3));
  ledger.transfer(Account::indicator_bottle, Account::flask, volume_quanta(3.0 * spec.indicator_drop_cm3));
  const double equivalent_cm3 =
      spec.titrant_per_analyte * spec.pipette.true_cm3 * spec.sample.true_mol_dm3 / spec.titrant.true_mol_dm3;
  ledger.transfer(Account::titrant_bottle, Account::flask, volume_quanta(equivalent_cm3 + past_cm3));
  return state;
}

void ph_of_a_parcel(benchmark::State& state) {
  const BenchSpec& spec = first_level();
  const Parcel liquid = flask_liquid(titrated(spec, -0.1).ledger);
  for (auto _ : state) benchmark::DoNotOptimize(equilibrium_of(spec, liquid));
}
BENCHMARK(ph_of_a_parcel);

void ph_of_a_parcel_near_another(benchmark::State& state) {
  const BenchSpec& spec = first_level();
  const Parcel liquid = flask_liquid(titrated(spec, -0.1).ledger);
  const Equilibrium near = equilibrium_of(spec, flask_liquid(titrated(spec, -0.2).ledger));
  for (auto _ : state) benchmark::DoNotOptimize(equilibrium_of(spec, liquid, Hydration::as_it_stands, near));
}
BENCHMARK(ph_of_a_parcel_near_another);

void colour_of_a_parcel(benchmark::State& state) {
  const BenchSpec& spec = first_level();
  const Parcel liquid = flask_liquid(titrated(spec, 0.02).ledger);
  for (auto _ : state) benchmark::DoNotOptimize(colour_of(spec, liquid, 3.0, Backdrop::white_tile));
}
BENCHMARK(colour_of_a_parcel);

void first_visible_change(benchmark::State& state) {
  const BenchSpec& spec = first_level();
  const Parcel liquid = flask_liquid(titrated(spec, 0.02).ledger);
  for (auto _ : state) benchmark::DoNotOptimize(first_visible_change_cm3(spec, liquid));
}
BENCHMARK(first_visible_change)->Unit(benchmark::kMicrosecond);

void gas_and_fading_for_a_step(benchmark::State& state) {
  const BenchSpec& spec = first_level();
  const BenchState start = titrated(spec, 0.02);
  BenchState bench = start;
  for (auto _ : state) {
    exchange_gas(spec, bench);
    fade(spec, bench);
    bench.tick += kGasTicks;
  }
  benchmark::DoNotOptimize(bench);
}
BENCHMARK(gas_and_fading_for_a_step)->Unit(benchmark::kMicrosecond);

/// About one drop a second, and a stream.
constexpr double kDrips = 0.47, kStreams = 1.0;

/// Swirled, drop by drop from a tap a little open.
void second_of_titration(benchmark::State& state) {
  const BenchSpec& spec = first_level();
  const BenchState start = titrated(spec, -5.0);
  Hands hands = start.hands;
  hands.tap = kDrips;
  hands.swirl = 0.7;
  BenchState bench = start;
  for (auto _ : state) {
    for (int tick = 0; tick < kTicksPerSecond; ++tick) step(spec, bench, hands);
    if (bench.tick < 60 * kTicksPerSecond) continue;
    state.PauseTiming();
    bench = start;
    state.ResumeTiming();
  }
  benchmark::DoNotOptimize(bench);
}
BENCHMARK(second_of_titration)->Unit(benchmark::kMillisecond);

/// Tap, jet, film, drops at the tip and in the air into a beaker, and nothing else; the column runs down.
void second_at_the_burette(benchmark::State& state, double tap) {
  const BenchSpec& spec = first_level();
  BenchState start = titrated(spec, -5.0);
  start.beaker_under = true;
  start.plug = start.hands.tap = tap;
  BenchState bench = start;
  for (auto _ : state) {
    for (int tick = 0; tick < kTicksPerSecond; ++tick) {
      const Quanta column_before = bench.ledger.balance(Account::column).volume;
      run_jet(spec, bench);
      seep(spec, bench);
      cling_and_run(spec, bench, column_before);
      fall(spec, bench);
      ++bench.tick;
    }
    if (bench.tick < 60 * kTicksPerSecond) continue;
    state.PauseTiming();
    bench = start;
    state.ResumeTiming();
  }
  benchmark::DoNotOptimize(bench);
}
BENCHMARK_CAPTURE(second_at_the_burette, drips, kDrips)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(second_at_the_burette, streams, kStreams)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace halfdrop

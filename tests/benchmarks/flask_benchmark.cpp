// The flask's flow, transport, equilibria and colours, each beside its bound: the time that this machine's
// memory needs for the fields that it reads and writes (`bound_us`, from a triad of arrays as large as all of
// them, in the same run; caches hold them), and how many times that it takes (`times_bound`). A whole second
// of it, and what became of the totals (`drift_quanta`: 0).

#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numeric>

#include "physics/flask/appearance.h"
#include "physics/flask/stirring.h"
#include "physics/flask/swirling.h"
#include "tests/physics/bench/at_the_bench.h"

namespace halfdrop::test {
namespace {

constexpr GridSize kGrid{96, 72};

BenchSpec whole_bench() {
  BenchSpec spec = titration_bench();
  spec.flask.fineness = 1.0;
  settle(spec);
  return spec;
}

Quanta all_in(const FlaskLiquid& flask) {
  Quanta sum = flask.drops.liquid.volume + flask.washings.liquid.volume + flask.tint.liquid.volume;
  for (const CellField& field : flask.field) sum += total(field);
  return sum;
}

/// What the cells hold beyond what was booked into them.
Quanta drift_of(const FlaskLiquid& flask) {
  return all_in(flask) - flask.titrant.volume - flask.water.volume - flask.indicator.volume -
         flask.drops.liquid.volume - flask.washings.liquid.volume - flask.tint.liquid.volume;
}

/// A drop lands near the end of a titration of 50 cm3.
struct Scene {
  BenchSpec spec = whole_bench();
  BenchState state = filled_bench(spec);

  explicit Scene(double swirl) {
    charge_flask(spec, state);
    state.ledger.transfer(Account::column, Account::flask, volume_quanta(24.9));
    run(spec, state, swirling(swirl), 5.0);
    drop();
    run(spec, state, swirling(swirl), 0.5);
  }
  void drop() {
    let_drop_in(state, Account::column, state.ledger.balance(Account::column).share(volume_quanta(0.05)), 0.0,
                5.0);
  }
};

const std::size_t kTriad = kGrid.cells() * 8;

void triad(std::vector<double>& to, const std::vector<double>& one, const std::vector<double>& other) {
  for (std::size_t i = 0; i < to.size(); ++i) to[i] = one[i] + 3.0 * other[i];
  benchmark::DoNotOptimize(to.data());
  benchmark::ClobberMemory();
}

/// Bytes a second of a triad, the best of many.
double bandwidth_per_s() {
  static const double best = [] {
    std::vector<double> to(kTriad), one(kTriad, 1.0), other(kTriad, 2.0);
    double least_s = 1.0;
    for (int i = 0; i < 2000; ++i) {
      const auto start = std::chrono::steady_clock::now();
      triad(to, one, other);
      const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
      least_s = std::min(least_s, took.count());
    }
    return static_cast<double>(3 * kTriad * sizeof(double)) / least_s;
  }();
  return best;
}

/// `bytes`: that one round must read and write.
void set_bound(benchmark::State& runs, std::size_t bytes) {
  const double bound_s = static_cast<double>(bytes) / bandwidth_per_s();
  runs.SetBytesProcessed(static_cast<std::int64_t>(runs.iterations() * bytes));
  runs.counters["bound_us"] = 1e6 * bound_s;
  runs.counters["times_bound"] = benchmark::Counter(
      bound_s, benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}

void memory_triad(benchmark::State& runs) {
  std::vector<double> to(kTriad), one(kTriad, 1.0), other(kTriad, 2.0);
  for (auto _ : runs) triad(to, one, other);
  set_bound(runs, 3 * kTriad * sizeof(double));
}
BENCHMARK(memory_triad)->Unit(benchmark::kMicrosecond);

void stream_function(benchmark::State& runs) {
  const FlowBox box = flow_box(FlaskSpec{}, 50.0);
  const StreamFunction solver(box.rows);
  std::vector<float> omega(box.nodes(), 1.0F), psi(box.nodes());
  for (auto _ : runs) {
    solver.solve(box, omega, psi);
    benchmark::DoNotOptimize(psi.data());
  }
  set_bound(runs, box.nodes() * 2 * sizeof(float));
}
BENCHMARK(stream_function)->Unit(benchmark::kMicrosecond);

void flow_step(benchmark::State& runs) {
  Scene scene(0.0);
  Flow flow(flow_box(scene.spec.flask, 50.0), scene.spec.settled.stream);
  FlowState state = scene.state.flask.flow;
  if (state.at_rest()) runs.SkipWithError("at rest");
  FlowStep step;
  flow.find_stream(state);
  step.duration_s = std::min(kStir_s, kMostLeaves / flow.courant_per_s(flow.stream()));
  for (auto _ : runs) {
    FlowState now = state;
    flow.find_stream(now);
    flow.step(step, now);
    benchmark::DoNotOptimize(now.vorticity.data());
  }
  set_bound(runs, flow.box().nodes() * 2 * 5 * sizeof(float));  // vorticity, stream, two speeds, the waves
}
BENCHMARK(flow_step)->Unit(benchmark::kMicrosecond);

void transport_step(benchmark::State& runs) {
  Scene scene(0.0);
  FlaskLiquid& flask = scene.state.flask;
  std::vector<CellField*> fields;
  for (CellField& field : flask.field)
    if (!field.empty()) fields.push_back(&field);
  Flow flow(flow_box(scene.spec.flask, 50.0), scene.spec.settled.stream);
  flow.find_stream(flask.flow);
  Fluxes fluxes(kGrid);
  const std::size_t stride = flow.box().stride();
  for (std::size_t j = 0; j < kGrid.rows; ++j) {
    for (std::size_t i = 0; i < kGrid.columns; ++i) {
      const auto at = [&](std::size_t x, std::size_t z) {
        return static_cast<double>(flow.stream()[z * stride + x]);
      };
      fluxes.across[j * kGrid.columns + i] = (at(i, j + 1) - at(i, j)) * kStir_s / kVolumeQuantum_cm3;
      fluxes.up[j * kGrid.columns + i] = (at(i, j) - at(i + 1, j)) * kStir_s / kVolumeQuantum_cm3;
    }
  }
  std::vector<double> volume = cell_quanta(scene.spec, flask.laid_out);
  const double part = std::min(1.0, kMostLeaves / most_that_leaves(kGrid, volume, fluxes));
  for (std::vector<double>* passes : {&fluxes.across, &fluxes.up})
    for (double& face : *passes) face *= part;
  runs.counters["leaves"] = most_that_leaves(kGrid, volume, fluxes);
  const Quanta before = all_in(flask);
  for (auto _ : runs) carry(kGrid, fluxes, volume, fields);
  runs.counters["fields"] = static_cast<double>(fields.size());
  runs.counters["drift_quanta"] = static_cast<double>(all_in(flask) - before);
  // Each of two sweeps reads and writes the fields and the volume, and reads its fluxes.
  set_bound(runs, 2 * kGrid.cells() * sizeof(double) * (2 * fields.size() + 2 + 1));
}
BENCHMARK(transport_step)->Unit(benchmark::kMicrosecond);

/// A second of one's flask in life, a drop in it; how many seconds pass in one.
void stirred_second(benchmark::State& runs) {
  const double swirl = static_cast<double>(runs.range(0)) / 10.0;
  Scene scene(swirl);
  scene.state.hands = swirling(swirl);
  const Parcel books = scene.state.ledger.total();
  for (auto _ : runs) {
    runs.PauseTiming();
    scene.drop();
    runs.ResumeTiming();
    for (Tick i = 0; i < kTicksPerSecond; ++i, ++scene.state.tick) stir(scene.spec, scene.state);
  }
  runs.counters["drift_quanta"] = static_cast<double>(drift_of(scene.state.flask));
  runs.counters["drift_of_books"] = scene.state.ledger.total() == books ? 0.0 : 1.0;
  // Flow step and one sweep each way of three fields, so many times a second.
  const std::size_t kNodes = kGrid.cells() * 2 * 5 * sizeof(float),
                    kFields = 2 * kGrid.cells() * sizeof(double) * 9;
  set_bound(runs, static_cast<std::size_t>(kTicksPerSecond / kStirTicks) * (kNodes + kFields));
  runs.counters["times_life"] = benchmark::Counter(1, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(stirred_second)->Arg(0)->Arg(3)->Arg(10)->Unit(benchmark::kMillisecond)->Iterations(20);

/// Equilibria of every cell: fields and volumes are read, four forms written.
void equilibrium_of_every_cell(benchmark::State& runs) {
  const Scene scene(0.8);
  for (auto _ : runs) benchmark::DoNotOptimize(look_at(scene.spec, scene.state, 1));
  set_bound(runs, kGrid.cells() * (4 * sizeof(double) + sizeof(FormAmounts)));
}
BENCHMARK(equilibrium_of_every_cell)->Unit(benchmark::kMicrosecond);

/// Colours of every cell, from its forms: those are read, three numbers written.
void colour_of_every_cell(benchmark::State& runs) {
  const Scene scene(0.8);
  const LiquidLook look = look_at(scene.spec, scene.state, 1);
  std::vector<Xyz> colours(look.forms.size());
  for (auto _ : runs) {
    for (std::size_t i = 0; i < colours.size(); ++i)
      colours[i] = colour_of(scene.spec, look.forms[i], 6.0, Backdrop::white_tile);
    benchmark::DoNotOptimize(colours.data());
  }
  set_bound(runs, kGrid.cells() * (sizeof(FormAmounts) + sizeof(Xyz)));
}
BENCHMARK(colour_of_every_cell)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace halfdrop::test

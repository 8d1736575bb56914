// The flask's flow and transport, each step beside what this machine's memory allows, and a whole second of
// it.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "physics/flask/appearance.h"
#include "physics/flask/stirring.h"
#include "physics/flask/swirling.h"
#include "physics/flask/tint_table.h"
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

/// Bytes a second that reading and writing arrays as large as the flask's goes at.
void memory(benchmark::State& runs) {
  std::vector<double> from(kGrid.cells() * 8, 1.0), to(from.size());
  for (auto _ : runs) {
    for (std::size_t i = 0; i < from.size(); ++i) to[i] += from[i];
    benchmark::DoNotOptimize(to.data());
    benchmark::ClobberMemory();
  }
  runs.SetBytesProcessed(static_cast<std::int64_t>(runs.iterations() * from.size() * 3 * sizeof(double)));
}
BENCHMARK(memory);

void stream_function(benchmark::State& runs) {
  const FlowBox box = flow_box(FlaskSpec{}, 50.0);
  const StreamFunction solver(box.rows);
  std::vector<float> omega(box.nodes(), 1.0F), psi(box.nodes());
  for (auto _ : runs) {
    solver.solve(box, omega, psi);
    benchmark::DoNotOptimize(psi.data());
  }
  runs.SetBytesProcessed(static_cast<std::int64_t>(runs.iterations() * box.nodes() * 2 * sizeof(float)));
}
BENCHMARK(stream_function)->Unit(benchmark::kMicrosecond);

void flow_step(benchmark::State& runs) {
  Scene scene(0.0);
  Flow flow(flow_box(scene.spec.flask, 50.0), scene.spec.settled.stream);
  FlowState state = scene.state.flask.flow;
  if (state.at_rest()) runs.SkipWithError("at rest");
  FlowStep step;
  for (auto _ : runs) {
    FlowState now = state;
    flow.find_stream(now);
    flow.step(step, now);
    benchmark::DoNotOptimize(now.vorticity.data());
  }
  runs.SetBytesProcessed(
      static_cast<std::int64_t>(runs.iterations() * flow.box().nodes() * 5 * 2 * sizeof(float)));
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
  runs.counters["leaves"] = most_that_leaves(kGrid, volume, fluxes);
  for (auto _ : runs) carry(kGrid, fluxes, volume, fields);
  runs.counters["fields"] = static_cast<double>(fields.size());
  runs.SetBytesProcessed(
      static_cast<std::int64_t>(runs.iterations() * kGrid.cells() * 8 * (2 * 2 * fields.size() + 2 + 4)));
}
BENCHMARK(transport_step)->Unit(benchmark::kMicrosecond);

/// A second of one's flask in life, a drop in it; how many seconds pass in one.
void stirred_second(benchmark::State& runs) {
  const double swirl = static_cast<double>(runs.range(0)) / 10.0;
  Scene scene(swirl);
  scene.state.hands = swirling(swirl);
  for (auto _ : runs) {
    runs.PauseTiming();
    scene.drop();
    runs.ResumeTiming();
    for (Tick i = 0; i < kTicksPerSecond; ++i, ++scene.state.tick) stir(scene.spec, scene.state);
  }
  // What the cells hold of titrant less what the books say went into them: not a quantum may be missing.
  const FlaskLiquid& flask = scene.state.flask;
  Quanta in_cells = 0;
  for (const Source stage : {Source::fresh, Source::meeting, Source::titrant})
    in_cells += total(flask.of(stage));
  runs.counters["drift_quanta"] = static_cast<double>(in_cells - flask.titrant.volume);
  runs.counters["times_life"] = benchmark::Counter(1, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(stirred_second)->Arg(0)->Arg(3)->Arg(10)->Unit(benchmark::kMillisecond)->Iterations(20);

/// The equilibrium of every cell, and of what is fresh in it. Bound: its five fields once.
void look_at_every_cell(benchmark::State& runs) {
  const Scene scene(0.8);
  for (auto _ : runs) benchmark::DoNotOptimize(look_at(scene.spec, scene.state, 1));
  runs.SetBytesProcessed(
      static_cast<std::int64_t>(runs.iterations() * kGrid.cells() * (kSources + 2) * sizeof(double)));
}
BENCHMARK(look_at_every_cell)->Unit(benchmark::kMicrosecond);

/// The colour of every cell, as the picture takes it from its table. Bound: the forms once.
void colour_of_every_cell(benchmark::State& runs) {
  const Scene scene(0.8);
  const LiquidLook look = look_at(scene.spec, scene.state, 1);
  const double path_cm = sight_path_cm(scene.spec.flask, flask_liquid(scene.state.ledger).volume_cm3());
  const TintTable tints(scene.spec.indicator, 1e-4 * path_cm, Backdrop::white_tile);
  for (auto _ : runs) {
    for (const FormAmounts& forms : look.forms) {
      FormShares shares{};
      double amount = 0.0;
      for (const float form : forms) amount += static_cast<double>(form);
      for (std::size_t form = 0; form < forms.size(); ++form)
        shares[form] = static_cast<double>(forms[form]) / amount;
      benchmark::DoNotOptimize(tints.code(tints.tint_of(shares), amount * path_cm));
    }
  }
  runs.SetBytesProcessed(
      static_cast<std::int64_t>(runs.iterations() * look.forms.size() * sizeof(FormAmounts)));
}
BENCHMARK(colour_of_every_cell)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace halfdrop::test

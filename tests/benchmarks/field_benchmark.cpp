// How long pH and colour take: one solution cold and warm, a field of 96 x 72 neighbouring cells by the
// solver and from the table. A field is the flask just after a drop: nearly one mixture, with a streak in it.

#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <vector>

#include "game/level/assets.h"
#include "physics/flask/field_table.h"

namespace halfdrop {
namespace {

constexpr int kWide = 96, kHigh = 72;

const Assets& shelf() {
  static const Assets assets = [] {
    Result<Assets> read = read_assets(HALFDROP_SOURCE_FOLDER);
    if (!read) std::abort();
    return *read;
  }();
  return assets;
}

TitrationSpec vinegar() {
  TitrationSpec spec;
  spec.flask = shelf().substances.at("ethanoic acid").value;
  spec.burette = shelf().substances.at("sodium hydroxide").value;
  spec.indicator = shelf().indicators.at("phenolphthalein").value;
  return spec;
}

/// 24.9 cm3 of titrant mixed in, and a streak of fresh titrant that fades to all sides.
std::vector<CellMix> field() {
  std::vector<CellMix> cells;
  for (int y = 0; y < kHigh; ++y) {
    for (int x = 0; x < kWide; ++x) {
      const double dx = (x - 40) / 12.0, dy = (y - 50) / 18.0;
      const double fresh = 0.2 * std::exp(-dx * dx - dy * dy);
      const double titrant = 0.498 * (1.0 - fresh) + fresh;
      cells.push_back({titrant, 1.0 - titrant, 1.0 + 0.05 * y});
    }
  }
  return cells;
}

Solver solver_of(const TitrationSpec& spec) {
  Solver solver(spec.solver);
  solver.add(spec.flask);
  solver.add(spec.burette);
  solver.add(substance_of(*spec.indicator));
  return solver;
}

std::array<double, 3> concentrations(const CellMix& cell) {
  return {0.1 * cell.flask, 0.1 * cell.burette, 1.5e-5 * cell.flask};
}

void cold_solve(benchmark::State& state) {
  const Solver solver = solver_of(vinegar());
  double step = 0.0;
  for (auto _ : state) {
    step = step < 0.9 ? step + 0.01 : 0.01;
    benchmark::DoNotOptimize(solver.solve(concentrations({step, 1.0 - step, 1.0})));
  }
}
BENCHMARK(cold_solve);

void warm_solve(benchmark::State& state) {
  const Solver solver = solver_of(vinegar());
  const std::vector<CellMix> cells = field();
  Equilibrium near = solver.solve(concentrations(cells[0]));
  std::size_t i = 0;
  for (auto _ : state) {
    near = solver.solve(concentrations(cells[i]), near);
    benchmark::DoNotOptimize(near);
    i = i + 1 < cells.size() ? i + 1 : 0;
  }
}
BENCHMARK(warm_solve);

void field_by_solver(benchmark::State& state) {
  const Solver solver = solver_of(vinegar());
  const std::vector<CellMix> cells = field();
  Equilibrium near = solver.solve(concentrations(cells[0]));
  for (auto _ : state) {
    for (const CellMix& cell : cells) near = solver.solve(concentrations(cell), near);
    benchmark::DoNotOptimize(near);
  }
}
BENCHMARK(field_by_solver)->Unit(benchmark::kMillisecond);

void colour_of_field_by_spectra(benchmark::State& state) {
  const TitrationSpec spec = vinegar();
  const Solver solver = solver_of(spec);
  const std::vector<CellMix> cells = field();
  const auto forms = solver.form_fractions(2, solver.solve(concentrations(cells[0])));
  const IndicatorSpectra spectra(*spec.indicator);
  const Spectrum tile = white_tile();
  for (auto _ : state) {
    for (const CellMix& cell : cells) {
      const Spectrum absorbance = spectra.absorbance(1.5e-5 * cell.flask * cell.path_cm, forms);
      benchmark::DoNotOptimize(to_rgb(seen_through(tile, absorbance)));
    }
  }
}
BENCHMARK(colour_of_field_by_spectra)->Unit(benchmark::kMillisecond);

void field_from_table(benchmark::State& state) {
  FieldTable table(vinegar(), Backdrop::white_tile);
  const std::vector<CellMix> cells = field();
  std::vector<CellLook> looks(cells.size());
  table.look(cells, looks);
  for (auto _ : state) {
    table.look(cells, looks);
    benchmark::DoNotOptimize(looks.data());
  }
}
BENCHMARK(field_from_table)->Unit(benchmark::kMillisecond);

void field_from_new_table(benchmark::State& state) {
  const TitrationSpec spec = vinegar();
  const std::vector<CellMix> cells = field();
  std::vector<CellLook> looks(cells.size());
  for (auto _ : state) {
    FieldTable table(spec, Backdrop::white_tile);
    table.look(cells, looks);
    benchmark::DoNotOptimize(looks.data());
  }
}
BENCHMARK(field_from_new_table)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace halfdrop

BENCHMARK_MAIN();

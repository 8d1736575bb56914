#include "physics/bench/bench_spec.h"

#include <cmath>

#include "physics/bench/pipette_by_hand.h"
#include "physics/bench/preparation.h"
#include "physics/burette/drop_shape.h"
#include "physics/burette/meniscus_shape.h"
#include "physics/burette/pendant_drop.h"
#include "physics/burette/wall_film.h"
#include "physics/chemistry/carbon_dioxide.h"
#include "physics/chemistry/water.h"
#include "physics/flask/grid.h"

namespace halfdrop {

namespace {

Solver solver_of(const BenchSpec& spec, const SolverOptions& options, const AcidSystem& carbonic) {
  Solver solver(options);
  solver.add(spec.titrant.substance);
  solver.add(spec.sample.substance);
  solver.add(substance_of(spec.indicator));
  solver.add(carbonic);
  if (spec.then) solver.add(substance_of(spec.then->indicator));
  return solver;
}

void settle_tip(BenchSpec& spec) {
  Settled& settled = spec.settled;
  const LiquidFlow& liquid = settled.liquid;
  settled.capillary_mm = std::sqrt(liquid.surface_tension_n_m / (liquid.density_kg_m3 * kGravity_m_s2)) * 1e3;
  settled.full_drop_cm3 =
      drop_volume_cm3(spec.tap.tip_outer_mm, liquid.density_kg_m3, liquid.surface_tension_n_m);
  settled.largest_drop_cm3 = largest_drop_cm3({0.5 * spec.tap.tip_outer_mm, settled.capillary_mm});
  settled.necking = static_cast<Tick>(std::round(necking_s(settled.full_drop_cm3, liquid) * kTicksPerSecond));
  settled.stream_from_cm3_s = stream_from_cm3_s({spec.tap.jet_bore_mm, spec.tap.tip_outer_mm}, liquid);
}

void settle_sight(BenchSpec& spec, double bore_mm, const Meniscus& meniscus) {
  const BuretteSpec& burette = spec.burette;
  SightGeometry& sight = spec.settled.sight;
  sight.eye_distance_mm = spec.eye_distance_mm;
  sight.outer_mm = burette.outer_half_width_mm;
  sight.bore_mm = bore_mm;
  sight.mm_per_cm3 = burette.scale_length_mm / burette.nominal_cm3;
  sight.rim_mm = burette.above_zero_cm3 * sight.mm_per_cm3;
  sight.liquid_index = water::refractive_index(spec.temperature_c);
  sight.meniscus = meniscus;
}

/// A tube with one line as the eye meets it, the line in the place of the zero mark.
struct LineOnGlass {
  double cm3_mm, wall_mm, above_line_mm;
};
void settle_line_sight(const BenchSpec& spec, const LineOnGlass& glass, SightGeometry& sight) {
  const MeniscusBore bore{std::sqrt(1000.0 * glass.cm3_mm / kPi), spec.settled.capillary_mm};
  sight.eye_distance_mm = spec.eye_distance_mm;
  sight.bore_mm = bore.radius_mm;
  sight.outer_mm = bore.radius_mm + glass.wall_mm;
  sight.mm_per_cm3 = 1.0 / glass.cm3_mm;
  sight.rim_mm = glass.above_line_mm;
  sight.liquid_index = water::refractive_index(spec.temperature_c);
  sight.meniscus = Meniscus(meniscus_outline(bore));
}

void settle_lines(BenchSpec& spec) {
  settle_line_sight(spec, {kStem_cm3_mm, kStemWall_mm, kStemAboveLine_mm}, spec.settled.stem_sight);
  if (spec.preparation.asked)
    settle_line_sight(spec, {kNeck_cm3_mm, kNeckWall_mm, kNeckAboveLine_mm}, spec.settled.neck_sight);
}

void settle_tube(BenchSpec& spec) {
  BuretteSpec& burette = spec.burette;
  const double radius_mm = std::sqrt(1000.0 * burette.nominal_cm3 / (kPi * burette.scale_length_mm));
  const MeniscusBore bore{radius_mm, spec.settled.capillary_mm};
  const std::vector<MeniscusPoint> outline = meniscus_outline(bore);
  settle_sight(spec, radius_mm, Meniscus(outline));
  settle_lines(spec);
  constexpr double kLandauLevich = 1.3376;  // wall_film.h
  burette.film_per_capillarity_mm = kLandauLevich * bore.capillary_mm / wall_curvature(bore);
  settle_film(spec);
}

void settle_chemistry(BenchSpec& spec) {
  SolverOptions options;
  options.temperature_c = spec.temperature_c;
  options.pkw = water::pkw(spec.temperature_c);
  spec.settled.as_it_stands = solver_of(spec, options, carbon_dioxide::carbonate_pair());
  spec.settled.complete = solver_of(spec, options, carbon_dioxide::carbonic_acid());
  spec.settled.kinetics = carbon_dioxide::Kinetics(options);
  spec.settled.spectra = IndicatorSpectra(spec.indicator);
  if (spec.then) spec.settled.second_spectra = IndicatorSpectra(spec.then->indicator);
  spec.settled.air_over_water = carbon_dioxide::air_over_water(spec.temperature_c);
  spec.settled.co2_diffusion_m2_s = carbon_dioxide::diffusion_m2_s(spec.temperature_c);
  spec.settled.saturated_co2_mol_dm3 = spec.air ? carbon_dioxide::saturated_mol_dm3(spec.temperature_c) : 0.0;
}

}  // namespace

void settle(BenchSpec& spec) {
  LiquidFlow& liquid = spec.settled.liquid;
  liquid.density_kg_m3 = water::density_kg_m3(spec.temperature_c);
  liquid.viscosity_pa_s = water::viscosity_pa_s(spec.temperature_c);
  liquid.surface_tension_n_m = water::surface_tension_n_m(spec.temperature_c);
  settle_chemistry(spec);
  settle_tip(spec);
  spec.settled.jet = settle_jet(spec.burette, spec.tap, liquid);
  settle_tube(spec);
  spec.settled.column_share = column_shares(spec.flask.columns());
  spec.settled.stream = StreamFunction(spec.flask.rows());
}

}  // namespace halfdrop

#include "physics/bench/bench_spec.h"

#include "physics/burette/pendant_drop.h"
#include "physics/chemistry/carbon_dioxide.h"
#include "physics/chemistry/water.h"

namespace halfdrop {

void settle(BenchSpec& spec) {
  LiquidFlow& liquid = spec.settled.liquid;
  liquid.density_kg_m3 = water::density_kg_m3(spec.temperature_c);
  liquid.viscosity_pa_s = water::viscosity_pa_s(spec.temperature_c);
  liquid.surface_tension_n_m = water::surface_tension_n_m(spec.temperature_c);
  spec.settled.full_drop_cm3 =
      drop_volume_cm3(spec.tap.tip_outer_mm, liquid.density_kg_m3, liquid.surface_tension_n_m);
  spec.settled.saturated_co2_mol_dm3 = spec.air ? carbon_dioxide::saturated_mol_dm3(spec.temperature_c) : 0.0;
}

}  // namespace halfdrop

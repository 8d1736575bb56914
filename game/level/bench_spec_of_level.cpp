#include <cmath>
#include <vector>

#include "game/level/drill_of_level.h"
#include "game/level/level.h"
#include "game/level/standard_to_make.h"
#include "physics/chemistry/carbon_dioxide.h"
#include "physics/random.h"

namespace halfdrop {
namespace {

/// The jet ends this far below the flask's rim: just inside the neck (common practice).
constexpr double kTipInsideNeck_cm = 0.8;
constexpr double kStepsPer_mol_dm3 = 1e4;

/// Every multiple of 0.0001 mol/dm3 from low to high is as likely as any other.
/// `which`: 0 the unknown, 1 the second one.
double draw_strength(const Range& range, std::uint64_t seed, std::uint64_t which = 0) {
  Random random = Random::stream(seed, which, Purpose::unknown);
  const double first = std::round(range.low * kStepsPer_mol_dm3);
  const double choices = std::round(range.high * kStepsPer_mol_dm3) - first + 1.0;
  return (first + std::floor(random.uniform() * choices)) / kStepsPer_mol_dm3;
}

/// Half of the class limit for each shape of error. Both vary by at most their size between any two marks, so
/// that no volume between marks is off by more than the limit.
void draw_scale(BuretteSpec& burette, double tolerance_cm3, std::uint64_t seed) {
  Random random = Random::stream(seed, 0, Purpose::burette_glass);
  burette.scale_linear_cm3 = random.uniform(-tolerance_cm3 / 2.0, tolerance_cm3 / 2.0);
  burette.scale_bow_cm3 = random.uniform(-tolerance_cm3 / 2.0, tolerance_cm3 / 2.0);
}

PipetteSpec draw_pipette(double nominal_cm3, double tolerance_cm3, std::uint64_t seed) {
  Random random = Random::stream(seed, 0, Purpose::pipette_glass);
  return {nominal_cm3, nominal_cm3 + random.uniform(-tolerance_cm3, tolerance_cm3), 0.0, false};
}

/// A carbonate's own carbon is kept with that of the air: it too turns into gas, and slowly.
void take_out_carbonate(BottleSpec& bottle) {
  std::vector<AcidSystem>& systems = bottle.substance.systems;
  for (const AcidSystem& system : systems) {
    if (carbon_dioxide::is_carbonic(system)) bottle.carbonate_per_mol += system.count;
  }
  std::erase_if(systems, carbon_dioxide::is_carbonic);
}

double drawn_strength(const LiquidSpec& liquid, bool unknown, std::uint64_t seed) {
  return unknown ? draw_strength(liquid.unknown_mol_dm3, seed) : liquid.label_mol_dm3;
}

/// The sample's bottle, and what a second endpoint's ratio comes to with it.
void draw_sample(const Level& level, std::uint64_t seed, BenchSpec& spec) {
  const double sample_mol_dm3 = drawn_strength(level.sample, level.unknown_in_flask, seed);
  double second_mol_dm3 = 0.0;
  if (level.then) {
    if (level.then->beside) second_mol_dm3 = draw_strength(level.then->beside->mol_dm3, seed, 1);
    spec.then = SecondEndpoint{level.then->indicator_data,
                               ratio_at_second(*level.then, sample_mol_dm3, second_mol_dm3),
                               level.then->endpoint_gains_colour};
  }
  spec.sample = bottle_of(sample_holding(level, second_mol_dm3), level.sample_substance, sample_mol_dm3);
}

}  // namespace

LiquidSpec sample_holding(const Level& level, double second_mol_dm3) {
  LiquidSpec sample = level.sample;
  if (level.then && level.then->beside)
    sample.also.push_back({level.then->beside->substance, second_mol_dm3});
  return sample;
}

double ratio_at_second(const TitratedOn& then, double sample_mol_dm3, double second_mol_dm3) {
  return then.ratio + (then.beside ? then.beside->ratio * second_mol_dm3 / sample_mol_dm3 : 0.0);
}

BottleSpec bottle_of(const LiquidSpec& liquid, const Substance& substance, double mol_dm3) {
  BottleSpec bottle;
  bottle.substance = with_beside(substance, mol_dm3, liquid.also);
  // The titre breakdown measures against the label; where there is none it measures against the truth.
  bottle.true_mol_dm3 = bottle.label_mol_dm3 = mol_dm3;
  bottle.carbonate_mol_dm3 = liquid.carbonate_mol_dm3;
  take_out_carbonate(bottle);
  return bottle;
}

int drill_readings(const Drill& drill) {
  if (drill.kind == DrillKind::read_meniscus) return drill.pictures;
  return drill.kind == DrillKind::fill_without_air ? 1 : 0;
}

std::string_view drill_name(DrillKind kind) {
  switch (kind) {
    case DrillKind::read_meniscus:
      return "read the meniscus";
    case DrillKind::deliver_exactly:
      return "deliver exactly";
    case DrillKind::fill_without_air:
      return "fill without air";
    case DrillKind::know_apparatus:
      return "know your apparatus";
  }
  return "";
}

BenchSpec drawn_bench_spec(const Level& level, std::uint64_t seed) {
  BenchSpec spec;
  spec.temperature_c = level.temperature_c;
  spec.titrant = bottle_of(level.titrant, level.titrant_substance,
                           drawn_strength(level.titrant, !level.unknown_in_flask, seed));
  draw_sample(level, seed, spec);
  spec.indicator = level.indicator_data;
  spec.titrant_per_analyte = level.ratio;
  spec.unknown_in_flask = level.unknown_in_flask;
  spec.gains_colour = level.endpoint_gains_colour;
  spec.burette = level.burette;
  draw_scale(spec.burette, level.burette_tolerance_cm3, seed);
  spec.tap = level.tap;
  spec.pipette = draw_pipette(level.aliquot_cm3, level.pipette_tolerance_cm3, seed);
  spec.pipette.wet_cm3 = level.pipette.wet_cm3;
  spec.pipette.by_hand = level.pipette.by_hand;
  spec.flask = level.flask;
  spec.tip_above_bench_cm = level.flask.height_cm - kTipInsideNeck_cm;
  spec.preparation = drawn_preparation(level, seed);
  if (level.drill) spec.drill = drill_spec(level, seed);
  return spec;
}

BenchSpec bench_spec(const Level& level, std::uint64_t seed) {
  BenchSpec spec = drawn_bench_spec(level, seed);
  settle(spec);
  return spec;
}

tl::expected<double, std::string> level_value(const Level& level, const std::string& name) {
  if (name == "aliquot_cm3") return level.aliquot_cm3;
  if (name == "ratio") return level.ratio;
  if (name == "dilution") return level.dilution;
  if (const auto value = standard_value(level, name)) return *value;
  for (const Constant& constant : level.constants) {
    if (constant.name == name) return constant.value;
  }
  const bool titrant = name == "titrant_mol_dm3";
  if (!titrant && name != "sample_mol_dm3") return tl::unexpected("unknown value \"" + name + "\"");
  if (titrant != level.unknown_in_flask) return tl::unexpected("\"" + name + "\" is the unknown");
  return titrant ? level.titrant.label_mol_dm3 : level.sample.label_mol_dm3;
}

}  // namespace halfdrop

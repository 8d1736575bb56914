#include "game/level/standard_to_make.h"

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

#include "physics/bench/preparation.h"
#include "physics/random.h"

namespace halfdrop {
namespace {

constexpr std::string_view kKey = "weighed_standard";
constexpr NumberRange kMass_g{0.05, 20.0};
/// Of an empty weighing bottle (our own bench).
constexpr double kLightestBottle_g = 18.0, kHeaviestBottle_g = 24.0, kSomeBottle_g = 20.0;

void read_mass(Fields& standard, Range& mass_g, FaultList& faults) {
  constexpr std::string_view kMassKey = "mass_g";
  const Json* const pair = standard.array(kMassKey, 2, 2);
  if (pair == nullptr) return;
  double bounds[2] = {0.0, 0.0};
  for (std::size_t i = 0; i < 2; ++i) {
    if (!check_number((*pair)[i], kMass_g, pointer_to(standard.place_of(kMassKey), i), faults)) return;
    bounds[i] = (*pair)[i].get<double>();
  }
  if (bounds[0] >= bounds[1])
    standard.fault(kMassKey, "expected [least, most], found the least not below the most");
  mass_g = {bounds[0], bounds[1]};
}

double middle_g(const StandardToMake& standard) {
  return std::round(500.0 * (standard.mass_g.low + standard.mass_g.high)) / 1000.0;
}

bool names(const CalculationStep& step, const std::string& value) {
  for (const auto* factors : {&step.multiply, &step.divide, &step.plus, &step.minus}) {
    if (std::find(factors->begin(), factors->end(), Factor(value)) != factors->end()) return true;
  }
  return false;
}

}  // namespace

void read_standard(Fields& fields, Level& level, FaultList& faults) {
  const Json* const entry = fields.object(kKey, Need::optional);
  if (entry == nullptr) return;
  StandardToMake made;
  Fields standard(*entry, fields.place_of(kKey), faults);
  read_mass(standard, made.mass_g, faults);
  standard.number("flask_cm3", made.flask_cm3, {100.0, 1000.0}, Need::optional);
  standard.number("flask_tolerance_cm3", made.flask_tolerance_cm3, {0.0, 1.0}, Need::optional);
  standard.number("balance_linearity_g", made.balance_linearity_g, {0.0, 0.01}, Need::optional);
  standard.finish();
  level.standard = made;
}

void check_standard(const Level& level, const std::string& place, FaultList& faults) {
  if (!level.standard) return;
  const LiquidSpec& known = standard_of(level);
  const std::string bottle = place + (level.unknown_in_flask ? "/titrant" : "/sample");
  const double least = standard_mol_dm3(level, level.standard->mass_g.low),
               most = standard_mol_dm3(level, level.standard->mass_g.high);
  if (known.label_mol_dm3 < least || known.label_mol_dm3 > most)
    faults.add(bottle + "/mol_dm3", "expected what a mass within mass_g makes in the flask, " +
                                        number_text(std::round(least * 1e5) / 1e5) + " to " +
                                        number_text(std::round(most * 1e5) / 1e5) + ", found " +
                                        number_text(known.label_mol_dm3));
  const char* const strength = level.unknown_in_flask ? "titrant_mol_dm3" : "sample_mol_dm3";
  for (std::size_t i = 0; i < level.calculation.size(); ++i) {
    if (names(level.calculation[i], strength))
      faults.add(pointer_to(place + "/calculation", i),
                 std::string("no label says ") + strength +
                     " of a standard that is weighed out: work it out from the weighings");
  }
  if (!known.also.empty() || known.carbonate_mol_dm3 > 0.0)
    faults.add(bottle,
               "a standard that is weighed out has nothing beside it: leave also and "
               "carbonate_mol_dm3 out");
}

const LiquidSpec& standard_of(const Level& level) {
  return level.unknown_in_flask ? level.titrant : level.sample;
}

double standard_mol_dm3(const Level& level, double mass_g) {
  const Substance& substance = level.unknown_in_flask ? level.titrant_substance : level.sample_substance;
  return 1000.0 * mass_g / (substance.molar_mass_g_mol * level.standard->flask_cm3);
}

PreparationSpec drawn_preparation(const Level& level, std::uint64_t seed) {
  PreparationSpec spec;
  if (!level.standard) return spec;
  const StandardToMake& standard = *level.standard;
  spec.asked = true;
  spec.molar_mass_g_mol =
      (level.unknown_in_flask ? level.titrant_substance : level.sample_substance).molar_mass_g_mol;
  Random bottle = Random::stream(seed, 0, Purpose::weighing_bottle);
  spec.bottle_g = bottle.uniform(kLightestBottle_g, kHeaviestBottle_g);
  spec.solid_g = standard.mass_g.high * bottle.uniform(1.2, 1.5);
  Random glass = Random::stream(seed, 0, Purpose::volumetric_glass);
  spec.flask_cm3 = standard.flask_cm3;
  spec.true_flask_cm3 =
      standard.flask_cm3 + glass.uniform(-standard.flask_tolerance_cm3, standard.flask_tolerance_cm3);
  Random balance = Random::stream(seed, 0, Purpose::balance);
  for (double load_g = 0.0; load_g <= kBalanceCapacity_g; load_g += kBalanceStep_g)
    spec.balance_error_g.push_back(
        balance.uniform(-standard.balance_linearity_g, standard.balance_linearity_g));
  spec.lumps_seed = seed;
  return spec;
}

std::optional<double> standard_value(const Level& level, const std::string& name) {
  if (!level.standard) return std::nullopt;
  const StandardToMake& standard = *level.standard;
  if (name == "volumetric_flask_cm3") return standard.flask_cm3;
  if (name == kBottleBefore) return standard.before_g.value_or(kSomeBottle_g + middle_g(standard));
  if (name == kBottleAfter) return standard.after_g.value_or(kSomeBottle_g);
  return std::nullopt;
}

Level as_weighed(Level level, double before_g, double after_g) {
  level.standard->before_g = before_g;
  level.standard->after_g = after_g;
  (level.unknown_in_flask ? level.titrant : level.sample).label_mol_dm3 =
      standard_mol_dm3(level, before_g - after_g);
  return level;
}

}  // namespace halfdrop

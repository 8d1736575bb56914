#include "game/level/ionic_strength.h"

#include <cmath>

#include "game/level/fields.h"
#include "physics/chemistry/activity.h"
#include "physics/chemistry/water.h"

namespace halfdrop {
namespace {

double strongest_mol_dm3(const LiquidSpec& liquid, bool unknown) {
  return unknown ? liquid.unknown_mol_dm3.high : liquid.label_mol_dm3;
}

double ionic_strength_mol_dm3(const Mixture& mixture, double temperature_c) {
  SolverOptions options;
  options.temperature_c = temperature_c;
  options.pkw = water::pkw(temperature_c);
  return solve(mixture, options).ionic_strength_mol_dm3;
}

}  // namespace

std::optional<std::string> beyond_davies(double ionic_strength_mol_dm3) {
  const double rounded_mol_dm3 = std::round(ionic_strength_mol_dm3 * 1e3) / 1e3;
  if (rounded_mol_dm3 <= kDaviesLimit_mol_dm3) return std::nullopt;
  return "the ionic strength comes to " + number_text(rounded_mol_dm3) +
         " mol/dm3; the Davies equation is good to about " + number_text(kDaviesLimit_mol_dm3) +
         ", so that the pH is only rough";
}

std::vector<Fault> warnings_of_ionic_strength(const Level& level, const std::string& file) {
  const double titrant_mol_dm3 = strongest_mol_dm3(level.titrant, !level.unknown_in_flask);
  const double sample_mol_dm3 = strongest_mol_dm3(level.sample, level.unknown_in_flask);
  std::vector<Fault> warnings;
  const auto look_at = [&](const Mixture& mixture, const std::string& place) {
    const auto words = beyond_davies(ionic_strength_mol_dm3(mixture, level.temperature_c));
    if (words) warnings.push_back({FaultKind::invalid, file, place, *words});
  };
  const Substance titrant = with_beside(level.titrant_substance, titrant_mol_dm3, level.titrant.also);
  const double second_mol_dm3 = level.then && level.then->beside ? level.then->beside->mol_dm3.high : 0.0;
  const Substance sample =
      with_beside(level.sample_substance, sample_mol_dm3, sample_holding(level, second_mol_dm3).also);
  const auto bottle = [&](const Substance& substance, double mol_dm3, bool unknown, const std::string& key) {
    Mixture mixture;
    mixture.add(substance, mol_dm3);
    look_at(mixture, key + (unknown ? "/unknown_mol_dm3/1" : "/mol_dm3"));
  };
  bottle(titrant, titrant_mol_dm3, !level.unknown_in_flask, "/titrant");
  bottle(sample, sample_mol_dm3, level.unknown_in_flask, "/sample");
  if (!warnings.empty()) return warnings;
  const double titrant_per_aliquot = level.ratio * sample_mol_dm3 / titrant_mol_dm3;
  Mixture flask;
  flask.add(titrant, level.ratio * sample_mol_dm3 / (1.0 + titrant_per_aliquot));
  flask.add(sample, sample_mol_dm3 / (1.0 + titrant_per_aliquot));
  look_at(flask, "/ratio");
  return warnings;
}

}  // namespace halfdrop

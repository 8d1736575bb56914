#include "game/desk/titration_curve.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "game/desk/plain_number.h"
#include "game/level/assets.h"
#include "game/level/ionic_strength.h"
#include "game/level/level.h"
#include "game/level/shelf_names.h"
#include "physics/chemistry/water.h"
#include "physics/flask/contents.h"

namespace halfdrop::desk {

namespace {

using Wrong = tl::unexpected<CurveFault>;
using Checked = tl::expected<void, CurveFault>;

Wrong wrong(std::string option, std::string message) {
  return Wrong(CurveFault{std::move(option), std::move(message), {}});
}

constexpr NumberWanted kStrength = {0.0, 20.0, "a number from 0 to 20", "mol/dm3"};
constexpr NumberWanted kAliquot = {0.001, 1000.0, "a number from 0.001 to 1000", "cm3"};
constexpr NumberWanted kVolume = {0.0, 10000.0, "a number from 0 to 10000", "cm3"};
constexpr NumberWanted kVolumes = {0.0, 10000.0, "numbers from 0 to 10000", "cm3"};
constexpr NumberWanted kStep = {1e-6, 10000.0, "a number from 0.000001 to 10000", "cm3"};
constexpr NumberWanted kConstants = {-10.0, 20.0, "numbers from -10 to 20"};
constexpr NumberWanted kWater = {5.0, 30.0, "a number from 5 to 30"};
constexpr NumberWanted kTemperature = {5.0, 40.0, "a number from 5 to 40", "degrees C"};
constexpr double kMostDrops = 1000.0;
constexpr std::size_t kMostRows = 1'000'000;

/// Leaves `into` as it is when the option was not given.
Checked read(std::string_view option, const std::string& text, const NumberWanted& wanted, double& into) {
  if (text.empty()) return {};
  const auto value = plain_number(text, wanted);
  if (!value) return wrong(std::string(option), value.error());
  into = *value;
  return {};
}

tl::expected<std::vector<double>, CurveFault> read_list(std::string_view option, const std::string& text,
                                                        const NumberWanted& wanted) {
  return plain_numbers(text, wanted).map_error([&](const std::string& message) {
    return CurveFault{std::string(option), message, {}};
  });
}

/// NAME MOL_DM3
Checked read_solution(std::string_view option, const std::vector<std::string>& words, const Assets& assets,
                      Substance& substance, double& mol_dm3) {
  if (words.size() != 2) return wrong(std::string(option), "expected a substance and its mol/dm3");
  const Shelved<Substance>* const found = find_on(assets.substances, words[0]);
  if (found == nullptr) return wrong(std::string(option), unknown_on(assets.substances, words[0]));
  substance = found->value;
  if (auto ok = read(option, words[1], kStrength, mol_dm3); !ok) return ok;
  if (can_be_made(substance, mol_dm3)) return {};
  return wrong(std::string(option), strongest_in_words(substance) + ", found \"" + words[1] + "\"");
}

Checked read_aliquot(const CurveOptions& options, TitrationSpec& curve) {
  if (options.aliquot.empty()) return wrong("--aliquot", "expected the cm3 in the flask");
  if (auto ok = read("--aliquot", options.aliquot, kAliquot, curve.aliquot_cm3); !ok) return ok;
  if (curve.aliquot_cm3 <= curve.glass.capacity_cm3) return {};
  return wrong("--aliquot", "the flask holds " + number_text(curve.glass.capacity_cm3) + " cm3, found \"" +
                                options.aliquot + "\"");
}

Checked read_drops(const CurveOptions& options, TitrationSpec& curve) {
  double drops = curve.drops;
  const NumberWanted wanted = {0.0, kMostDrops, "a whole number from 0 to 1000", "drops"};
  if (auto ok = read("--drops", options.drops, wanted, drops); !ok) return ok;
  if (drops != std::floor(drops))
    return wrong("--drops", "expected a whole number from 0 to 1000 drops, found \"" + options.drops + "\"");
  curve.drops = static_cast<int>(drops);
  if (!options.drops.empty() && !curve.indicator) return wrong("--drops", "needs an indicator");
  return {};
}

/// A neutral acid may become one of other steps; what brings strong ions or is a base keeps its number of
/// steps.
Checked replace_constants(const std::string& text, Curve& curve) {
  if (text.empty()) return {};
  Substance& substance = curve.titration.flask;
  const auto constants = read_list("--pka", text, kConstants);
  if (!constants) return tl::unexpected(constants.error());
  if (substance.systems.size() != 1) {
    return wrong("--pka", "\"" + substance.name + "\" has no constants that could be replaced");
  }
  AcidSystem& system = substance.systems.front();
  const bool neutral_acid = substance.strong_charge() == 0.0 && system.protonated_charge == 0;
  const std::size_t steps = constants->size();
  if (neutral_acid ? steps > 3 : steps != static_cast<std::size_t>(system.steps)) {
    return wrong("--pka", "expected " + (neutral_acid ? "1 to 3" : std::to_string(system.steps)) +
                              (!neutral_acid && system.steps == 1 ? " constant" : " constants") + " of \"" +
                              substance.name + "\", found " + std::to_string(steps));
  }
  if (std::adjacent_find(constants->begin(), constants->end(), std::greater_equal()) != constants->end()) {
    return wrong("--pka", "expected ascending constants, no two of them equal, found \"" + text + "\"");
  }
  curve.given_pka = *constants;
  curve.own_steps = system.steps;
  system.steps = static_cast<int>(steps);
  std::copy(constants->begin(), constants->end(), system.pk.begin());
  system.heat_kj_mol = system.heat_capacity_j_k_mol = {};  // given for the temperature of the curve
  return {};
}

Checked read_solver(const CurveOptions& options, SolverOptions& solver) {
  solver.ideal = options.ideal;
  if (auto ok = read("--temperature", options.temperature, kTemperature, solver.temperature_c); !ok)
    return ok;
  solver.pkw = water::pkw(solver.temperature_c);
  return read("--pkw", options.pkw, kWater, solver.pkw);
}

/// Steps of a decimal fraction land on the decimal fraction.
double tidy(double value) { return std::round(value * 1e9) / 1e9; }

Checked read_volumes(const CurveOptions& options, Curve& curve) {
  if (!options.at.empty()) {
    if (!options.to.empty() || !options.step.empty()) return wrong("--at", "excludes --to and --step");
    auto volumes = read_list("--at", options.at, kVolumes);
    if (!volumes) return tl::unexpected(volumes.error());
    curve.volumes_cm3 = *volumes;
    return {};
  }
  double to = 50.0, step = 0.5;
  if (auto ok = read("--to", options.to, kVolume, to); !ok) return ok;
  if (auto ok = read("--step", options.step, kStep, step); !ok) return ok;
  const double steps = std::floor(to / step + 1e-9);
  if (steps >= static_cast<double>(kMostRows)) return wrong("--step", "would make more than a million rows");
  for (double i = 0.0; i <= steps; ++i) curve.volumes_cm3.push_back(tidy(i * step));
  return {};
}

Checked from_level(const CurveOptions& options, Curve& of_level) {
  TitrationSpec& curve = of_level.titration;
  for (const auto& [option, given] : {std::pair{"--flask", !options.flask.empty()},
                                      {"--burette", !options.burette.empty()},
                                      {"--aliquot", !options.aliquot.empty()},
                                      {"--indicator", !options.indicator.empty()}}) {
    if (given) return wrong(option, "a level brings its own; give one or the other");
  }
  const Result<Level> level = read_level(options.level);
  if (!level) return Wrong(CurveFault{{}, {}, level.error()});
  if (level->drill) {
    const Fault no_curve{FaultKind::invalid, options.level, "/drill", "a drill has no titration curve"};
    return Wrong(CurveFault{{}, {}, {no_curve}});
  }
  const auto strength = [](const LiquidSpec& liquid, bool unknown) {
    return unknown ? 0.5 * (liquid.unknown_mol_dm3.low + liquid.unknown_mol_dm3.high) : liquid.label_mol_dm3;
  };
  curve.flask = level->sample_substance;
  curve.burette = level->titrant_substance;
  curve.beside_flask = level->sample.also;
  curve.beside_burette = level->titrant.also;
  curve.flask_mol_dm3 = strength(level->sample, level->unknown_in_flask);
  curve.burette_mol_dm3 = strength(level->titrant, !level->unknown_in_flask);
  curve.aliquot_cm3 = level->aliquot_cm3;
  curve.indicator = level->indicator_data;
  curve.glass = level->flask;
  if (options.temperature.empty()) of_level.unheeded_c = level->temperature_c;
  return {};
}

Checked from_shelf(const CurveOptions& options, TitrationSpec& curve) {
  const Result<Assets> assets = read_assets(data_folder());
  if (!assets) return Wrong(CurveFault{{}, {}, assets.error()});
  if (options.flask.empty() && options.burette.empty())
    return wrong("curve", "expected a LEVEL, or --flask, --aliquot and --burette");
  if (auto ok = read_solution("--flask", options.flask, *assets, curve.flask, curve.flask_mol_dm3); !ok)
    return ok;
  if (auto ok = read_solution("--burette", options.burette, *assets, curve.burette, curve.burette_mol_dm3);
      !ok) {
    return ok;
  }
  if (auto ok = read_aliquot(options, curve); !ok) return ok;
  if (options.indicator.empty()) return {};
  const Shelved<Indicator>* const found = find_on(assets->indicators, options.indicator);
  if (found == nullptr) return wrong("--indicator", unknown_on(assets->indicators, options.indicator));
  curve.indicator = found->value;
  return {};
}

}  // namespace

tl::expected<Curve, CurveFault> curve_from(const CurveOptions& options) {
  Curve curve;
  curve.of_level = !options.level.empty();
  Checked ok = options.level.empty() ? from_shelf(options, curve.titration) : from_level(options, curve);
  if (ok) ok = read_drops(options, curve.titration);
  if (ok) ok = replace_constants(options.pka, curve);
  if (ok) ok = read_solver(options, curve.titration.solver);
  if (ok) ok = read_volumes(options, curve);
  if (!ok) return tl::unexpected(ok.error());
  return curve;
}

CurvePoint point_at(const Curve& curve, const Titration& titration, double volume_cm3) {
  const Equilibrium there = titration.at(volume_cm3);
  const double ionic_strength = there.ionic_strength_mol_dm3;
  if (!curve.titration.indicator) return {there.ph, ionic_strength, "#ffffff"};
  return {there.ph, ionic_strength,
          to_hex(to_rgb(titration.colour(volume_cm3, there, Backdrop::white_tile)))};
}

std::vector<std::string> warnings_about(const Curve& curve, const Titration& titration) {
  const TitrationSpec& spec = curve.titration;
  std::vector<std::string> warnings;
  if (const int steps = spec.flask.systems.empty() ? 0 : spec.flask.systems.front().steps;
      !curve.given_pka.empty() && steps != curve.own_steps) {
    warnings.push_back("--pka gives " + spec.flask.name + " " + std::to_string(steps) +
                       " protons to lose; it has " + std::to_string(curve.own_steps));
  }
  if (const double curve_c = spec.solver.temperature_c; curve.unheeded_c.value_or(curve_c) != curve_c) {
    warnings.push_back("the curve is for " + number_text(curve_c) +
                       " degrees C, but the level's bench is at " + number_text(*curve.unheeded_c) +
                       ": give --temperature " + number_text(*curve.unheeded_c) + " for its own");
  }
  double most_cm3 = 0.0;
  for (const double volume_cm3 : curve.volumes_cm3) most_cm3 = std::max(most_cm3, volume_cm3);
  for (const Equivalence& at : titration.equivalences()) most_cm3 = std::max(most_cm3, at.volume_cm3);
  const double full_cm3 = spec.glass.capacity_cm3 - titration.total_cm3(0.0);
  if (spec.indicator && most_cm3 > full_cm3 + 1e-9) {
    warnings.push_back(
        std::string(curve.of_level ? "the level's flask" : "the flask that colours are seen in") + " holds " +
        number_text(spec.glass.capacity_cm3) + " cm3 and is full at " + number_text(tidy(full_cm3)) +
        " cm3 from the burette: colours past that are those of its depth, at most to the rim");
  }
  return warnings;
}

StrongestSolution::StrongestSolution(const Titration& titration) {
  see(0.0, titration.at(0.0).ionic_strength_mol_dm3);
  for (const Equivalence& at : titration.equivalences())
    see(at.volume_cm3, titration.at(at.volume_cm3).ionic_strength_mol_dm3);
}

void StrongestSolution::see(double volume_cm3, double ionic_strength_mol_dm3) {
  if (ionic_strength_mol_dm3 <= ionic_strength_mol_dm3_) return;
  volume_cm3_ = volume_cm3;
  ionic_strength_mol_dm3_ = ionic_strength_mol_dm3;
}

std::optional<std::string> StrongestSolution::warning() const {
  auto words = beyond_davies(ionic_strength_mol_dm3_);
  if (words) words->insert(0, "at " + number_text(tidy(volume_cm3_)) + " cm3 ");
  return words;
}

}  // namespace halfdrop::desk

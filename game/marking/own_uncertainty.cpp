#include "game/marking/own_uncertainty.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include "game/level/say.h"
#include "game/level/standard_to_make.h"
#include "game/marking/calculation.h"
#include "game/marking/statistics.h"
#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

/// Places of the inputs; the last two only where something was diluted. Where the standard was weighed, the
/// first weighing stands in the place of its label, and the second and the flask behind all others.
enum Input : std::size_t {
  titre,
  scale,
  readings,
  endpoint,
  titrant_warmth,
  pipette,
  sample_warmth,
  standard,
  dilution_flask,
  dilution_pipette
};

/// Half a unit of the last figure in which the label prints the strength; nothing where it does not.
std::optional<double> printed_within(std::string_view label, double strength) {
  constexpr std::string_view kFigures = "0123456789.,";
  for (std::size_t at = label.find_first_of(kFigures); at < label.size();) {
    const std::size_t end = std::min(label.find_first_not_of(kFigures, at), label.size());
    std::string_view figure = label.substr(at, end - at);
    while (figure.ends_with('.') || figure.ends_with(',')) figure.remove_suffix(1);
    const std::optional<double> value = number_written(figure);
    if (value && std::fabs(*value - strength) <= 1e-9 * strength) return half_unit_written(figure);
    at = label.find_first_of(kFigures, end);
  }
  return std::nullopt;
}

double standard_within(const LiquidSpec& liquid, const AssumedOfTheBench& assumed) {
  constexpr double kFourthFigure = 3.0;
  if (assumed.standard_within_mol_dm3) return *assumed.standard_within_mol_dm3;
  const std::optional<double> printed = printed_within(liquid.label, liquid.label_mol_dm3);
  return printed ? *printed
                 : 0.5 * std::pow(10.0, std::floor(std::log10(liquid.label_mol_dm3)) - kFourthFigure);
}

Quantity even(std::string name, std::string unit, double value, double within) {
  return {std::move(name), std::move(unit), value, rectangular(within), Shape::rectangular};
}

/// Balance's linearity and half of its last figure, each even (CG4 A2 counts the first at each weighing).
Quantity weighing(const Level& level, std::string name, const char* cell) {
  const double linearity = rectangular(level.standard->balance_linearity_g),
               last_figure = rectangular(0.5 * kBalanceShows_g);
  return {std::move(name), "g", level_value(level, cell).value_or(0.0),
          std::sqrt(linearity * linearity + last_figure * last_figure), Shape::rectangular};
}

Quantity peaked(std::string name, std::string unit, double value, double within) {
  return {std::move(name), std::move(unit), value, triangular(within), Shape::triangular};
}

/// The mean with the spread of what it was taken from.
Quantity mean_titre(const std::string& name, std::span<const double> titres_cm3,
                    const AssumedOfTheBench& assumed) {
  const SampleStatistics sample = statistics_of(titres_cm3);
  const double one_cm3 = std::sqrt(2.0) * assumed.reading_sd_cm3;  // two readings, one titre
  return {name, "cm³", sample.mean, sample.count > 1 ? sample.mean_error : one_cm3, Shape::normal};
}

/// Half a drop, or what the level says of a soft change.
Quantity endpoint_of(const std::string& sharp, const std::string& soft, double soft_within_cm3,
                     const AssumedOfTheBench& assumed) {
  if (soft_within_cm3 <= 0.0) return even(sharp, "cm³", 0.0, 0.5 * assumed.drop_cm3);
  return even(soft, "cm³", 0.0, soft_within_cm3);
}

/// In the order of Input, titre to endpoint.
void add_first_titre(const Level& level, std::span<const double> titres_cm3, const AssumedOfTheBench& assumed,
                     std::vector<Quantity>& inputs) {
  inputs.push_back(mean_titre(say("quantity.mean_first_titre"), titres_cm3, assumed));
  inputs.push_back(peaked(say("quantity.first_burette"), "cm³", 0.0, level.burette_tolerance_cm3));
  inputs.push_back(peaked(say("quantity.first_readings"), "cm³", 0.0, assumed.read_to_cm3));
  inputs.push_back(endpoint_of(say("quantity.first_endpoint"), say("quantity.first_endpoint.soft"),
                               level.endpoint_within_cm3, assumed));
}

std::vector<Quantity> inputs_of(const Level& level, std::span<const double> titres_cm3,
                                const AssumedOfTheBench& assumed) {
  const LiquidSpec& known = level.unknown_in_flask ? level.titrant : level.sample;
  const double warm_c = assumed.temperature_within_c;
  std::vector<Quantity> inputs = {
      mean_titre(say("quantity.mean_titre"), titres_cm3, assumed),
      peaked(say("quantity.burette"), "cm³", 0.0, level.burette_tolerance_cm3),
      peaked(say("quantity.readings"), "cm³", 0.0, assumed.read_to_cm3),
      endpoint_of(say("quantity.endpoint"), say("quantity.endpoint.soft"),
                  level.then ? level.then->endpoint_within_cm3 : level.endpoint_within_cm3, assumed),
      even(say("quantity.titrant_temperature"), "°C", level.temperature_c, warm_c),
      even(say("quantity.pipette"), "cm³", level.aliquot_cm3, level.pipette_tolerance_cm3),
      even(say("quantity.sample_temperature"), "°C", level.temperature_c, warm_c),
      level.standard
          ? weighing(level, say("quantity.bottle_before"), kBottleBefore)
          : even(say("quantity.standard"), "mol dm⁻³", known.label_mol_dm3, standard_within(known, assumed))};
  if (level.dilution > 1.0) {
    const double flask_cm3 = assumed.dilution_flask_cm3;
    inputs.push_back(
        even(say("quantity.dilution_flask"), "cm³", flask_cm3, assumed.dilution_flask_within_cm3));
    inputs.push_back(even(say("quantity.dilution_pipette"), "cm³", flask_cm3 / level.dilution,
                          level.pipette_tolerance_cm3));
  }
  if (level.standard) {
    inputs.push_back(weighing(level, say("quantity.bottle_after"), kBottleAfter));
    inputs.push_back(even(say("quantity.volumetric_flask"), "cm³", level.standard->flask_cm3,
                          level.standard->flask_tolerance_cm3));
  }
  return inputs;
}

/// A soft change is no sharper to perfect hands; any other comes to nothing here.
double soft(const Quantity& endpoint, const AssumedOfTheBench& assumed) {
  return endpoint.standard > rectangular(0.5 * assumed.drop_cm3) * 1.001 ? endpoint.standard : 0.0;
}

/// Volumes as they would be at the bench's temperature; the dilution was made at one of its own, which
/// cancels. Where a flask has two endpoints, their titres share the initial reading: taken as independent,
/// its share is put somewhat too high.
double worked(Level& level, double bench_c, double expands_per_c, std::optional<std::size_t> first_titre,
              std::span<const double> x) {
  const auto at_bench = [&](double cm3, double liquid_c) {
    return cm3 * (1.0 - expands_per_c * (liquid_c - bench_c));
  };
  const auto titre_from = [&](std::size_t at) {
    return at_bench(x[at + titre] + x[at + scale] + x[at + readings] + x[at + endpoint], x[titrant_warmth]);
  };
  level.aliquot_cm3 = at_bench(x[pipette], x[sample_warmth]);
  const std::size_t whole = first_titre.value_or(x.size());  // inputs, without those of a first titre
  if (level.standard) {
    level.standard->flask_cm3 = x[whole - 1];
    level = as_weighed(std::move(level), x[standard], x[whole - 2]);
  } else {
    (level.unknown_in_flask ? level.titrant : level.sample).label_mol_dm3 = x[standard];
  }
  if (whole > (level.standard ? dilution_pipette + 2 : dilution_pipette))
    level.dilution = x[dilution_flask] / x[dilution_pipette];
  MeanTitres means{titre_from(0)};
  if (first_titre) means.first_cm3 = titre_from(*first_titre);
  return result_from_means(level, means).value_or(std::numeric_limits<double>::quiet_NaN());
}

}  // namespace

OwnMeasurement own_measurement(const Level& level, std::span<const double> titres_cm3,
                               const AssumedOfTheBench& assumed, std::span<const double> first_titres_cm3) {
  OwnMeasurement own;
  own.inputs = inputs_of(level, titres_cm3, assumed);
  if (level.then && !first_titres_cm3.empty()) {
    own.first_titre = own.inputs.size();
    add_first_titre(level, first_titres_cm3, assumed, own.inputs);
  }
  own.result = [changed = level, bench_c = level.temperature_c, expands = assumed.water_expands_per_c,
                first = own.first_titre](std::span<const double> x) mutable {
    return worked(changed, bench_c, expands, first, x);
  };
  if (!level.calculation.empty()) own.unit = level.calculation.back().unit;
  return own;
}

OwnMeasurement perfect_measurement(OwnMeasurement own, const AssumedOfTheBench& assumed) {
  constexpr double kTenthOfDivision_cm3 = 0.01;
  const auto perfect = [&](std::size_t at) {
    own.inputs[at + titre].standard = 0.0;
    own.inputs[at + readings].standard = triangular(kTenthOfDivision_cm3);
    own.inputs[at + endpoint].standard =
        std::max(rectangular(0.25 * assumed.drop_cm3), soft(own.inputs[at + endpoint], assumed));
  };
  perfect(0);
  if (own.first_titre) perfect(*own.first_titre);
  return own;
}

std::optional<OwnUncertainty> own_uncertainty(const Level& level, std::span<const double> titres_cm3,
                                              const AssumedOfTheBench& assumed,
                                              std::span<const double> first_titres_cm3) {
  if (titres_cm3.empty() || level.calculation.empty()) return std::nullopt;
  const OwnMeasurement own = own_measurement(level, titres_cm3, assumed, first_titres_cm3);
  const OwnMeasurement perfect = perfect_measurement(own, assumed);
  auto budget = uncertainty_budget(own.inputs, own.result, own.unit);
  const auto best = uncertainty_budget(perfect.inputs, perfect.result, perfect.unit);
  if (!budget || !best) return std::nullopt;
  return OwnUncertainty{std::move(*budget), best->expanded};
}

}  // namespace halfdrop

// The lines of a level's working and the constants they name (declared in level_fields.h).

#include <algorithm>
#include <charconv>
#include <cmath>

#include "game/level/level_fields.h"
#include "game/level/nearest.h"

namespace halfdrop {
namespace {

constexpr std::string_view kValueNames[] = {"titrant_mol_dm3", "sample_mol_dm3", "aliquot_cm3",
                                            "ratio",           "dilution",       "volumetric_flask_cm3",
                                            kBottleBefore,     kBottleAfter};

void check_factor(const Level& level, const Factor& factor, std::size_t steps_before,
                  const std::string& place, FaultList& faults) {
  const std::string* const name = std::get_if<std::string>(&factor);
  if (name == nullptr) return;
  std::vector<std::string_view> known;
  for (std::size_t i = 0; i < steps_before; ++i) known.push_back(level.calculation[i].cell);
  if (std::find(known.begin(), known.end(), *name) != known.end()) return;
  const tl::expected<double, std::string> value = level_value(level, *name);
  if (value) return;
  for (const Constant& constant : level.constants) known.push_back(constant.name);
  known.insert(known.end(), std::begin(kValueNames), std::end(kValueNames));
  faults.add(place, value.error() + did_you_mean(*name, known));
}

struct NamedFactors {
  const char* key;
  const std::vector<Factor>& factors;
};

std::vector<NamedFactors> factors_of(const CalculationStep& step) {
  return {
      {"/multiply", step.multiply}, {"/divide", step.divide}, {"/plus", step.plus}, {"/minus", step.minus}};
}

void check_step(const Level& level, std::size_t index, const std::string& place, FaultList& faults) {
  const CalculationStep& step = level.calculation[index];
  const bool of_runs = is_mean(step.cell);
  const bool has_factors =
      !(step.multiply.empty() && step.divide.empty() && step.plus.empty() && step.minus.empty());
  if ((step.cell == kMeanTitre) != (index == 0))
    faults.add(place + "/cell",
               "expected \"" + std::string(kMeanTitre) + "\" as the first step and only there");
  if ((step.cell == kMeanFirstTitre) != (index == 1 && level.then))
    faults.add(place + "/cell", "expected \"" + std::string(kMeanFirstTitre) +
                                    "\" as the second step of a flask with two endpoints, and only there");
  if (of_runs && has_factors)
    faults.add(place,
               "the mean titre comes from the titres: leave multiply and divide out, plus and minus too");
  if (!of_runs && step.multiply.empty() && !step.divide.empty())
    faults.add(place + "/divide", "there is nothing to divide: expected \"multiply\" beside it");
  for (std::size_t i = 0; i < index; ++i) {
    if (level.calculation[i].cell == step.cell && !of_runs)
      faults.add(place + "/cell", "cell " + in_quotes(step.cell) + " stands in two steps");
  }
  for (const auto& [key, factors] : factors_of(step)) {
    for (std::size_t i = 0; i < factors.size(); ++i)
      check_factor(level, factors[i], index, pointer_to(place + key, i), faults);
  }
}

/// Whether a text has this figure in it: "3.00 g" has 3.
bool says(const std::string& text, double value) {
  constexpr std::string_view kFigures = "0123456789";
  for (std::size_t at = text.find_first_of(kFigures); at != std::string::npos;) {
    double found = 0.0;
    const char* const begin = text.data() + at;
    const auto read = std::from_chars(begin, text.data() + text.size(), found, std::chars_format::fixed);
    if (read.ec == std::errc() && std::fabs(found - value) <= 1e-9 * value) return true;
    at = text.find_first_of(kFigures,
                            at + static_cast<std::size_t>(std::max<std::ptrdiff_t>(read.ptr - begin, 1)));
  }
  return false;
}

bool is_told(const Level& level, double value) {
  const auto prompt_says = [&](const CalculationStep& step) { return says(step.prompt, value); };
  return says(level.story, value) ||
         std::any_of(level.calculation.begin(), level.calculation.end(), prompt_says);
}

bool is_used(const Level& level, const std::string& name) {
  const auto is_it = [&](const Factor& factor) {
    const std::string* const named = std::get_if<std::string>(&factor);
    return named != nullptr && *named == name;
  };
  return std::any_of(level.calculation.begin(), level.calculation.end(), [&](const CalculationStep& step) {
    const std::vector<NamedFactors> all = factors_of(step);
    return std::any_of(all.begin(), all.end(), [&](const NamedFactors& named) {
      return std::any_of(named.factors.begin(), named.factors.end(), is_it);
    });
  });
}

/// Whether a step would mean something else by this name, or another constant has it.
bool is_taken(const Level& level, std::size_t index) {
  const std::string& name = level.constants[index].name;
  if (name.starts_with("calculation/")) return true;
  if (std::find(std::begin(kValueNames), std::end(kValueNames), name) != std::end(kValueNames)) return true;
  return std::any_of(level.constants.begin(), level.constants.begin() + static_cast<std::ptrdiff_t>(index),
                     [&](const Constant& earlier) { return earlier.name == name; });
}

void check_constant(const Level& level, std::size_t index, const std::string& place, FaultList& faults) {
  const Constant& constant = level.constants[index];
  if (is_taken(level, index))
    faults.add(place + "/name", "the name " + in_quotes(constant.name) + " is taken");
  else if (!is_used(level, constant.name))
    faults.add(place + "/name", "no step names " + in_quotes(constant.name));
  if (!is_told(level, constant.value))
    faults.add(place + "/value", "expected the story or a prompt to give " + number_text(constant.value) +
                                     " " + constant.unit + " (" + constant.label + ")");
}

}  // namespace

void check_calculation(const Level& level, const std::string& place, FaultList& faults) {
  for (std::size_t i = 0; i < level.calculation.size(); ++i)
    check_step(level, i, pointer_to(place + "/calculation", i), faults);
  for (std::size_t i = 0; i < level.constants.size(); ++i)
    check_constant(level, i, pointer_to(place + "/constants", i), faults);
}

}  // namespace halfdrop

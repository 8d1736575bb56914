#include "game/level/level_fields.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "game/level/glass_keys.h"
#include "game/level/standard_to_make.h"

namespace halfdrop {
namespace {

constexpr std::size_t kLongestName = 80;
constexpr std::size_t kLongestLine = 400;
constexpr std::size_t kLongestHazard = 160;
constexpr std::size_t kLongestStory = 2000;
constexpr NumberRange kStrength_mol_dm3{0.001, 2.0};
constexpr NumberRange kTolerance_cm3{0.0, 0.2};
constexpr NumberRange kFactor{1e-6, 1e6};

void read_id(Fields& fields, IdPlace where, std::string& id) {
  if (where == IdPlace::in_level) return fields.text("id", id, kLongestId);
  if (!fields.has("id")) return;
  static_cast<void>(fields.any("id"));
  fields.fault(
      "id", "a level's id is the name of its file: leave this key out (only inside an attempt it is needed)");
}

void read_lines(Fields& fields, std::string_view key, Need need, std::vector<std::string>& lines,
                FaultList& faults) {
  const Json* const list = fields.array(key, 1, 20, need);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i) {
    if (check_text((*list)[i], kLongestLine, false, pointer_to(fields.place_of(key), i), faults))
      lines.push_back((*list)[i].get<std::string>());
  }
}

bool is_strength_step(double mol_dm3) {
  const double steps = mol_dm3 * 1e4;
  return std::abs(steps - std::round(steps)) < 1e-6;
}

void read_unknown(Fields& fields, Range& range, FaultList& faults) {
  constexpr std::string_view kKey = "unknown_mol_dm3";
  const Json* const pair = fields.array(kKey, 2, 2);
  if (pair == nullptr) return;
  double bounds[2] = {0.0, 0.0};
  for (std::size_t i = 0; i < 2; ++i) {
    const std::string place = pointer_to(fields.place_of(kKey), i);
    if (!check_number((*pair)[i], kStrength_mol_dm3, place, faults)) return;
    bounds[i] = (*pair)[i].get<double>();
    if (!is_strength_step(bounds[i])) faults.add(place, "expected a multiple of 0.0001 mol/dm3");
  }
  if (bounds[0] > bounds[1])
    fields.fault(kKey, "expected [lowest, highest], found the lowest above the highest");
  range = {bounds[0], bounds[1]};
}

void read_also(Fields& bottle, std::vector<Beside>& also, FaultList& faults) {
  constexpr std::string_view kKey = "also";
  const Json* const list = bottle.array(kKey, 1, 6, Need::optional);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i) {
    Beside beside;
    Fields one((*list)[i], pointer_to(bottle.place_of(kKey), i), faults);
    one.text("substance", beside.substance.name, kLongestName);
    one.number("mol_dm3", beside.mol_dm3, {0.0001, 2.0});
    one.finish();
    also.push_back(std::move(beside));
  }
}

/// A bottle: its strength is on the label, or it is the unknown with the range it is drawn from.
/// Returns whether it is the unknown.
bool read_liquid(Fields& fields, std::string_view key, LiquidSpec& liquid, FaultList& faults) {
  const Json* const entry = fields.object(key);
  if (entry == nullptr) return false;
  Fields bottle(*entry, fields.place_of(key), faults);
  bottle.text("substance", liquid.substance, kLongestName);
  bottle.text("label", liquid.label, kLongestName);
  const bool unknown = bottle.has("unknown_mol_dm3");
  if (unknown) {
    read_unknown(bottle, liquid.unknown_mol_dm3, faults);
    if (bottle.has("mol_dm3")) bottle.fault("mol_dm3", "an unknown has no strength on its label");
    static_cast<void>(bottle.any("mol_dm3"));
  } else {
    bottle.number("mol_dm3", liquid.label_mol_dm3, kStrength_mol_dm3);
    static_cast<void>(bottle.any("unknown_mol_dm3"));
  }
  bottle.number("carbonate_mol_dm3", liquid.carbonate_mol_dm3, {0.0, 0.5}, Need::optional);
  read_also(bottle, liquid.also, faults);
  bottle.text("hazard", liquid.hazard, kLongestHazard, Need::optional);
  bottle.finish();
  return unknown;
}

void read_liquids(Fields& fields, Level& level, const std::string& place, FaultList& faults) {
  const bool titrant_unknown = read_liquid(fields, "titrant", level.titrant, faults);
  const bool sample_unknown = read_liquid(fields, "sample", level.sample, faults);
  level.unknown_in_flask = sample_unknown;
  if (fields.has("titrant") && fields.has("sample") && titrant_unknown == sample_unknown)
    faults.add(place, std::string("expected \"unknown_mol_dm3\" in one of titrant and sample, found it in ") +
                          (sample_unknown ? "both" : "neither"));
}

/// Of a level, or of what follows its first endpoint.
template <class Titrated>
void read_endpoint(Fields& fields, Titrated& titrated, FaultList& faults) {
  const Json* const entry = fields.object("endpoint");
  if (entry == nullptr) return;
  Fields endpoint(*entry, fields.place_of("endpoint"), faults);
  endpoint.text("colour", titrated.endpoint_colour, kLongestName);
  endpoint.flag("gains_colour", titrated.endpoint_gains_colour);
  endpoint.number("within_cm3", titrated.endpoint_within_cm3, {0.01, 1.0}, Need::optional);
  endpoint.finish();
}

void read_second_unknown(Fields& then, std::optional<SecondUnknown>& beside, FaultList& faults) {
  const Json* const entry = then.object("beside", Need::optional);
  if (entry == nullptr) return;
  Fields fields(*entry, then.place_of("beside"), faults);
  beside.emplace();
  fields.text("substance", beside->name, kLongestName);
  read_unknown(fields, beside->mol_dm3, faults);
  fields.number("ratio", beside->ratio, {0.1, 10.0});
  fields.finish();
}

void read_then(Fields& fields, Level& level, FaultList& faults) {
  const Json* const entry = fields.object("then", Need::optional);
  if (entry == nullptr) return;
  Fields then(*entry, fields.place_of("then"), faults);
  level.then.emplace();
  then.text("indicator", level.then->indicator, kLongestName);
  read_endpoint(then, *level.then, faults);
  then.number("ratio", level.then->ratio, {0.1, 10.0});
  read_second_unknown(then, level.then->beside, faults);
  then.finish();
}

/// Optional numbers of one piece of glass. `tolerance_cm3` only where there is one.
template <class Spec>
void read_glass(Fields& fields, std::string_view key, std::span<const NumberKey<Spec>> keys, Spec* spec,
                double* tolerance_cm3, FaultList& faults) {
  const Json* const entry = fields.object(key, Need::optional);
  if (entry == nullptr) return;
  Fields glass(*entry, fields.place_of(key), faults);
  for (const NumberKey<Spec>& one : keys) glass.number(one.key, spec->*one.member, one.range, Need::optional);
  if (tolerance_cm3 != nullptr) glass.number("tolerance_cm3", *tolerance_cm3, kTolerance_cm3, Need::optional);
  glass.finish();
}

void read_pipette(Fields& fields, Level& level, FaultList& faults) {
  const Json* const entry = fields.object("pipette", Need::optional);
  if (entry == nullptr) return;
  Fields pipette(*entry, fields.place_of("pipette"), faults);
  for (const NumberKey<PipetteSpec>& one : pipette_keys())
    pipette.number(one.key, level.pipette.*one.member, one.range, Need::optional);
  pipette.number("tolerance_cm3", level.pipette_tolerance_cm3, kTolerance_cm3, Need::optional);
  pipette.flag("by_hand", level.pipette.by_hand, Need::optional);
  pipette.finish();
}

void read_all_glass(Fields& fields, Level& level, FaultList& faults) {
  read_burette_and_tap(fields, level, faults);
  read_glass(fields, "flask", flask_keys(), &level.flask, nullptr, faults);
  read_pipette(fields, level, faults);
}

void read_factors(Fields& fields, std::string_view key, Need need, std::vector<Factor>& factors,
                  FaultList& faults) {
  const Json* const list = fields.array(key, 1, 8, need);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const Json& factor = (*list)[i];
    const std::string place = pointer_to(fields.place_of(key), i);
    if (factor.is_string()) {
      if (check_text(factor, kLongestName, false, place, faults))
        factors.emplace_back(factor.get<std::string>());
    } else if (!factor.is_number()) {
      faults.add(place, "expected a number or the name of a value or an earlier step, found " +
                            type_in_words(factor));
    } else if (check_number(factor, kFactor, place, faults)) {
      factors.emplace_back(factor.get<double>());
    }
  }
}

CalculationStep read_step(const Json& entry, const std::string& place, FaultList& faults) {
  constexpr std::string_view kPrefix = "calculation/";
  CalculationStep step;
  Fields fields(entry, place, faults);
  fields.text("cell", step.cell, kLongestName);
  if (!step.cell.empty() && (!step.cell.starts_with(kPrefix) || step.cell.size() == kPrefix.size()))
    fields.fault("cell", "expected \"calculation/\" and a name, found " + in_quotes(step.cell));
  fields.text("prompt", step.prompt, kLongestLine);
  fields.text("unit", step.unit, kLongestName);
  fields.whole("least_figures", step.least_figures, 1, 8);
  const bool needs_factors = !is_mean(step.cell) && !fields.has("plus");
  read_factors(fields, "multiply", needs_factors ? Need::required : Need::optional, step.multiply, faults);
  read_factors(fields, "divide", Need::optional, step.divide, faults);
  read_factors(fields, "plus", Need::optional, step.plus, faults);
  read_factors(fields, "minus", Need::optional, step.minus, faults);
  fields.finish();
  return step;
}

Constant read_constant(const Json& entry, const std::string& place, FaultList& faults) {
  Constant constant;
  Fields fields(entry, place, faults);
  fields.text("name", constant.name, kLongestName);
  fields.number("value", constant.value, kFactor);
  fields.text("unit", constant.unit, kLongestName);
  fields.text("label", constant.label, kLongestLine);
  fields.finish();
  return constant;
}

void read_constants(Fields& fields, std::vector<Constant>& constants, FaultList& faults) {
  const Json* const list = fields.array("constants", 1, 12, Need::optional);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i)
    constants.push_back(read_constant((*list)[i], pointer_to(fields.place_of("constants"), i), faults));
}

void read_calculation(Fields& fields, std::vector<CalculationStep>& steps, FaultList& faults) {
  const Json* const list = fields.array("calculation", 1, 12);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i)
    steps.push_back(read_step((*list)[i], pointer_to(fields.place_of("calculation"), i), faults));
}

void read_all_bands(Fields& fields, Level& level, FaultList& faults) {
  const Json* const entry = fields.object("bands");
  if (entry == nullptr) return;
  Fields bands(*entry, fields.place_of("bands"), faults);
  read_bands(bands, "hand", level.hand_bands, faults);
  read_bands(bands, "eye", level.eye_bands, faults);
  bands.finish();
}

/// What only a titration has.
void read_exercise_fields(Fields& fields, Level& level, const std::string& place, FaultList& faults) {
  read_liquids(fields, level, place, faults);
  fields.number("ratio", level.ratio, {0.1, 10.0});
  fields.number("dilution", level.dilution, {1.0, 1000.0});
  fields.number("aliquot_cm3", level.aliquot_cm3, {1.0, 100.0});
  fields.text("indicator", level.indicator, kLongestName);
  read_endpoint(fields, level, faults);
  read_then(fields, level, faults);
  read_all_glass(fields, level, faults);
  fields.whole("accurate_runs", level.accurate_runs, 2, 8);
  read_filling(fields, level);
  read_standard(fields, level, faults);
  read_constants(fields, level.constants, faults);
  read_calculation(fields, level.calculation, faults);
  read_all_bands(fields, level, faults);
}

}  // namespace

void read_filling(Fields& fields, Level& level) {
  constexpr std::string_view kBelowEye = "below eye level";
  std::string word;
  fields.text("filling", word, kLongestName, Need::optional);
  level.filling_below_eye = word == kBelowEye;
  if (!word.empty() && !level.filling_below_eye)
    fields.fault("filling", "expected \"below eye level\", found " + in_quotes(word));
}

void read_burette_and_tap(Fields& fields, Level& level, FaultList& faults) {
  read_glass(fields, "burette", burette_keys(), &level.burette, &level.burette_tolerance_cm3, faults);
  read_glass(fields, "tap", tap_keys(), &level.tap, nullptr, faults);
}

void read_bands(Fields& fields, std::string_view key, std::vector<Band>& bands, FaultList& faults) {
  const Json* const list = fields.array(key, 1, 8);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const std::string place = pointer_to(fields.place_of(key), i);
    Band band;
    Fields one((*list)[i], place, faults);
    one.number("within_cm3", band.limit, {0.001, 10.0});
    one.whole("points", band.points, 0, 20);
    one.finish();
    if (!bands.empty() && (band.limit <= bands.back().limit || band.points >= bands.back().points))
      faults.add(place, "expected a wider limit with fewer points than the band before");
    bands.push_back(band);
  }
}

void read_level_fields(const Json& json, IdPlace id, const std::string& place, Level& level,
                       FaultList& faults) {
  Fields fields(json, place, faults);
  read_id(fields, id, level.id);
  fields.text("title", level.title, kLongestName);
  fields.text("story", level.story, kLongestStory);
  fields.text("why", level.why, kLongestStory);
  read_lines(fields, "cautions", Need::required, level.cautions, faults);
  read_lines(fields, "method", Need::optional, level.method, faults);
  fields.number("temperature_c", level.temperature_c, {5.0, 40.0});
  static_cast<void>(fields.any("drill"));
  if (fields.has("drill"))
    read_drill_fields(fields, level, faults);
  else
    read_exercise_fields(fields, level, place, faults);
  fields.finish();
}

}  // namespace halfdrop

// Reads an entry of assets/indicators.json (declared in assets.h).

#include <nlohmann/json.hpp>

#include "game/level/assets.h"

namespace halfdrop {
namespace {

constexpr std::size_t kLongestName = 60;
constexpr NumberRange kPhRange{-2.0, 16.0};

/// "every" for a dye that never changes, or how many protons the form has lost.
void read_form(Fields& fields, AbsorptionBand& band, int forms) {
  const Json* const form = fields.any("form");
  if (form == nullptr || !form->is_string()) {
    fields.whole("form", band.form, 0, forms - 1);
    return;
  }
  if (form->get<std::string>() != "every")
    fields.fault("form", "expected a whole number from 0 to " + std::to_string(forms - 1) +
                             ", or \"every\" for a dye that does not change");
  band.form = AbsorptionBand::kEveryForm;
  fields.number("mol_per_mol", band.mol_per_mol, {0.0, 100.0});
}

AbsorptionBand read_band(const Json& entry, int forms, const std::string& place, FaultList& faults) {
  AbsorptionBand band;
  Fields fields(entry, place, faults);
  read_form(fields, band, forms);
  fields.number("peak_nm", band.peak_nm, {200.0, 1000.0});
  fields.number("width_nm", band.width_nm, {5.0, 200.0});
  fields.number("epsilon_dm3_mol_cm", band.epsilon_dm3_mol_cm, {0.0, 2e5});
  read_source(fields);
  fields.finish();
  return band;
}

void read_fading(Fields& fields, Indicator& indicator, FaultList& faults) {
  const Json* const entry = fields.object("fading", Need::optional);
  if (entry == nullptr) return;
  Fading& fading = indicator.fading;
  Fields fading_fields(*entry, fields.place_of("fading"), faults);
  fading_fields.whole("form", fading.form, 0, indicator.system.steps);
  fading_fields.number("dm3_mol_s", fading.per_mol_s, {0.0, 1e3});
  fading_fields.number("half_at_ph", fading.half_at_ph, {7.0, 16.0});
  read_source(fading_fields);
  fading_fields.finish();
}

void read_stock(Fields& fields, Indicator& indicator, FaultList& faults) {
  const Json* const stock = fields.object("stock");
  if (stock == nullptr) return;
  Fields stock_fields(*stock, fields.place_of("stock"), faults);
  stock_fields.number("mol_dm3", indicator.stock_mol_dm3, {0.0, 0.1});
  read_source(stock_fields);
  stock_fields.finish();
}

void read_range_of_ph(Fields& fields, ColourRange& range, FaultList& faults) {
  const Json* const ends = fields.array("ph", 2, 2);
  if (ends == nullptr) return;
  const std::string place = fields.place_of("ph");
  bool sound = true;
  for (std::size_t i = 0; i < 2; ++i)
    sound = check_number((*ends)[i], kPhRange, pointer_to(place, i), faults) && sound;
  if (!sound) return;
  range.low_ph = (*ends)[0].get<double>();
  range.high_ph = (*ends)[1].get<double>();
  if (range.low_ph >= range.high_ph) faults.add(place, "expected the lower end first");
}

ColourRange read_range(const Json& entry, const std::string& place, FaultList& faults) {
  ColourRange range;
  Fields fields(entry, place, faults);
  read_range_of_ph(fields, range, faults);
  fields.text("acid_colour", range.acid_colour, kLongestName);
  fields.text("base_colour", range.base_colour, kLongestName);
  read_source(fields);
  fields.finish();
  return range;
}

}  // namespace

Indicator read_indicator(const std::string& name, const Json& entry, const std::string& place,
                         FaultList& faults) {
  constexpr std::size_t kMostBands = 8;
  Indicator indicator;
  indicator.name = name;
  Fields fields(entry, place, faults);
  read_also_called(fields, indicator.also_called, faults);
  if (const Json* const system = fields.object("system"))
    indicator.system = read_acid_system(*system, fields.place_of("system"), faults);
  fields.number("strong_charge", indicator.strong_charge, {-3.0, 3.0});
  read_source(fields);
  if (const Json* const bands = fields.array("bands", 1, kMostBands)) {
    for (std::size_t i = 0; i < bands->size(); ++i)
      indicator.bands.push_back(read_band((*bands)[i], indicator.system.steps + 1,
                                          pointer_to(fields.place_of("bands"), i), faults));
  }
  read_fading(fields, indicator, faults);
  read_stock(fields, indicator, faults);
  if (const Json* const ranges = fields.array("ranges", 1, indicator.system.pk.size())) {
    for (std::size_t i = 0; i < ranges->size(); ++i)
      indicator.ranges.push_back(read_range((*ranges)[i], pointer_to(fields.place_of("ranges"), i), faults));
  }
  fields.finish();
  return indicator;
}

}  // namespace halfdrop

#include "game/level/assets.h"

#include <nlohmann/json.hpp>

namespace halfdrop {
namespace {

constexpr std::size_t kLongestName = 60;
constexpr std::size_t kLongestSource = 400;

void read_source(Fields& fields) {
  std::string source;
  fields.text("source", source, kLongestSource);
}

AbsorptionBand read_band(const Json& entry, int forms, const std::string& place, FaultList& faults) {
  AbsorptionBand band;
  Fields fields(entry, place, faults);
  fields.whole("form", band.form, 0, forms - 1);
  fields.number("peak_nm", band.peak_nm, {200.0, 1000.0});
  fields.number("width_nm", band.width_nm, {5.0, 200.0});
  fields.number("epsilon_dm3_mol_cm", band.epsilon_dm3_mol_cm, {0.0, 2e5});
  read_source(fields);
  fields.finish();
  return band;
}

void read_stock(Fields& fields, Indicator& indicator, FaultList& faults) {
  const Json* const stock = fields.object("stock");
  if (stock == nullptr) return;
  Fields stock_fields(*stock, fields.place_of("stock"), faults);
  stock_fields.number("mol_dm3", indicator.stock_mol_dm3, {0.0, 0.1});
  read_source(stock_fields);
  stock_fields.finish();
}

std::string trimmed_slash(const std::string& folder) {
  return folder.ends_with('/') ? folder.substr(0, folder.size() - 1) : folder;
}

/// Reads a file of named entries onto a shelf.
template <class T, class Read>
void fill_shelf(const std::string& path, std::map<std::string, Shelved<T>, std::less<>>& shelf, Read read,
                std::vector<Fault>& all) {
  const tl::expected<std::string, Fault> text = read_file(path, kMostAssetBytes);
  if (!text) {
    all.push_back(text.error());
    return;
  }
  FaultList faults(path);
  if (const std::optional<Json> json = parse_json(*text, {}, faults)) {
    const Fields fields(*json, "", faults);
    if (json->is_object()) {
      for (const auto& [name, entry] : json->items())
        shelf[name] = {read(name, entry, pointer_to("", name), faults), entry.dump()};
    }
  }
  for (Fault& fault : faults.take()) all.push_back(std::move(fault));
}

}  // namespace

Indicator read_indicator(const std::string& name, const Json& entry, const std::string& place,
                         FaultList& faults) {
  constexpr std::size_t kMostBands = 8;
  Indicator indicator;
  indicator.name = name;
  Fields fields(entry, place, faults);
  if (const Json* const system = fields.object("system"))
    indicator.system = read_acid_system(*system, fields.place_of("system"), faults);
  if (const Json* const bands = fields.array("bands", 1, kMostBands)) {
    for (std::size_t i = 0; i < bands->size(); ++i)
      indicator.bands.push_back(read_band((*bands)[i], indicator.system.steps + 1,
                                          pointer_to(fields.place_of("bands"), i), faults));
  }
  read_stock(fields, indicator, faults);
  fields.text("acid_colour", indicator.acid_colour, kLongestName);
  fields.text("base_colour", indicator.base_colour, kLongestName);
  fields.finish();
  return indicator;
}

Result<Assets> read_assets(const std::string& folder) {
  const std::string assets_folder = trimmed_slash(folder) + "/assets/";
  Assets assets;
  std::vector<Fault> faults;
  fill_shelf(assets_folder + "substances.json", assets.substances, read_substance, faults);
  fill_shelf(assets_folder + "indicators.json", assets.indicators, read_indicator, faults);
  if (!faults.empty()) return tl::unexpected(std::move(faults));
  return assets;
}

}  // namespace halfdrop

#include "game/level/assets.h"

#include <nlohmann/json.hpp>

#include "game/level/shelf_names.h"

namespace halfdrop {
namespace {

std::string trimmed_slash(const std::string& folder) {
  return folder.ends_with('/') ? folder.substr(0, folder.size() - 1) : folder;
}

/// Reads a file of named entries onto a shelf.
template <class T, class Read>
void fill_shelf(const std::string& path, Shelf<T>& shelf, Read read, std::vector<Fault>& all) {
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
        shelf[name] = {read(name, entry, pointer_to("", name), faults), json_text(entry)};
      check_names(shelf, faults);
    }
  }
  for (Fault& fault : faults.take()) all.push_back(std::move(fault));
}

}  // namespace

void read_source(Fields& fields) {
  constexpr std::size_t kLongestSource = 400;
  std::string source;
  fields.text("source", source, kLongestSource);
}

void read_also_called(Fields& fields, std::vector<std::string>& into, FaultList& faults) {
  constexpr std::size_t kLongestName = 80, kMostNames = 8;
  constexpr std::string_view kKey = "also_called";
  const Json* const list = fields.array(kKey, 1, kMostNames, Need::optional);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i) {
    if (check_text((*list)[i], kLongestName, false, pointer_to(fields.place_of(kKey), i), faults))
      into.push_back((*list)[i].get<std::string>());
  }
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

#include "game/level/level.h"

#include <algorithm>
#include <filesystem>

#include <nlohmann/json.hpp>

#include "game/level/level_fields.h"
#include "game/level/nearest.h"

namespace halfdrop {
namespace {

constexpr std::size_t kMostLevelBytes = std::size_t{1} << 20;

/// Whether a level's word for a chemical means the entry of this name.
bool is_meant(std::string_view word, const std::string& name, const Json& entry) {
  if (word == name) return true;
  if (!entry.is_object()) return false;
  const auto formula = entry.find("formula"), others = entry.find("also_called");
  if (formula != entry.end() && *formula == word) return true;
  return others != entry.end() && others->is_array() &&
         std::find(others->begin(), others->end(), word) != others->end();
}

/// The chemicals as an attempt carries them: only those its level names, each under the name that is shown.
Assets read_carried(const Json& json, const Level& level, const std::string& place, FaultList& faults) {
  Assets assets;
  const Fields fields(json, place, faults);
  if (!json.is_object()) return assets;
  std::vector<std::string_view> bottled = {level.titrant.substance, level.sample.substance};
  for (const LiquidSpec* liquid : {&level.titrant, &level.sample}) {
    for (const Beside& beside : liquid->also) bottled.push_back(beside.substance.name);
  }
  std::vector<std::string_view> dropped = {level.indicator};
  if (level.then) {
    dropped.push_back(level.then->indicator);
    if (level.then->beside) bottled.push_back(level.then->beside->name);
  }
  std::vector<std::string_view> used = bottled;
  used.insert(used.end(), dropped.begin(), dropped.end());
  for (const auto& item : json.items()) {
    const std::string& name = item.key();
    const Json& entry = item.value();
    const std::string entry_place = pointer_to(place, name);
    const auto meant = [&](std::string_view word) { return is_meant(word, name, entry); };
    if (std::any_of(dropped.begin(), dropped.end(), meant))
      assets.indicators[name] = {read_indicator(name, entry, entry_place, faults), json_text(entry)};
    else if (std::any_of(bottled.begin(), bottled.end(), meant))
      assets.substances[name] = {read_substance(name, entry, entry_place, faults), json_text(entry)};
    else
      faults.add(entry_place, "the level uses no " + in_quotes(name) + did_you_mean(name, used));
  }
  return assets;
}

/// Keys, then what joins them: only when the keys are sound.
Level level_from(const Json& json, IdPlace id, const std::string& place, FaultList& faults) {
  Level level;
  const std::size_t faults_before = faults.size();
  read_level_fields(json, id, place, level, faults);
  if (faults.size() == faults_before) check_level(level, place, faults);
  return level;
}

/// A file name may hold bytes that are not UTF-8; an attempt may not.
std::string id_from(const std::string& path) {
  return valid_utf8(std::filesystem::path(path).stem().string());
}

std::string with_id(const Json& level_json, const std::string& id) {
  return "{\"id\":" + json_text(Json(id)) + "," + json_text(level_json).substr(1);
}

}  // namespace

Result<Level> read_level(const std::string& path) {
  const tl::expected<std::string, Fault> text = read_file(path, kMostLevelBytes);
  if (!text) return tl::unexpected(std::vector<Fault>{text.error()});
  FaultList faults(path);
  const std::optional<Json> json = parse_json(*text, {}, faults);
  if (!json) return tl::unexpected(faults.take());
  Level level = level_from(*json, IdPlace::file_name, "", faults);
  level.id = id_from(path);
  if (count_characters(level.id) > kLongestId)
    faults.add("",
               "the file's name is too long: expected at most " + std::to_string(kLongestId) + " characters");
  const Result<Assets> assets = read_assets(data_folder());
  if (!assets)
    faults.add_all(assets.error());
  else if (faults.empty())
    take_from_shelf(*assets, "", level, faults);
  if (!faults.empty()) return tl::unexpected(faults.take());
  level.source_json = with_id(*json, level.id);
  return level;
}

Result<Level> read_level_text(const std::string& level_json, const std::string& substances_json,
                              const std::string& name_for_faults) {
  const std::string level_place = "/level", substances_place = "/substances";
  FaultList faults(name_for_faults);
  const std::optional<Json> json = parse_json(level_json, {level_place, level_place}, faults);
  const std::optional<Json> carried =
      parse_json(substances_json, {substances_place, substances_place}, faults);
  if (!json || !carried) return tl::unexpected(faults.take());
  Level level = level_from(*json, IdPlace::in_level, level_place, faults);
  const bool level_sound = faults.empty();
  if (level_sound) {
    const Assets assets = read_carried(*carried, level, substances_place, faults);
    if (faults.empty()) take_from_shelf(assets, level_place, level, faults);
  }
  if (!faults.empty()) return tl::unexpected(faults.take());
  level.source_json = json_text(*json);
  return level;
}

Result<Level> with_values(const Level& level, const std::string& patch) {
  const std::string name = "a changed level";
  FaultList faults(name);
  std::optional<Json> values = parse_json(level.source_json, {"/level", "/level"}, faults);
  const std::optional<Json> changes = parse_json(patch, {"/patch", "/patch"}, faults);
  if (!values || !changes) return tl::unexpected(faults.take());
  values->merge_patch(*changes);
  return read_level_text(json_text(*values), level.substances_json, name);
}

}  // namespace halfdrop

// levels/schema.json against the reader: the same keys, ranges and defaults.

#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "game/level/glass_keys.h"
#include "tests/support/good_level.h"
#include "tests/support/json.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

const Json& schema() {
  static const Json json = json_of(text_of(source_file("levels/schema.json")));
  return json;
}

/// The schema as it applies to a level: what its "if" and "then" add is merged in, what they rule out is
/// gone.
void merge(Json& part, const Json& more) {
  for (const auto& [key, value] : more.items()) {
    if (key == "properties") {
      for (const auto& [name, of_name] : value.items()) {
        if (of_name == false)
          part["properties"].erase(name);
        else
          merge(part["properties"][name], of_name);
      }
    } else {
      part[key] = value;
    }
  }
}

bool applies(const Json& condition, const Json& level) {
  if (!level.contains("drill")) return false;
  if (!condition.contains("properties")) return true;
  return condition["properties"]["drill"]["properties"]["kind"]["const"] == level["drill"]["kind"];
}

Json schema_for(const Json& level) {
  Json merged = schema();
  const auto add = [&](const Json& rule) {
    const char* const branch = applies(rule["if"], level) ? "then" : "else";
    if (!rule.contains(branch)) return;
    const Json required = merged["required"];
    merge(merged, rule[branch]);
    if (!rule[branch].contains("required")) return;
    merged["required"] = required;
    for (const Json& key : rule[branch]["required"]) merged["required"].push_back(key);
  };
  add(schema());
  for (const Json& rule : schema()["allOf"]) add(rule);
  return merged;
}

/// A level with every optional piece of glass in it.
Json with_all_glass(Json level) {
  const Json parts = schema_for(level)["properties"];
  for (const char* glass : {"burette", "tap", "flask", "pipette"}) {
    if (!parts.contains(glass)) continue;
    for (const auto& [key, of_key] : parts[glass]["properties"].items())
      level[glass][key] = of_key["default"];
  }
  return level;
}

/// The good level with both kinds of bottle and everything that may be left out, and the three drills.
std::vector<Json> full_levels() {
  std::vector<Json> levels = {with_all_glass(json_of(text_of(good_level_path())))};
  levels.front()["calculation"][4]["divide"] = {1};
  levels.front()["calculation"][4]["plus"] = {"flask"};
  levels.front()["calculation"][4]["minus"] = {1};
  levels.front()["constants"] = {
      {{"name", "flask"}, {"value", 250}, {"unit", "cm³"}, {"label", "what the flask holds"}}};
  levels.front()["filling"] = "below eye level";
  levels.push_back(json_of(text_of(source_file("levels/03-standard-acid.json"))));
  for (const char* bottle : {"titrant", "sample"}) {
    levels.front()[bottle]["also"] = {{{"substance", "lactic acid"}, {"mol_dm3", 0.01}}};
    levels.front()[bottle]["hazard"] = "As the label says.";
  }
  for (const char* drill :
       {"01-read-the-meniscus", "02-deliver-exactly", "03-fill-without-air", "00-know-your-apparatus"})
    levels.push_back(
        with_all_glass(json_of(text_of(source_file("levels/drills/" + std::string(drill) + ".json")))));
  return levels;
}

Result<Level> read(const Json& level) {
  const TemporaryFolder folder;
  return read_level(folder.file("level.json", compact(level)));
}

std::string message_at(const Result<Level>& level, const std::string& place) {
  std::string words;
  if (level) return words;
  for (const Fault& fault : level.error()) {
    if (fault.place == place) words += fault.message;
  }
  return words;
}

/// Every object of the full level with the part of the schema that describes it.
void each_object(const Json& value, const Json& part, const std::string& place,
                 const std::function<void(const Json& part, const std::string& place)>& visit) {
  if (value.is_object()) {
    visit(part, place);
    for (const auto& [key, member] : value.items())
      each_object(member, part["properties"][key], place + "/" + key, visit);
  } else if (value.is_array() && part.contains("items")) {
    for (std::size_t i = 0; i < value.size(); ++i)
      each_object(value[i], part["items"], place + "/" + std::to_string(i), visit);
  }
}

std::set<std::string> keys_the_reader_knows(Json level, const std::string& place) {
  // So far from every key that the reader lists what it knows.
  constexpr const char* kStranger = "zzzzzzzzzzzzzzzzzzzz";
  level[Json::json_pointer(place)][kStranger] = 0;
  const std::string message = message_at(read(level), place + "/" + kStranger);
  const std::string intro = "known here: ";
  const std::size_t start = message.find(intro);
  REQUIRE_MESSAGE(start != std::string::npos, place << ": " << message);
  std::set<std::string> keys;
  std::istringstream list(message.substr(start + intro.size()));
  for (std::string key; list >> key;) keys.insert(key.back() == ',' ? key.substr(0, key.size() - 1) : key);
  return keys;
}

/// Both say whether a key is needed.
void check_required(const Json& full, const Json& part, const std::string& place) {
  const Json required = part.value("required", Json::array());
  for (const auto& [key, unused] : part["properties"].items()) {
    CAPTURE(key);
    Json level = full;
    Json& object = level[Json::json_pointer(place)];
    // A drill without its key is another level: an exercise, with other keys missing.
    if (!object.contains(key) || (place.empty() && key == "drill")) continue;
    object.erase(key);
    const std::string message = message_at(read(level), place + "/" + key);
    // Which of two strengths a bottle needs, and that only the mean titre has no factors, a list of
    // required keys cannot say.
    const bool either = key == "mol_dm3" || key == "unknown_mol_dm3" || key == "multiply";
    const bool is_required = std::find(required.begin(), required.end(), key) != required.end();
    if (!either) CHECK(is_required == message.starts_with("missing"));
  }
}

/// Both say between which numbers; returns how many were compared.
int check_ranges(const Json& full, const Json& part, const std::string& place) {
  int numbers = 0;
  for (const auto& [key, of_key] : part["properties"].items()) {
    if (!of_key.contains("minimum")) continue;
    ++numbers;
    const std::string at = place + "/" + key;
    CAPTURE(at);
    const double low = of_key["minimum"], high = of_key["maximum"];
    const bool whole = of_key["type"] == "integer";
    const auto complaint = [&](double value) {
      Json level = full;
      level[Json::json_pointer(at)] = whole ? Json(static_cast<int>(value)) : Json(value);
      return message_at(read(level), at).find(" from ") != std::string::npos;
    };
    const double step = whole ? 1.0 : 1e-9;
    const bool absent_before = key == "mol_dm3" && !full.at(Json::json_pointer(place)).contains(key);
    if (absent_before) continue;
    CHECK_FALSE(complaint(low));
    CHECK_FALSE(complaint(high));
    CHECK(complaint(low - step));
    CHECK(complaint(high + step));
  }
  return numbers;
}

}  // namespace

TEST_SUITE("schema of levels") {
  TEST_CASE("a level with every key of the schema is read, an exercise and each drill") {
    for (const Json& full : full_levels()) {
      const auto level = read(full);
      REQUIRE_MESSAGE(level.has_value(), why_not(level));
    }
  }
  TEST_CASE("schema and reader know the same keys, everywhere") {
    int objects = 0;
    for (const Json& full : full_levels()) {
      each_object(full, schema_for(full), "", [&](const Json& part, const std::string& place) {
        CAPTURE(place);
        ++objects;
        std::set<std::string> keys;
        for (const auto& [key, unused] : part["properties"].items()) keys.insert(key);
        CHECK(keys == keys_the_reader_knows(full, place));
        CHECK(part["additionalProperties"] == false);
      });
    }
    CHECK(objects > 30);
  }
  TEST_CASE("schema and reader require the same keys") {
    for (const Json& full : full_levels()) {
      each_object(full, schema_for(full), "", [&](const Json& part, const std::string& place) {
        CAPTURE(place);
        check_required(full, part, place);
      });
    }
  }
  TEST_CASE("schema and reader have the same ranges") {
    int numbers = 0;
    for (const Json& full : full_levels()) {
      each_object(full, schema_for(full), "", [&](const Json& part, const std::string& place) {
        numbers += check_ranges(full, part, place);
      });
    }
    CHECK(numbers > 80);
  }
  TEST_CASE("the schema's defaults are the bench's own") {
    const Json& parts = schema()["properties"];
    const auto check = [&](const char* glass, auto keys, const auto& spec) {
      for (const auto& key : keys) {
        CAPTURE(key.key);
        CHECK(parts[glass]["properties"][std::string(key.key)]["default"].template get<double>() ==
              spec.*key.member);
      }
    };
    check("burette", burette_keys(), BuretteSpec{});
    check("tap", tap_keys(), TapSpec{});
    check("flask", flask_keys(), FlaskSpec{});
    CHECK(parts["burette"]["properties"]["tolerance_cm3"]["default"] == Level{}.burette_tolerance_cm3);
    CHECK(parts["pipette"]["properties"]["tolerance_cm3"]["default"] == Level{}.pipette_tolerance_cm3);
  }
}

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

/// The good level with every optional piece of glass in it, and both kinds of bottle.
Json full_level() {
  Json level = json_of(text_of(good_level_path()));
  for (const char* glass : {"burette", "tap", "flask", "pipette"}) {
    for (const auto& [key, of_key] : schema()["properties"][glass]["properties"].items())
      level[glass][key] = of_key["default"];
  }
  level["calculation"][4]["divide"] = {1};
  return level;
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

std::set<std::string> keys_the_reader_knows(const std::string& place) {
  Json level = full_level();
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

}  // namespace

TEST_SUITE("schema of levels") {
  TEST_CASE("a level with every key of the schema is read") {
    const auto level = read(full_level());
    REQUIRE_MESSAGE(level.has_value(), why_not(level));
  }
  TEST_CASE("schema and reader know the same keys, everywhere") {
    int objects = 0;
    each_object(full_level(), schema(), "", [&](const Json& part, const std::string& place) {
      CAPTURE(place);
      ++objects;
      std::set<std::string> keys;
      for (const auto& [key, unused] : part["properties"].items()) keys.insert(key);
      CHECK(keys == keys_the_reader_knows(place));
      CHECK(part["additionalProperties"] == false);
    });
    CHECK(objects > 15);
  }
  TEST_CASE("schema and reader require the same keys") {
    each_object(full_level(), schema(), "", [&](const Json& part, const std::string& place) {
      CAPTURE(place);
      const Json required = part.value("required", Json::array());
      for (const auto& [key, unused] : part["properties"].items()) {
        CAPTURE(key);
        Json level = full_level();
        Json& object = level[Json::json_pointer(place)];
        if (!object.contains(key)) continue;
        object.erase(key);
        const std::string message = message_at(read(level), place + "/" + key);
        // Which of two strengths a bottle needs, and that only the mean titre has no factors, a list of
        // required keys cannot say.
        const bool either = key == "mol_dm3" || key == "unknown_mol_dm3" || key == "multiply";
        const bool is_required = std::find(required.begin(), required.end(), key) != required.end();
        if (!either) CHECK(is_required == message.starts_with("missing"));
      }
    });
  }
  TEST_CASE("schema and reader have the same ranges") {
    int numbers = 0;
    each_object(full_level(), schema(), "", [&](const Json& part, const std::string& place) {
      for (const auto& [key, of_key] : part["properties"].items()) {
        if (!of_key.contains("minimum")) continue;
        ++numbers;
        const std::string at = place + "/" + key;
        CAPTURE(at);
        const double low = of_key["minimum"], high = of_key["maximum"];
        const bool whole = of_key["type"] == "integer";
        const auto complaint = [&](double value) {
          Json level = full_level();
          level[Json::json_pointer(at)] = whole ? Json(static_cast<int>(value)) : Json(value);
          return message_at(read(level), at).find(" from ") != std::string::npos;
        };
        const double step = whole ? 1.0 : 1e-9;
        const bool absent_before = key == "mol_dm3" && place == "/sample";
        if (absent_before) continue;
        CHECK_FALSE(complaint(low));
        CHECK_FALSE(complaint(high));
        CHECK(complaint(low - step));
        CHECK(complaint(high + step));
      }
    });
    CHECK(numbers > 40);
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

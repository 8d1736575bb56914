#include "game/records/mistakes_json.h"

#include <nlohmann/json.hpp>

#include "game/level/strict_json.h"

namespace halfdrop {

std::string mistake_json(const MistakeRow& row) {
  Json json;
  json["name"] = row.name;
  json["title"] = row.title;
  json["family"] = row.family;
  json["cause"] = nullptr;
  if (row.cause) json["cause"] = *row.cause;
  json["titre"] = row.titre;
  json["typical_cm3"] = row.typical_cm3;
  return json_text(json);
}

}  // namespace halfdrop

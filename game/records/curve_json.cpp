#include "game/records/curve_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "game/level/strict_json.h"

namespace halfdrop {
namespace {

/// What rounds to nothing has no sign.
double rounded(double value) {
  const double tenthousandths = std::round(value * 1e4);
  return tenthousandths == 0.0 ? 0.0 : tenthousandths / 1e4;
}

Json bottle(const CurveReport::Bottle& of) {
  Json json{{"substance", of.substance}, {"mol_dm3", of.mol_dm3}};
  if (!of.pka.empty()) json["pKa"] = of.pka;
  return json;
}

Json indicator(const CurveReport& report) {
  if (!report.indicator) return nullptr;
  Json json{{"name", *report.indicator}, {"drops", report.drops}, {"handbook_pH", Json::array()}};
  for (const CurveReport::HandbookRange& range : report.handbook)
    json["handbook_pH"].push_back(Json::array({range.low_ph, range.high_ph}));
  json["unfit"] = report.unfit;
  json["changes"] = Json::array();
  for (const CurveReport::Change& change : report.changes) {
    json["changes"].push_back({{"vision", change.vision},
                               {"first_cm3", rounded(change.first_cm3)},
                               {"middle_cm3", rounded(change.middle_cm3)},
                               {"last_cm3", rounded(change.last_cm3)},
                               {"endpoint", change.endpoint},
                               {"endpoint_cm3", rounded(change.endpoint_cm3)},
                               {"equivalence_cm3", rounded(change.equivalence_cm3)},
                               {"fits", change.fits},
                               {"gradual", change.gradual}});
  }
  return json;
}

}  // namespace

std::string curve_json(const CurveReport& report) {
  Json json{{"flask", bottle(report.flask)}, {"burette", bottle(report.burette)}};
  json["aliquot_cm3"] = report.aliquot_cm3;
  json["temperature_c"] = report.temperature_c;
  json["pKw"] = rounded(report.pkw);
  json["ideal"] = report.ideal;
  json["equivalences"] = Json::array();
  for (const CurveReport::Equivalence& at : report.equivalences)
    json["equivalences"].push_back(
        {{"volume_cm3", rounded(at.volume_cm3)}, {"pH", rounded(at.ph)}, {"jump_pH", rounded(at.jump_ph)}});
  json["indicator"] = indicator(report);
  json["visible_change_cm3"] = nullptr;
  if (report.visible_change_cm3) json["visible_change_cm3"] = rounded(*report.visible_change_cm3);
  json["warnings"] = report.warnings;
  json["points"] = Json::array();
  for (const CurveReport::Point& point : report.points)
    json["points"].push_back(
        {{"volume_cm3", point.volume_cm3}, {"pH", rounded(point.ph)}, {"colour", point.colour}});
  return json_text(json);
}

}  // namespace halfdrop

#include "game/records/drill_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

namespace halfdrop {

namespace {

Json number(std::optional<double> value) {
  return value && std::isfinite(*value) ? Json(*value) : Json(nullptr);
}

Json picture_object(const PictureRead& picture) {
  Json object;
  const auto shown = [&](double cm3) { return picture.shown ? Json(cm3) : Json(nullptr); };
  object["picture"] = picture.number;
  object["true_cm3"] = shown(picture.true_cm3);
  object["seen_cm3"] = shown(picture.apparent_cm3);
  object["written_cm3"] = number(picture.written_cm3);
  object["slip"] = picture.slip();
  object["off_level"] = picture.off_level();
  object["tick"] = picture.tick;
  return object;
}

void add_details(const ReadingDrill& drill, Json& object) {
  const SampleStatistics& errors = drill.errors;
  const bool judged = errors.count >= kFewestValues;
  object["bias_seen"] =
      judged ? Json(std::fabs(errors.mean) > kSeenErrors * errors.mean_error) : Json(nullptr);
  object["off_level_cost_cm3"] = drill.off_level_cost_cm3;
  object["trained_sd_cm3"] = kTrainedSd_cm3;
  object["trained_sd_as_written_cm3"] = trained_sd_cm3(drill.to_cm3);
  object["liked_digit"] = drill.liked_digit ? Json(*drill.liked_digit) : Json(nullptr);
  object["digits"] = Json::array();
  for (std::size_t i = 0; i < drill.digits.size(); ++i) {
    object["digits"].push_back(
        {{"digit", i}, {"written", drill.digits[i].written}, {"called_for", drill.digits[i].called_for}});
  }
  object["pictures"] = Json::array();
  for (const PictureRead& picture : drill.pictures) object["pictures"].push_back(picture_object(picture));
}

void add_details(const DeliveryDrill& drill, Json& object) {
  object["volumes"] = Json::array();
  for (const VolumeDelivered& volume : drill.volumes) {
    object["volumes"].push_back({{"asked", asked_text(volume.asked)},
                                 {"asked_cm3", volume.asked_cm3},
                                 {"delivered_cm3", number(volume.delivered_cm3)},
                                 {"hanging_cm3", volume.hanging_cm3},
                                 {"tick", volume.tick}});
  }
}

void add_details(const FillingDrill& drill, Json& object) {
  object["funnel_in"] = drill.funnel_in;
  object["on_scale"] = drill.on_scale;
  object["true_cm3"] = drill.true_cm3;
  object["seen_cm3"] = drill.apparent_cm3;
  object["written_cm3"] = number(drill.written_cm3);
  object["poured_cm3"] = drill.poured_cm3;
}

void add_details(const KnowingDrill& drill, Json& object) {
  object["pieces"] = Json::array();
  for (const PieceAsked& asked : drill.pieces) {
    Json wrong = Json::array();
    for (const Piece piece : asked.wrong) wrong.push_back(std::string(piece_name(piece)));
    object["pieces"].push_back({{"piece", std::string(piece_name(asked.piece))},
                                {"first_try", asked.first_try()},
                                {"found", asked.picked},
                                {"told", asked.told},
                                {"wrong", wrong},
                                {"has_use", !piece_use(asked.piece).empty()},
                                {"used", asked.used},
                                {"tick", asked.tick}});
  }
}

Json first_go_object(const FirstGo& first_go) {
  Json object;
  object["attempt"] = first_go.attempt_name;
  object["figures"] = Json::array();
  for (const FigureChange& change : first_go.changes) {
    object["figures"].push_back({{"figure", change.first.id},
                                 {"first", number(change.first.value)},
                                 {"now", number(change.second.value)},
                                 {"verdict", change.verdict}});
  }
  return object;
}

}  // namespace

Json drill_object(const DrillFigures& drill, const std::optional<FirstGo>& first_go) {
  Json object;
  object["kind"] = std::string(drill_name(kind_of(drill)));
  for (const DrillFigure& figure : key_figures(drill)) {
    object[figure.id] = number(figure.value);
    if (figure.id == "bias_cm3") object["bias_error_cm3"] = number(figure.error);
    if (figure.id == "sd_cm3") object["sd_error_cm3"] = number(figure.error);
  }
  std::visit([&](const auto& one) { add_details(one, object); }, drill);
  object["first_go"] = first_go ? first_go_object(*first_go) : Json(nullptr);
  return object;
}

}  // namespace halfdrop

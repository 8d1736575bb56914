// The keys of a level with a drill.

#include <array>
#include <cmath>

#include <nlohmann/json.hpp>

#include "game/level/level_fields.h"
#include "game/level/nearest.h"

namespace halfdrop {
namespace {

using std::string_view_literals::operator""sv;

constexpr std::array kKinds = {DrillKind::read_meniscus, DrillKind::deliver_exactly,
                               DrillKind::fill_without_air, DrillKind::know_apparatus};
constexpr std::string_view kOneDrop = "one drop", kHalfDrop = "half a drop";
constexpr NumberRange kVolume_cm3{0.5, 50.0};

/// What only a titration has.
constexpr std::array kOfATitration = {"titrant"sv,     "sample"sv,        "ratio"sv,     "dilution"sv,
                                      "aliquot_cm3"sv, "indicator"sv,     "endpoint"sv,  "flask"sv,
                                      "pipette"sv,     "accurate_runs"sv, "constants"sv, "calculation"sv};

void refuse(Fields& fields, std::string_view key, const std::string& why) {
  if (!fields.has(key)) return;
  static_cast<void>(fields.any(key));
  fields.fault(key, why);
}

std::optional<DrillKind> read_kind(Fields& drill) {
  std::string word;
  drill.text("kind", word, 80);
  if (word.empty()) return std::nullopt;
  std::vector<std::string_view> names;
  for (const DrillKind kind : kKinds) {
    if (word == drill_name(kind)) return kind;
    names.push_back(drill_name(kind));
  }
  drill.fault("kind",
              "expected \"read the meniscus\", \"deliver exactly\", \"fill without air\" or \"know your "
              "apparatus\", found " +
                  in_quotes(word) + did_you_mean(word, names));
  return std::nullopt;
}

void read_pictures(Fields& fields, Drill& drill) {
  fields.whole("pictures", drill.pictures, 10, 100);
  fields.number("to_cm3", drill.to_cm3, {0.01, 0.05}, Need::optional);
  if (drill.to_cm3 != 0.01 && drill.to_cm3 != 0.05)
    fields.fault("to_cm3", "expected 0.05 or 0.01, found " + number_text(drill.to_cm3));
}

std::optional<Delivery> read_delivery(const Json& entry, const std::string& place, FaultList& faults) {
  if (entry.is_string()) {
    const auto word = entry.get<std::string>();
    if (word == kOneDrop) return Delivery{Delivery::What::one_drop, 0.0};
    if (word == kHalfDrop) return Delivery{Delivery::What::half_drop, 0.0};
    faults.add(place, "expected a volume, \"one drop\" or \"half a drop\", found " + in_quotes(word));
  } else if (!entry.is_number()) {
    faults.add(place, "expected a volume, \"one drop\" or \"half a drop\", found " + type_in_words(entry));
  } else if (check_number(entry, kVolume_cm3, place, faults)) {
    return Delivery{Delivery::What::volume, entry.get<double>()};
  }
  return std::nullopt;
}

void read_deliveries(Fields& fields, Drill& drill, FaultList& faults) {
  const Json* const list = fields.array("deliver", 1, 8);
  for (std::size_t i = 0; list != nullptr && i < list->size(); ++i) {
    const auto one = read_delivery((*list)[i], pointer_to(fields.place_of("deliver"), i), faults);
    if (one) drill.deliveries.push_back(*one);
  }
  read_bands(fields, "drop_bands", drill.drop_bands, faults);
}

/// Points by size of error: of what the kind's own score is about.
void read_drill_bands(Fields& fields, DrillKind kind, Level& level, FaultList& faults) {
  if (kind == DrillKind::know_apparatus)
    return refuse(fields, "bands", "this drill has points of its own: leave this key out");
  const Json* const entry = fields.object("bands");
  if (entry == nullptr) return;
  Fields bands(*entry, fields.place_of("bands"), faults);
  if (kind == DrillKind::deliver_exactly) {
    read_bands(bands, "hand", level.hand_bands, faults);
    refuse(bands, "eye", "a drill in delivering is about the hand: leave this key out");
  } else {
    read_bands(bands, "eye", level.eye_bands, faults);
    refuse(bands, "hand", "this drill's bands are about the eye: leave this key out");
  }
  bands.finish();
}

}  // namespace

void read_drill_fields(Fields& fields, Level& level, FaultList& faults) {
  for (const std::string_view key : kOfATitration)
    refuse(fields, key, "a drill has no titration: leave this key out");
  level.titrant.label = "Water";
  level.accurate_runs = 0;
  read_burette_and_tap(fields, level, faults);
  level.drill.emplace();
  const Json* const entry = fields.object("drill");
  if (entry == nullptr) return static_cast<void>(fields.any("bands"));
  Fields drill(*entry, fields.place_of("drill"), faults);
  const std::optional<DrillKind> kind = read_kind(drill);
  if (!kind) return static_cast<void>(fields.any("bands"));
  level.drill->kind = *kind;
  if (*kind == DrillKind::read_meniscus) read_pictures(drill, *level.drill);
  if (*kind == DrillKind::deliver_exactly) read_deliveries(drill, *level.drill, faults);
  drill.finish();
  if (*kind == DrillKind::fill_without_air)
    read_filling(fields, level);
  else
    refuse(fields, "filling", "nothing is filled in this drill: leave this key out");
  read_drill_bands(fields, *kind, level, faults);
}

}  // namespace halfdrop

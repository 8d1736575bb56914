#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

#include "game/level/level_fields.h"
#include "game/level/nearest.h"
#include "game/level/shelf_names.h"
#include "game/level/standard_to_make.h"
#include "physics/burette/plug.h"
#include "physics/burette/tap.h"
#include "physics/units.h"

namespace halfdrop {
namespace {

/// The largest titre that the unknown's range can ask for, label values otherwise.
double largest_titre_cm3(const Level& level) {
  const double sample =
      level.unknown_in_flask ? level.sample.unknown_mol_dm3.high : level.sample.label_mol_dm3;
  const double titrant =
      level.unknown_in_flask ? level.titrant.label_mol_dm3 : level.titrant.unknown_mol_dm3.low;
  double takes_mol_dm3 = level.ratio * sample;
  if (level.then)
    takes_mol_dm3 = level.then->ratio * sample +
                    (level.then->beside ? level.then->beside->ratio * level.then->beside->mol_dm3.high : 0.0);
  return takes_mol_dm3 * level.aliquot_cm3 / titrant;
}

/// A second endpoint comes after the first, and its second unknown is one of an unknown's bottle.
void check_then(const Level& level, const std::string& place, FaultList& faults) {
  if (!level.then) return;
  if (level.then->ratio <= level.ratio)
    faults.add(
        place + "/then/ratio",
        "expected more than the first endpoint's, which it counts in: more than " + number_text(level.ratio));
  if (level.then->beside && !level.unknown_in_flask)
    faults.add(place + "/then/beside", "the sample is the standard: expected no unknown in it");
}

void check_titre(const Level& level, const std::string& place, FaultList& faults) {
  const double titre_cm3 = largest_titre_cm3(level);
  const std::string unknown =
      place + (level.unknown_in_flask ? "/sample/unknown_mol_dm3" : "/titrant/unknown_mol_dm3");
  if (titre_cm3 > level.burette.nominal_cm3) {
    faults.add(unknown, "the titre can come to " + number_text(titre_cm3) + " cm3, more than the burette's " +
                            number_text(level.burette.nominal_cm3) + " cm3");
  } else if (titre_cm3 + level.aliquot_cm3 > level.flask.capacity_cm3) {
    faults.add(unknown, "aliquot and titre can come to " + number_text(titre_cm3 + level.aliquot_cm3) +
                            " cm3, more than the flask's " + number_text(level.flask.capacity_cm3) + " cm3");
  }
}

/// Conical body and cylindrical neck, to the brim.
double brim_cm3(const FlaskSpec& flask) {
  const double base = flask.base_radius_cm, neck = flask.neck_radius_cm;
  const double body =
      (flask.height_cm - flask.neck_length_cm) * (base * base + base * neck + neck * neck) / 3.0;
  return kPi * (body + flask.neck_length_cm * neck * neck);
}

/// A wide part of sense between tap and narrow bore: no tube so wide that a bubble in it rises by itself.
void check_jet(const Level& level, const std::string& place, FaultList& faults) {
  constexpr double kBubbleRises_mm = 5.0;  // 2 x 0.918 capillary lengths of water (Bretherton 1961)
  if (level.tap.jet_narrow_mm >= level.burette.jet_length_mm)
    return faults.add(place + "/tap", "the jet's bore is as long as the jet: make jet_narrow_mm smaller");
  const JetSettled jet = settle_jet(level.burette, level.tap, LiquidFlow{});
  if (jet.narrow_cm3 >= level.burette.jet_cm3)
    faults.add(place + "/burette", "the jet's narrow bore alone holds " + number_text(jet.narrow_cm3) +
                                       " cm3: make jet_cm3 larger than that");
  else if (jet.wide_bore_mm > kBubbleRises_mm)
    faults.add(place + "/burette", "above its narrow bore the jet would be " + number_text(jet.wide_bore_mm) +
                                       " mm wide, and a bubble does not stay in more than 5 mm: make jet_cm3 "
                                       "smaller or jet_length_mm larger");
}

/// With the hand across, the plug as far behind it as play and sticking leave it, clean: nothing may pass.
bool shuts(TapSpec tap) {
  tap.grease_in_bore = 0.0;
  const double plug = plug_after(tap, 1.0, 0.0);
  return tap_opening(tap, plug).area_mm2 <= 0.0 && groove_opening(tap, plug).deep_mm <= 0.0;
}

void check_tap(const TapSpec& tap, const std::string& place, FaultList& faults) {
  if (tap.jet_bore_mm >= tap.tip_outer_mm)
    faults.add(place, "the jet's bore is as wide as its tip: make jet_bore_mm smaller than tip_outer_mm");
  if (tap.bore_mm >= tap.plug_mm)
    faults.add(place, "the bore is as wide as the plug: make bore_mm smaller than plug_mm");
  else if (!shuts(tap))
    faults.add(place, "turned across, the tap still passes liquid: make bore_mm smaller or plug_mm larger");
}

void check_burette(const Level& level, const std::string& place, FaultList& faults) {
  const BuretteSpec& tube = level.burette;
  const double bore_mm = std::sqrt(1000.0 * tube.nominal_cm3 / (kPi * tube.scale_length_mm));
  if (tube.outer_half_width_mm < 1.02 * bore_mm)
    faults.add(place + "/burette", "the bore's radius is " +
                                       number_text(std::round(100.0 * bore_mm) / 100.0) +
                                       " mm, which leaves no wall: make outer_half_width_mm larger");
  check_jet(level, place, faults);
  check_tap(level.tap, place + "/tap", faults);
}

void check_flask(const FlaskSpec& flask, const std::string& place, FaultList& faults) {
  if (flask.neck_radius_cm > flask.base_radius_cm)
    faults.add(place + "/flask", "the neck is wider than the base: make neck_radius_cm smaller");
  else if (flask.neck_length_cm >= flask.height_cm)
    faults.add(place + "/flask", "the neck is longer than the flask is high: make neck_length_cm smaller");
  else if (flask.capacity_cm3 > brim_cm3(flask))
    faults.add(place + "/flask",
               "capacity_cm3 is more than the flask's shape holds, " + number_text(brim_cm3(flask)) + " cm3");
}

/// What is to be delivered must be in the burette.
void check_deliveries(const Level& level, const std::string& place, FaultList& faults) {
  double sum_cm3 = kMostFilledBelowZero_cm3 + 1.0;  // and some drops
  for (const Delivery& delivery : level.drill->deliveries) sum_cm3 += delivery.volume_cm3;
  if (sum_cm3 > level.burette.nominal_cm3)
    faults.add(place + "/drill/deliver", "with a start of up to " + number_text(kMostFilledBelowZero_cm3) +
                                             " cm3 and some drops that comes to " + number_text(sum_cm3) +
                                             " cm3, more than the burette's " +
                                             number_text(level.burette.nominal_cm3) + " cm3");
}

/// Finds a name on a shelf; a fault at `place` when it is not there.
template <class T>
const Shelved<T>* look_up(const Shelf<T>& shelf, const std::string& name, const std::string& place,
                          FaultList& faults) {
  const Shelved<T>* const entry = find_on(shelf, name);
  if (entry == nullptr) faults.add(place, unknown_on(shelf, name));
  return entry;
}

/// A bottle may not ask for more than dissolves, or than the pure liquid holds.
void check_strength(const LiquidSpec& liquid, const Substance& substance, bool unknown,
                    const std::string& place, FaultList& faults) {
  const double strongest_mol_dm3 = unknown ? liquid.unknown_mol_dm3.high : liquid.label_mol_dm3;
  if (can_be_made(substance, strongest_mol_dm3)) return;
  faults.add(place + (unknown ? "/unknown_mol_dm3/1" : "/mol_dm3"),
             strongest_in_words(substance) + ", found " + number_text(strongest_mol_dm3));
}

/// What an attempt carries of the shelf: each thing once, in the order in which it came.
class Carried {
 public:
  void add(const std::string& name, const std::string& json) {
    if (std::find(names_.begin(), names_.end(), name) != names_.end()) return;
    names_.push_back(name);
    members_ += (members_.empty() ? "" : ",") + json_text(Json(name)) + ":" + json;
  }
  [[nodiscard]] std::string json() const { return "{" + members_ + "}"; }

 private:
  std::vector<std::string> names_;
  std::string members_;
};

/// The shelf's substances for what stands beside a bottle's own.
void take_beside(const Assets& assets, const std::string& place, LiquidSpec& liquid, Carried& carried,
                 FaultList& faults) {
  for (std::size_t i = 0; i < liquid.also.size(); ++i) {
    Beside& beside = liquid.also[i];
    const std::string here = pointer_to(place + "/also", i);
    const auto* const found = look_up(assets.substances, beside.substance.name, here + "/substance", faults);
    if (found == nullptr) continue;
    beside.substance = found->value;
    carried.add(found->value.name, found->json);
    if (!can_be_made(beside.substance, beside.mol_dm3))
      faults.add(here + "/mol_dm3",
                 strongest_in_words(beside.substance) + ", found " + number_text(beside.mol_dm3));
  }
}

/// What the flask is titrated on with.
void take_then(const Assets& assets, const std::string& place, TitratedOn& then, Carried& carried,
               FaultList& faults) {
  const auto* const indicator = look_up(assets.indicators, then.indicator, place + "/indicator", faults);
  if (indicator != nullptr) {
    then.indicator_data = indicator->value;
    then.indicator = indicator->value.name;
    carried.add(indicator->value.name, indicator->json);
  }
  if (!then.beside) return;
  const auto* const found =
      look_up(assets.substances, then.beside->name, place + "/beside/substance", faults);
  if (found == nullptr) return;
  then.beside->substance = found->value;
  then.beside->name = found->value.name;
  carried.add(found->value.name, found->json);
  if (!can_be_made(found->value, then.beside->mol_dm3.high))
    faults.add(place + "/beside/unknown_mol_dm3/1",
               strongest_in_words(found->value) + ", found " + number_text(then.beside->mol_dm3.high));
}

}  // namespace

void check_level(const Level& level, const std::string& place, FaultList& faults) {
  check_burette(level, place, faults);
  if (level.drill) return check_deliveries(level, place, faults);
  check_calculation(level, place, faults);
  check_then(level, place, faults);
  check_titre(level, place, faults);
  check_flask(level.flask, place, faults);
}

void take_from_shelf(const Assets& assets, const std::string& place, Level& level, FaultList& faults) {
  if (level.drill) {
    level.substances_json = "{}";
    return;
  }
  const auto substance = [&](const std::string& name, const std::string& key) {
    return look_up(assets.substances, name, place + key, faults);
  };
  const auto* const titrant = substance(level.titrant.substance, "/titrant/substance");
  const auto* const sample = substance(level.sample.substance, "/sample/substance");
  const auto* const indicator = look_up(assets.indicators, level.indicator, place + "/indicator", faults);
  if (titrant == nullptr || sample == nullptr || indicator == nullptr) return;
  Carried carried;
  carried.add(titrant->value.name, titrant->json);
  carried.add(sample->value.name, sample->json);
  take_beside(assets, place + "/titrant", level.titrant, carried, faults);
  take_beside(assets, place + "/sample", level.sample, carried, faults);
  carried.add(indicator->value.name, indicator->json);
  if (level.then) take_then(assets, place + "/then", *level.then, carried, faults);
  level.substances_json = carried.json();
  level.titrant_substance = titrant->value;
  level.sample_substance = sample->value;
  level.indicator_data = indicator->value;
  level.titrant.substance = titrant->value.name;
  level.sample.substance = sample->value.name;
  level.indicator = indicator->value.name;
  check_strength(level.titrant, titrant->value, !level.unknown_in_flask, place + "/titrant", faults);
  check_strength(level.sample, sample->value, level.unknown_in_flask, place + "/sample", faults);
  check_standard(level, place, faults);
}

}  // namespace halfdrop

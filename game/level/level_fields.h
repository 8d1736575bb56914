#pragma once
// A level's JSON object into a Level, key by key, and the checks that join several keys. Internal to
// game/level.

#include <string>

#include "game/level/assets.h"
#include "game/level/level.h"
#include "game/level/mean_titre.h"

namespace halfdrop {

inline constexpr std::size_t kLongestId = 80;

/// A level file takes its id from its name; in an attempt the id travels in the level itself.
enum class IdPlace { file_name, in_level };

/// Reads every key; faults below `place`. Does not look up substances.
void read_level_fields(const Json& json, IdPlace id, const std::string& place, Level& level,
                       FaultList& faults);

/// The rest of a level with a `drill`: its kind and values, glass and bands, and a fault for every key that
/// makes no sense in it. Common keys (title ... temperature) are read already.
void read_drill_fields(Fields& fields, Level& level, FaultList& faults);
/// Burette and tap; in an exercise flask and pipette too.
void read_burette_and_tap(Fields& fields, Level& level, FaultList& faults);
/// The optional rule of how the burette is filled.
void read_filling(Fields& fields, Level& level);
void read_bands(Fields& fields, std::string_view key, std::vector<Band>& bands, FaultList& faults);

/// A drill in delivering starts with its burette filled to between the zero mark and this.
inline constexpr double kMostFilledBelowZero_cm3 = 1.0;

/// What joins several keys: titres that fit the burette and the flask, names of factors, glass that fits
/// together. For a level whose keys had no fault.
void check_level(const Level& level, const std::string& place, FaultList& faults);

/// The working alone: names of factors, and that the player is told every constant.
void check_calculation(const Level& level, const std::string& place, FaultList& faults);

/// Puts the substances and the indicator a level names into it, and their text into level.substances_json.
void take_from_shelf(const Assets& assets, const std::string& place, Level& level, FaultList& faults);

}  // namespace halfdrop

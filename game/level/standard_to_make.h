#pragma once
// A level's standard that the player weighs out and makes up: key "weighed_standard".

#include <optional>
#include <string>

#include "game/level/fields.h"
#include "game/level/level.h"

namespace halfdrop {

void read_standard(Fields& fields, Level& level, FaultList& faults);
/// What joins it with the standard's own bottle. For a level whose keys had no fault, substances looked up.
void check_standard(const Level& level, const std::string& place, FaultList& faults);

/// The bottle of known strength.
[[nodiscard]] const LiquidSpec& standard_of(const Level& level);
/// mol/dm3 that so much of it makes in the level's flask. Precondition: the level has a standard to make.
[[nodiscard]] double standard_mol_dm3(const Level& level, double mass_g);

/// Bottle, solid, flask and balance for a seed.
[[nodiscard]] PreparationSpec drawn_preparation(const Level& level, std::uint64_t seed);

/// The flask's volume and the two weighings, by the names that calculation steps use.
[[nodiscard]] std::optional<double> standard_value(const Level& level, const std::string& name);

/// The level, its label as these weighings make it.
[[nodiscard]] Level as_weighed(Level level, double before_g, double after_g);

}  // namespace halfdrop

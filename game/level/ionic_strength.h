#pragma once
// Where a level's or a curve's solutions are too strong for the activity model.

#include <optional>
#include <string>
#include <vector>

#include "game/level/level.h"

namespace halfdrop {

/// What to say of a solution beyond kDaviesLimit_mol_dm3; nothing within it.
[[nodiscard]] std::optional<std::string> beyond_davies(double ionic_strength_mol_dm3);

/// For a level that was read without a fault: its bottles, the unknown at its strongest, and the flask at
/// equivalence. Carbonate in old alkali is left out.
[[nodiscard]] std::vector<Fault> warnings_of_ionic_strength(const Level& level, const std::string& file);

}  // namespace halfdrop

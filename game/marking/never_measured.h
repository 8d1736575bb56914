#pragma once
// Figures that no burette can have shown: written with nothing in it, or with nothing run out between them.

#include <optional>
#include <string>

#include "game/marking/evidence.h"

namespace halfdrop {

/// Why this run's figures were never read off the bench, as half a sentence; nothing when they may have been.
/// `evidence` may be null.
[[nodiscard]] std::optional<std::string> never_measured(const RunReadings& readings,
                                                        const RunEvidence* evidence);

}  // namespace halfdrop

#pragma once

#include <string>

#include "game/marking/own_uncertainty.h"

namespace halfdrop {

/// For a person at a terminal: the result with its uncertainty, what perfect hands could have got, and a row
/// for each quantity, the largest share first.
[[nodiscard]] std::string uncertainty_text(const OwnUncertainty& own);

}  // namespace halfdrop

#pragma once
// Whether a level's titration has an endpoint, and an indicator that shows it: what its chemicals say, not
// its keys.

#include <string>
#include <vector>

#include "game/level/level.h"

namespace halfdrop {

struct EndpointChecks {
  std::vector<Fault> faults;    ///< the level cannot be titrated as it says
  std::vector<Fault> warnings;  ///< it can, but that may not be meant
};

/// For a level that was read without a fault; the unknown is taken in the middle of its range.
[[nodiscard]] EndpointChecks check_endpoint(const Level& level, const std::string& file);

}  // namespace halfdrop

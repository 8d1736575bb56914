#pragma once

#include <string_view>

#include "game/marking/titre_breakdown.h"

namespace halfdrop {

/// A cause of the titre breakdown as a teacher would say it: "Air in the jet".
[[nodiscard]] std::string_view cause_title(Cause cause);
/// The same where it is known which way the cause pushed the titre: "Endpoint passed" where it raised it.
[[nodiscard]] std::string_view cause_title(Cause cause, double cm3);

}  // namespace halfdrop

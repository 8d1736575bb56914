#pragma once
// What is to be said of an indicator in a titration, in the words of `curve` and of `check`.

#include <string>
#include <vector>

#include "physics/flask/visible_change.h"

namespace halfdrop {

/// "25.00 cm3".
[[nodiscard]] std::string where(double volume_cm3);

/// "its endpoint shows at 24.50 cm3, 0.50 cm3 before the nearest equivalence, at 25.00 cm3", and from where
/// to where it is gradual, if it is.
[[nodiscard]] std::string endpoint_in_words(const VisibleChange& change);

/// That the indicator does not fit, or that the change which fits best is gradual; empty where there is
/// nothing to warn of. `changes` are the titration's own. Precondition: the titration has an indicator.
[[nodiscard]] std::string warning_about(const Titration& titration,
                                        const std::vector<VisibleChange>& changes);

}  // namespace halfdrop

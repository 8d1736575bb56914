#pragma once
// The parts of the catalogue.

#include <span>

#include "game/demonstrator/mistakes.h"

namespace halfdrop {

[[nodiscard]] std::span<const Mistake> mistakes_of_reading();
/// Of record and arithmetic.
[[nodiscard]] std::span<const Mistake> mistakes_on_paper();
[[nodiscard]] std::span<const Mistake> mistakes_of_safety();
/// Of making up a standard.
[[nodiscard]] std::span<const Mistake> mistakes_of_making_up();
/// With a pipette that is worked by hand.
[[nodiscard]] std::span<const Mistake> mistakes_of_pipetting();
/// Where a flask has two endpoints.
[[nodiscard]] std::span<const Mistake> mistakes_of_two_endpoints();

}  // namespace halfdrop

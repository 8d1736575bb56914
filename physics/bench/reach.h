#pragma once
// Where the flask cannot be: through the beaker, through the jet, so high that the jet dips into its liquid.
// Left out: liquid that rises to the jet while it is washed in, and the hand that tilts a flask past the jet,
// so that from the side it slides under it unhindered.

#include <optional>

#include "physics/bench/deeds.h"

namespace halfdrop {

/// What stands in the way of the flask on the straight way from where it is to a place (as Hands::flask_x_cm
/// and flask_y_cm); nothing when there is room all the way. Lowering it is never refused for the jet's sake.
[[nodiscard]] std::optional<Refusal> in_the_way_of_flask(const BenchSpec& spec, const BenchState& state,
                                                         double x_cm, double y_cm);

}  // namespace halfdrop

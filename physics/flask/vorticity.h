#pragma once
// Vorticity that goes along with a flow: omega over the depth stays what it is, wherever the flow takes it.

#include <span>

#include "physics/flask/stream_function.h"

namespace halfdrop {

/// One step. `passes`: stream function in the middle of each cell (at j * stride + i) times the step's
/// duration, cm3. `vorticity`: at the nodes; those on the sides only give to what flows past them. Explicit,
/// of second order where it is smooth (sweby.h).
void carry_vorticity(const FlowBox& box, std::span<const float> passes, std::span<float> vorticity);

}  // namespace halfdrop

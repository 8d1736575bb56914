#pragma once
// Drops in the air as rigid bodies: falling past, into and along the glass. The only file that knows Box2D,
// which moves circles and never owns a volume. A drop that nothing is near falls freely, and ends on a level
// surface where its underside meets it. For one that could touch anything else in a tick, a world is built
// from the state and thrown away after it: no warm starts, so a copied state goes on as its original does.
//
// Drops are circles of their own volume that do not turn; liquid that meets a neck from inside clings there,
// a drop beside the glass slides off it without friction. Leaves out: air drag, splash, drops meeting drops,
// and what a flask does that is snatched away between two ticks (a drop then falls where it was).

#include <array>
#include <optional>

#include "physics/bench/bench_state.h"

namespace halfdrop {

struct BenchSpec;

/// Where a falling drop ended in this tick; nothing while it flies on.
using Landings = std::array<std::optional<Account>, kMostFalling>;

/// One tick of flight. Changes only places and speeds of the drops that fly; they stay multiples of
/// kFlightGrain.
[[nodiscard]] Landings fly(const BenchSpec& spec, BenchState& state);

/// Grain of a drop's place (cm) and speed (cm/s).
inline constexpr double kFlightGrain = 0x1p-14;

/// Radius of a sphere of that volume.
[[nodiscard]] double drop_radius_cm(double volume_cm3);

}  // namespace halfdrop

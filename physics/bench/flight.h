#pragma once
// Drops between the tip and where they land: the account's side of it. How they move is rigid_world's.

#include "physics/bench/ledger.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;

/// Lets a parcel of the hanging drop go, downwards. Precondition: the pendant drop holds it.
void let_go(const BenchSpec& spec, BenchState& state, Parcel drop, double speed_cm_s);
/// One tick of falling; what arrives is moved to where it lands.
void fall(const BenchSpec& spec, BenchState& state);
/// Where a drop that hangs at the jet now would end as things stand.
[[nodiscard]] Account under_the_jet(const BenchSpec& spec, const BenchState& state);

}  // namespace halfdrop

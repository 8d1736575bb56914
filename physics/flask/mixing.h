#pragma once
// The flask's liquid in two zones, where drops land and the rest, which exchange liquid at a rate set by
// swirling; and what the wash bottle takes down from the wall. Flow inside the zones is left out.

#include "physics/bench/ledger.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;

/// Both zones together: what the flask would be if it were mixed.
[[nodiscard]] Parcel flask_liquid(const Ledger& ledger);

/// Share of the landing zone renewed each second. Rises with the square of the swirl, as the kinetic energy
/// does.
[[nodiscard]] double exchange_per_s(const BenchSpec& spec, double swirl);

/// One tick of exchange between the zones.
void mix(const BenchSpec& spec, BenchState& state, double swirl);
/// One tick of washing down: water in, taking along what clings to the wall.
void wash_down(const BenchSpec& spec, BenchState& state, double wash);
/// Keeps the landing zone at its size: what is more goes into the rest, what lacks comes from it (a drop that
/// falls in meets liquid with indicator at once: the flash). What is more than the flask holds goes over its
/// rim.
void settle_zones(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

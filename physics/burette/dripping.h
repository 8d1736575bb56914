#pragma once
// At the tip: liquid hangs, a drop too large to hang necks and falls, a quick flow leaves as a stream.
// A stream's liquid flies in packets of kPacketTicks of flow, each for a few of the drops that it breaks into
// (stream_drop_cm3). Left out: satellites, the chaos of drop sizes just below the stream's flow, the swing of
// a drop that stays.

#include "physics/bench/ledger.h"
#include "physics/units.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;

inline constexpr Tick kPacketTicks = 3;

/// One tick: `volume` comes out of the jet at `flow_cm3_s`. Precondition: the jet holds it. Both may be 0:
/// what necks goes on necking when the tap is shut.
void drip(const BenchSpec& spec, BenchState& state, Quanta volume, double flow_cm3_s);

}  // namespace halfdrop

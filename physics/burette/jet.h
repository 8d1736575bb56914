#pragma once
// From the column through tap and jet to the tip: the jet fills first, then it drips (dripping.h).
// While the jet holds air, all that comes through the tap replaces air; partial clearing is left out.
// When the column is empty the jet drains through an open tap and takes air.

namespace halfdrop {

struct BenchSpec;
struct BenchState;

/// cm3/s through the tap as it stands; 0 when there is nothing to flow.
[[nodiscard]] double tap_flow_cm3_s(const BenchSpec& spec, const BenchState& state, double tap);

/// One tick of flow.
void run_jet(const BenchSpec& spec, BenchState& state, double tap);

}  // namespace halfdrop

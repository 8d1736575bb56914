#pragma once
// From the column through tap and jet to the tip, and the air that the jet may hold: one slug in its wide
// part, with liquid above it, under the tap, and below it, at the tip.
//
// What comes through the tap first runs down the wall past the air, a falling film after Nusselt. Is the film
// thinner than 0.12 of the bore's radius, it stays one (Gauglitz and Radke, J. Colloid Interface Sci. 134
// (1990) 14): it fills the narrow bore at the bottom, and from then on as much leaves at the tip as comes in,
// while the air stays under the tap. From 0.12 on the film closes over: what comes in is a plug that drives
// the air before it and out at the tip. A bubble that fills a bore of less than 1.84 capillary lengths (5.0
// mm in water) does not rise by itself (Bretherton, J. Fluid Mech. 10 (1961) 166): it waits for a quicker
// flow, or for a flick, after which it goes along with any flow for a second (our own estimate).
// When the column is empty the jet drains through an open tap and takes air.
// Left out: bubbles much smaller than the bore, what a passing slug leaves on the wall or spits at the tip,
// that gravity hinders the closing over, the air's own resistance.

#include "physics/units.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;
struct BuretteSpec;
struct LiquidFlow;
struct TapSpec;

/// What follows of a jet's measures.
struct JetSettled {
  double narrow_cm3 = 0.0;         ///< the narrow bore above the tip
  double wide_bore_mm = 0.0;       ///< of the rest, from the tap down
  double closes_over_cm3_s = 0.0;  ///< from this flow on liquid drives air before it
};
/// Preconditions: the jet is longer than its narrow bore and holds more.
[[nodiscard]] JetSettled settle_jet(const BuretteSpec& burette, const TapSpec& tap, const LiquidFlow& liquid);

/// Share of the wide part that the falling film of a flow takes up, 0..1.
[[nodiscard]] double film_share(const JetSettled& jet, const LiquidFlow& liquid, double flow_cm3_s);

/// How long a flicked bubble goes along with any flow.
inline constexpr Tick kFlickFrees = kTicksPerSecond;

/// Air in tap and jet, cm3.
[[nodiscard]] double jet_air_cm3(const BenchSpec& spec, const BenchState& state);

/// cm3/s through the tap with its plug at a position; 0 when there is nothing to flow. Air in
/// the jet takes its length off the head, and a dry narrow bore does not resist.
[[nodiscard]] double tap_flow_cm3_s(const BenchSpec& spec, const BenchState& state, double plug);

/// What of it leaves at the tip, cm3/s: the rest fills the jet.
[[nodiscard]] double tip_flow_cm3_s(const BenchSpec& spec, const BenchState& state, double plug);

/// One tick of flow.
void run_jet(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

#pragma once
// Flow through tap and jet: head against capillary, viscous, entrance and kinetic losses.

namespace halfdrop {

struct TapSpec;

/// Opening of two equal bores out of line.
struct Opening {
  double area_mm2 = 0.0;
  double hydraulic_mm = 0.0;  ///< 4 area / perimeter
};

/// Overlap of plug and barrel at a tap position (0 across .. 1 in line).
[[nodiscard]] Opening tap_opening(const TapSpec& tap, double position);

/// The filed groove where it passes the barrel's edge.
struct Groove {
  double deep_mm = 0.0;    ///< depth there; 0: it does not reach the barrel's bore
  double length_mm = 0.0;  ///< a passage of this length with that section resists as the tapering groove does
};
[[nodiscard]] Groove groove_opening(const TapSpec& tap, double position);

struct LiquidFlow {
  double density_kg_m3 = 998.2;
  double viscosity_pa_s = 1.0e-3;
  double surface_tension_n_m = 0.0727;
};

/// cm3/s through tap and jet under a head of liquid in mm above the tip; 0 when shut or when the head does
/// not overcome the drop's capillary pressure. Of the jet's narrow bore that share is wet: air there does not
/// resist. Solves a Q + b Q^2 = p: laminar friction and kinetic loss (1.5 velocity heads where the plug's
/// bore begins and where it ends, in the jet up to 2.24, a capillary's, as its profile develops). At either
/// end of the plug groove and bore lie side by side: their conductances add in the viscous and in the kinetic
/// limit, which is exact in both. Grease narrows bore and groove alike. Dilute aqueous solutions are taken as
/// water. Leaves out: surge when the tap is turned, seepage past the plug.
[[nodiscard]] double flow_cm3_s(const TapSpec& tap, const LiquidFlow& liquid, double position, double head_mm,
                                double narrow_wet = 1.0);

}  // namespace halfdrop

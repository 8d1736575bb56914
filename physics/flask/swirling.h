#pragma once
// What a hand does that moves the flask in circles. The turning itself is not resolved: the plane of the flow
// holds the upright axis. One number stands for it, how fast the liquid turns, and from it follow
// - the secondary flow of a stirred cup: the bottom slows the turning, a laminar layer sqrt(nu / Omega)
//   thick drifts inwards there, rises in the middle and goes out again above (Ekman's transport, half the
//   layer times the speed); it carries what is dissolved, not a drop's eddies, which the turning soon breaks
//   up;
// - eddies that spread what is dissolved, and shear about the axis that spreads it across;
// - the power dissipated per mass, for engulfment;
// - how long it goes on turning: depth / sqrt(nu Omega), Ekman's spin-down (Greenspan and Howard, J. Fluid
//   Mech. 17 (1963) 385; from memory).
// The formulas give the form; four factors are set so that hard swirling mixes 50 cm3 to 95 % in a few
// seconds (bench experience, no source). Left out: the surface's dip. The wave that runs round is in
// sloshing.h.

#include <span>
#include <vector>

#include "physics/flask/flow.h"
#include "physics/flask/grid.h"

namespace halfdrop {

/// How fast the liquid turns at most (our own estimate; the hand goes round faster, see sloshing.h).
inline constexpr double kHardest_rad_s = 7.0;

/// How fast it turns after so long, from the hand's swirl (0 to 1). Stops for good below 1 % of the hardest.
[[nodiscard]] double spin_after(double spin_rad_s, double swirl, double depth_cm, double radius_cm,
                                double duration_s);

/// cm2/s: of eddies, for momentum and what is dissolved; and of the shear, across.
[[nodiscard]] double eddies_cm2_s(double spin_rad_s, double radius_cm);
[[nodiscard]] double shear_cm2_s(double spin_rad_s, double radius_cm);
/// Rate of strain squared, 1/s2, that stands for the power dissipated: epsilon / nu.
[[nodiscard]] double swirl_strain2_per_s2(double spin_rad_s, double radius_cm, double viscosity_cm2_s);
/// Stream function of the secondary flow at the box's nodes, cm3/s; empty without spin.
[[nodiscard]] std::vector<float> secondary_flow(const FlowBox& box, double spin_rad_s);

}  // namespace halfdrop

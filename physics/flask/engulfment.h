#pragma once
// How titrant that has just come in meets the liquid around it: the engulfment model of micromixing (Baldyga
// and Bourne, Chem. Eng. Commun. 28 (1984) 243; as Turbulent Mixing and Chemical Reactions, Wiley 1999; both
// from memory). Eddies near the smallest fold liquid in from around, so that a parcel and what it has taken
// in grow e-fold in 1/E,
//   E = 0.058 sqrt(epsilon / nu),  epsilon: power dissipated per mass.
// Here in two stages: fresh titrant with as much again of its surroundings, then with 15 times as much, then
// mixed with its cell. Each stage is left at E / ln 8. In a laminar flow epsilon / nu is the square of the
// rate of strain, and the same is used. Left out: that single parcels differ, and diffusion within an eddy,
// which is quick in water.

#include <span>

#include "physics/flask/transport.h"

namespace halfdrop {

inline constexpr double kEngulfed = 0.058;
/// Diffusion alone does what so slow a strain would: 0.02 per second, a sheet nearly a millimetre thick (pi^2
/// D / d^2; our own estimate).
inline constexpr float kStillStrain2_per_s2 = 0.12F;
/// Volumes of titrant and surroundings to one of titrant.
inline constexpr double kFreshDilution = 2.0, kMeetingDilution = 16.0;

/// Eddies of a drop's impact use up its energy in about this time, throughout the liquid (our own estimate).
inline constexpr double kImpactLasts_s = 0.5;
/// Rate of strain squared, 1/s2, that stands for the power they use up: epsilon / nu.
[[nodiscard]] double impact_strain2_per_s2(double impact_erg, double volume_cm3, double viscosity_cm2_s);

/// E, 1/s, from the rate of strain squared (1/s2) that a cell sees.
[[nodiscard]] double engulfment_per_s(double strain2_per_s2);

/// Moves titrant from stage to stage for so long. `strain2`: 1/s2, by cell.
void engulf(std::span<const float> strain2, double duration_s, CellField& fresh, CellField& meeting,
            CellField& mixed);

}  // namespace halfdrop

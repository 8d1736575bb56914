#pragma once
// What hangs at a wetted tip: how much falls, how much stays, how long it takes to neck, and from which flow
// on no drop hangs at all.

namespace halfdrop {

struct LiquidFlow;

/// cm3 of the drop that lets go of a tip that feeds it slowly (Tate's law with Harkins and Brown's factor,
/// Heertjes' 1971 fit, valid for r/V^(1/3) of 0.3 to 1.2).
[[nodiscard]] double drop_volume_cm3(double tip_diameter_mm, double density_kg_m3,
                                     double surface_tension_n_m);

/// From the moment a drop is too large to hang until it is off, s: sqrt(density V / tension), the time in
/// which surface tension moves such a volume (dimensions only; its factor is taken as 1). What flows in
/// meanwhile falls with the drop.
[[nodiscard]] double necking_s(double drop_cm3, const LiquidFlow& liquid);

/// A round, straight tip.
struct TipBore {
  double inner_mm = 0.7, outer_mm = 3.0;
};
/// The flow, cm3/s, at which dripping turns into a stream: Clanet and Lasheras, J. Fluid Mech. 383 (1999)
/// 307, K = 0.37 for water in air; closed form from memory.
[[nodiscard]] double stream_from_cm3_s(const TipBore& bore, const LiquidFlow& liquid);
/// Drops that a stream breaks into: one for each fastest growing wave, 4.508 diameters long (Rayleigh).
[[nodiscard]] double stream_drop_cm3(const TipBore& bore);

}  // namespace halfdrop

#pragma once

namespace halfdrop {

/// Ionic strength above which the Davies equation misbehaves and activity coefficients are held constant.
inline constexpr double kDaviesLimit_mol_dm3 = 0.5;

/// log10 of the Davies activity coefficient of an ion of charge z, the ionic strength clamped to the limit.
/// log g = -A z^2 (sqrt(I)/(1+sqrt(I)) - 0.3 I), A = 0.5092 + (t - 25) 8.5e-4 (Yao and Byrne 2001).
[[nodiscard]] double davies_log10_gamma(int charge, double ionic_strength_mol_dm3, double temperature_c);
/// The same for a charge of 1 from the square root of the ionic strength, and its slope along that root (0
/// beyond the limit).
struct DaviesAtRoot {
  double log10_gamma = 0.0, slope = 0.0;
};
[[nodiscard]] DaviesAtRoot davies_at_root(double root_strength, double temperature_c);

}  // namespace halfdrop

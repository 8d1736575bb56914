#pragma once

namespace halfdrop {

/// log10 of the Davies activity coefficient of an ion of charge z. Ionic strength is clamped to 0.5 mol/dm3,
/// above which the equation misbehaves.
/// log g = -A z^2 (sqrt(I)/(1+sqrt(I)) - 0.3 I), A = 0.5092 + (t - 25) 8.5e-4 (Yao and Byrne 2001).
double davies_log10_gamma(int charge, double ionic_strength_mol_dm3, double temperature_c);

}  // namespace halfdrop

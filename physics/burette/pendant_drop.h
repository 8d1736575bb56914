#pragma once

namespace halfdrop {

/// cm3 of the drop that lets go of a tip (Tate's law with Harkins and Brown's factor, Heertjes' 1971 fit,
/// valid for r/V^(1/3) of 0.3 to 1.2). Slow growth; what stays behind at the tip is left out (0).
[[nodiscard]] double drop_volume_cm3(double tip_diameter_mm, double density_kg_m3,
                                     double surface_tension_n_m);

}  // namespace halfdrop

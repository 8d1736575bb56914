#include "physics/burette/pendant_drop.h"

#include "physics/elementary.h"
#include "physics/units.h"

namespace halfdrop {

double drop_volume_cm3(double tip_diameter_mm, double density_kg_m3, double surface_tension_n_m) {
  const double radius_m = tip_diameter_mm * 0.5e-3;
  const double tate_m3 = 2.0 * kPi * radius_m * surface_tension_n_m / (density_kg_m3 * kGravity_m_s2);
  double volume_m3 = 0.65 * tate_m3;
  for (int i = 0; i < 40; ++i) {
    const double x = radius_m / elementary::cube_root(volume_m3);
    const double f = 1.0 / (2.0 * kPi * (0.14782 + 0.27896 * x - 0.1662 * x * x));
    volume_m3 = 0.5 * (volume_m3 + f * tate_m3);
  }
  return volume_m3 * 1e6;
}

}  // namespace halfdrop

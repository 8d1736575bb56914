#include "physics/burette/pendant_drop.h"

#include <cmath>

#include "physics/burette/tap.h"
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

double necking_s(double drop_cm3, const LiquidFlow& liquid) {
  return std::sqrt(liquid.density_kg_m3 * drop_cm3 * 1e-6 / liquid.surface_tension_n_m);
}

double stream_from_cm3_s(const TipBore& bore, const LiquidFlow& liquid) {
  constexpr double kWaterInAir = 0.37;
  const double weight = liquid.density_kg_m3 * kGravity_m_s2 / (2.0 * liquid.surface_tension_n_m);
  const double inner_m = bore.inner_mm * 1e-3, outer_m = bore.outer_mm * 1e-3;
  const double inner_bond = std::sqrt(weight) * inner_m, outer_bond = std::sqrt(weight) * outer_m;
  const double lift = 1.0 + kWaterInAir * inner_bond * outer_bond;
  const double recedes = lift - std::sqrt(lift * lift - 1.0);
  const double weber = 4.0 * outer_bond / inner_bond * recedes * recedes;
  const double speed_m_s = std::sqrt(weber * liquid.surface_tension_n_m / (liquid.density_kg_m3 * inner_m));
  return speed_m_s * kPi / 4.0 * inner_m * inner_m * 1e6;
}

double stream_drop_cm3(const TipBore& bore) {
  constexpr double kWave = 4.508;  // diameters
  const double inner_cm = bore.inner_mm * 0.1;
  return kPi / 4.0 * inner_cm * inner_cm * kWave * inner_cm;
}

}  // namespace halfdrop

#include "physics/flask/swirling.h"

#include <algorithm>
#include <cmath>

#include "physics/units.h"

namespace halfdrop {

namespace {

constexpr double kTakesUp_s = 0.6;  ///< until the liquid follows the hand (our own estimate)
constexpr double kStops = 0.01;
constexpr double kWater_cm2_s = 0.01;
/// In parts of Omega R^2 (our own; see the header).
constexpr double kEddies = 2.7e-3;
constexpr double kShear = 0.027;
/// Of Omega^3 R^2: 0.06 W/kg at the hardest, low among shaken flasks' 0.05 to 1 (from memory).
constexpr double kPower = 0.2;

}  // namespace

double spin_after(double spin_rad_s, double swirl, double depth_cm, double radius_cm, double duration_s) {
  const double wanted = kHardest_rad_s * swirl;
  if (wanted > spin_rad_s) return spin_rad_s + (wanted - spin_rad_s) * duration_s / (kTakesUp_s + duration_s);
  const double viscosity = kWater_cm2_s + eddies_cm2_s(spin_rad_s, radius_cm);
  const double per_s = std::sqrt(viscosity * spin_rad_s) / depth_cm;
  const double spin = std::max(spin_rad_s / (1.0 + per_s * duration_s), wanted);
  return spin < kStops * kHardest_rad_s && wanted == 0.0 ? 0.0 : spin;
}

double eddies_cm2_s(double spin_rad_s, double radius_cm) {
  return kEddies * spin_rad_s * radius_cm * radius_cm;
}
double shear_cm2_s(double spin_rad_s, double radius_cm) {
  return kShear * spin_rad_s * radius_cm * radius_cm;
}

double swirl_strain2_per_s2(double spin_rad_s, double radius_cm, double viscosity_cm2_s) {
  return kPower * spin_rad_s * spin_rad_s * spin_rad_s * radius_cm * radius_cm / viscosity_cm2_s;
}

// Half-way up it rises as w0 (1 - 2 r^2/R^2), which brings up w0 pi R^2 / 4 in all. Its mean along the chord
// at u = x/R is w0 (1 - 4 u^2) / 3, of which psi = -(2/3) R^2 w0 u (1 - u^2)^(3/2); in height it goes as 4 s
// (1 - s).
std::vector<float> secondary_flow(const FlowBox& box, double spin_rad_s) {
  if (spin_rad_s <= 0.0) return {};
  const double radius_cm = 0.5 * box.width_cm, arm_cm = 2.0 / 3.0 * radius_cm;
  const double layer_cm = std::sqrt(kWater_cm2_s / spin_rad_s);
  const double rises_cm3_s = 2.0 * kPi * arm_cm * 0.5 * layer_cm * spin_rad_s * arm_cm;
  const double fastest_cm_s = 4.0 * rises_cm3_s / (kPi * radius_cm * radius_cm);
  std::vector<float> psi(box.nodes());
  std::vector<double> across(box.columns + 1);
  for (std::size_t i = 0; i <= box.columns; ++i) {
    const double u = 2.0 * static_cast<double>(i) / static_cast<double>(box.columns) - 1.0;
    const double chord = half_chord(u);
    across[i] = -2.0 / 3.0 * radius_cm * radius_cm * fastest_cm_s * u * chord * chord * chord;
  }
  for (std::size_t j = 0; j <= box.rows; ++j) {
    const double s = static_cast<double>(j) / static_cast<double>(box.rows);
    for (std::size_t i = 0; i <= box.columns; ++i)
      psi[j * box.stride() + i] = static_cast<float>(across[i] * 4.0 * s * (1.0 - s));
  }
  return psi;
}

}  // namespace halfdrop

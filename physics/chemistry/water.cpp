#include "physics/chemistry/water.h"

#include <cmath>

#include "physics/elementary.h"

namespace halfdrop::water {
namespace {

constexpr double kZeroCelsius_k = 273.15;

}  // namespace

// IAPWS R11-07 with the density of Tanaka, extrapolated above 40 C (below 0.3 kg/m3 off at 60 C, 1e-4 in
// pKw).
double pkw(double temperature_c) {
  constexpr double kCoordination = 6.0;
  constexpr double kWater_g_mol = 18.015268;
  const double t = temperature_c + kZeroCelsius_k;
  const double rho = density_kg_m3(temperature_c) * 1e-3;
  const double rho_two_thirds = elementary::cube_root(rho * rho);
  const double q = rho * elementary::exp(-0.864671 + 8659.19 / t - 22786.2 / (t * t) * rho_two_thirds);
  const double gas = 6.141500e-1 + 4.825133e4 / t - 6.770793e4 / (t * t) + 1.010210e7 / (t * t * t);
  const double solvation =
      elementary::log10(1.0 + q) - q / (q + 1.0) * rho * (0.642044 - 56.8534 / t - 0.375754 * rho);
  return -2.0 * kCoordination * solvation + gas + 2.0 * elementary::log10(kWater_g_mol / 1000.0);
}

double density_kg_m3(double temperature_c) {
  const double t = temperature_c;
  const double from_maximum = t - 3.983035;
  return 999.974950 * (1.0 - from_maximum * from_maximum * (t + 301.797) / (522528.9 * (t + 69.34881)));
}

// Kestin, Sokolov and Wakeham 1978, relative to 1.002 mPa s at 20 C.
double viscosity_pa_s(double temperature_c) {
  const double below_20 = 20.0 - temperature_c;
  const double exponent =
      below_20 / (temperature_c + 96.0) * (1.2364 - 1.37e-3 * below_20 + 5.7e-6 * below_20 * below_20);
  return 1.002e-3 * elementary::exp10(exponent);
}

double surface_tension_n_m(double temperature_c) {
  constexpr double kCritical_k = 647.096;
  const double tau = 1.0 - (temperature_c + kZeroCelsius_k) / kCritical_k;
  return 0.2358 * elementary::exp(1.256 * elementary::log(tau)) * (1.0 - 0.625 * tau);
}

// IAPWS R9-97 eq. 1, with the density of Tanaka.
double refractive_index(double temperature_c) {
  constexpr double kWave = 589.3 / 589.0;
  constexpr double kWaveUv = 0.2292020, kWaveIr = 5.432937;
  constexpr double kSquare = kWave * kWave;
  const double rho = density_kg_m3(temperature_c) * 1e-3;
  const double t = (temperature_c + kZeroCelsius_k) / kZeroCelsius_k;
  const double per_density = 0.244257733 + 9.74634476e-3 * rho - 3.73234996e-3 * t +
                             2.68678472e-4 * kSquare * t + 1.58920570e-3 / kSquare +
                             2.45934259e-3 / (kSquare - kWaveUv * kWaveUv) +
                             0.900704920 / (kSquare - kWaveIr * kWaveIr) - 1.66626219e-2 * rho * rho;
  const double lorentz = per_density * rho;  // (n^2 - 1) / (n^2 + 2)
  return std::sqrt((1.0 + 2.0 * lorentz) / (1.0 - lorentz));
}

}  // namespace halfdrop::water

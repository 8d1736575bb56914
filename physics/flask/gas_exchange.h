#pragma once
// Carbon dioxide of the flask's liquid: to and from the air through the surface, and slowly into carbonate
// and back. It is why a first pink fades.
//
// Flux through the surface = K A (saturated - dissolved), 1/K = 1/(E kL) + A/G. kL, liquid side, from
// kStill_m_s to kSwirled_m_s with the square of the swirl; E, film_enhancement(); G, what the flask's neck
// lets through to the air above the liquid: diffusion, and what swirling renews (our own estimate). A step is
// exact for the K of its beginning. Left out: the air above the liquid getting poorer or richer (G stands for
// it), warm breath, gas bubbles, exchange in any other vessel, the rise of kL with temperature (about a tenth
// from 20 to 25 C); in a layer of alkali below a tenth of a millimetre, what turns into carbonate within a
// step.

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/chemistry/carbon_dioxide.h"
#include "physics/units.h"

namespace halfdrop {

/// Five times a second: slow beside mixing, quick beside fading.
inline constexpr Tick kGasTicks = 48;
inline constexpr double kGasStep_s = static_cast<double>(kGasTicks) * kSecondsPerTick;
/// Liquid at rest: 1.8 cm an hour, what floating chambers found on a small lake (Bade and Cole, J. Geophys.
/// Res. 111 (2006), k600 1.83 +- 0.33 cm/h).
inline constexpr double kStill_m_s = 5e-6;
/// Oxygen, swirled hard, taken as 200 turns a minute: 0.0056 s^-1 in 100 cm3 with 50 cm2 of surface (Maier
/// and others, shaken flasks; 100 turns a minute would give 5e-5).
inline constexpr double kSwirledOxygen_m_s = 1.1e-4;
/// Root of the two gases' diffusion coefficients (surface renewal): 1.91e-9 and, for oxygen, 2.00e-9 m2/s at
/// 25 C (Han and Bartels, J. Phys. Chem. 100 (1996) 5597).
inline constexpr double kSlowerThanOxygen = 0.977;
inline constexpr double kSwirled_m_s = kSlowerThanOxygen * kSwirledOxygen_m_s;

/// How many times faster carbon dioxide crosses the liquid's surface film, `diffusion_m2_s` / `film_m_s`
/// thick, because it turns into carbonate and back on its way. Reversible, first order, at the pH of the
/// liquid all through the film, carbonate diffusing as fast as carbon dioxide (Hoover and Berkshire,
/// J. Geophys. Res. 74 (1969) 456): tau / (tau - 1 + tanh(Qz)/(Qz)), tau = 1 + backward/forward,
/// (Qz)^2 = (forward + backward) D / kL^2. At least 1.
[[nodiscard]] double film_enhancement(const carbon_dioxide::Rates& rates, double film_m_s,
                                      double diffusion_m2_s);

/// One step of kGasTicks; does nothing in the ticks between.
void exchange_gas(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop

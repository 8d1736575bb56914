#pragma once

namespace halfdrop::water {

/// -log10 of the ion product of water at `temperature_c` (0 to 60 C), IAPWS R11-07 along saturation.
double pkw(double temperature_c);
/// kg/m3, Tanaka 2001, 0 to 40 C.
double density_kg_m3(double temperature_c);
/// Pa s, 5 to 40 C; within 1 % of IAPWS.
double viscosity_pa_s(double temperature_c);
/// N/m, IAPWS R1-76(2014).
double surface_tension_n_m(double temperature_c);
/// Of sodium light (589.3 nm) against vacuum, IAPWS R9-97, 0 to 40 C.
double refractive_index(double temperature_c);

}  // namespace halfdrop::water

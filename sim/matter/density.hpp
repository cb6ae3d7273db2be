#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::matter {

/// Density of air-free water, kg/m3, 0..150 °C: Kell, J. Chem. Eng. Data 20 (1975) 97, eq. 16.
[[nodiscard]] double water_density_kg_m3(double temperature_c);

/// Dynamic viscosity of liquid water at 0.1 MPa, mPa.s, 0..110 °C: IAPWS release SR6-08(2011), eq. 8 (within
/// 1 %).
[[nodiscard]] double water_viscosity_mpa_s(double temperature_c);

/// Surface tension of water against its vapour or air, mN/m, 0..370 °C: IAPWS release R1-76(2014).
[[nodiscard]] double water_surface_tension_mn_m(double temperature_c);

/// Density of the mixture at its temperature, kg/m3: water plus what each solute and solid adds by its
/// apparent volume (Young's rule), with the Debye-Hückel slope for ions. Volumes in the mixture are meant at
/// 20 °C; the solutes' share shrinks with temperature by a parabola. Within 0.0005 g/mL of published tables
/// up to 1 mol/L near room temperature.
[[nodiscard]] double density_kg_m3(const Mixture& mixture, const Catalogue& catalogue);

/// Share of the solutes' excess density at 20 °C that is left at another temperature: solutions expand more
/// than water. A parabola through sodium chloride 4 % (International Critical Tables, from memory), held past
/// its vertex near 56 °C. Fitted here, within 1 % of that table from 0 to 60 °C.
[[nodiscard]] double excess_share(double temperature_c);

} // namespace matula::matter

#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::matter {

/// Density of air-free water, kg/m3, 0..150 °C: Kell, J. Chem. Eng. Data 20 (1975) 97, eq. 16.
[[nodiscard]] double water_density_kg_m3(double temperature_c);

/// Dynamic viscosity of water, mPa.s, 0..100 °C.
[[nodiscard]] double water_viscosity_mpa_s(double temperature_c);

/// Density of the mixture from apparent molar volumes (Young's rule), kg/m3, at the mixture's temperature.
[[nodiscard]] double density_kg_m3(const Mixture& mixture, const Catalogue& catalogue);

} // namespace matula::matter

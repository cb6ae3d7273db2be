#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::matter {

/// Refractive index of water at 589.3 nm against air, 0..60 °C: IAPWS release R9-97 (Harvey and others 1998)
/// at the density of water_density_kg_m3, over 1.000273 for air.
[[nodiscard]] double water_index(double temperature_c);

/// Refractive index of the mixture's liquid at 589.3 nm against air, at its temperature, by the
/// Lorentz-Lorenz rule: molar refractions of water and of every dissolved substance add up in the volume the
/// density law gives. Grains do not count: they scatter. Water's when empty.
[[nodiscard]] double refractive_index(const Mixture& mixture, const Catalogue& catalogue);

/// Molar refraction, mL/mol, of a substance that raises the index of water at 20 °C by `per_g_per_l` for each
/// gram in a litre.
[[nodiscard]] double refraction_of(const Species& species, double per_g_per_l);

} // namespace matula::matter

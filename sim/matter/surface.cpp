#include "sim/matter/surface.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/density.hpp"

#include <algorithm>
#include <cmath>

namespace matula::matter {

namespace {

constexpr double full_film_mn_m = 45; // protein and bile salt films: 45-50, from memory

double pressure_mn_m(const SurfaceActivity& surface, double molar, double temperature_c) {
  constexpr double mn_m_per_umol_j = 1e-3;
  const double there =
      surface.saturation_mol_per_l > 0 ? std::min(molar, surface.saturation_mol_per_l) : molar;
  return mn_m_per_umol_j * nature::gas_constant_j_per_mol_k * (temperature_c + nature::zero_c_in_kelvin) *
         surface.excess_umol_per_m2 * std::log1p(there / surface.half_mol_per_l);
}

} // namespace

double surface_tension_mn_m(const Mixture& mixture, const Catalogue& catalogue) {
  const double water = water_surface_tension_mn_m(mixture.temperature_c);
  double sum = 0;
  double largest = water - full_film_mn_m;
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    const SurfaceActivity& surface = catalogue.species[i].surface;
    if (mixture.mmol[i] > 0 && surface.excess_umol_per_m2 > 0) {
      const double own = pressure_mn_m(surface, mixture.molar(i), mixture.temperature_c);
      sum += own;
      largest = std::max(largest, own);
    }
  }
  return water - std::min(sum, largest);
}

} // namespace matula::matter

#include "sim/matter/refraction.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/density.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace matula::matter {

namespace {

constexpr double air_index = 1.000273; // 589 nm, 15-20 °C, 101.3 kPa; Edlén 1966
constexpr double ml_per_l = 1000;
constexpr double g_per_ml_per_kg_m3 = 1e-3;

double lorentz_lorenz(double index) {
  const double square = index * index;
  return (square - 1) / (square + 2);
}

double index_from(double lorentz_lorenz_value) {
  return std::sqrt((1 + 2 * lorentz_lorenz_value) / (1 - lorentz_lorenz_value));
}

/// IAPWS R9-97: (n2 - 1)/(n2 + 2) of one g/mL of water, cm3/g, n against vacuum.
double specific_refraction(double g_per_ml, double temperature_c) {
  constexpr double lambda = 0.5893 / 0.589; // µm over the reference wavelength
  constexpr double uv = 0.2292020;
  constexpr double ir = 5.432937;
  constexpr std::array<double, 8> a{0.244257733,   9.74634476e-3, -3.73234996e-3, 2.68678472e-4,
                                    1.58920570e-3, 2.45934259e-3, 0.900704920,    -1.66626219e-2};
  constexpr double square = lambda * lambda;
  const double t = (temperature_c + nature::zero_c_in_kelvin) / nature::zero_c_in_kelvin;
  return a[0] + a[1] * g_per_ml + a[2] * t + a[3] * square * t + a[4] / square + a[5] / (square - uv * uv) +
         a[6] / (square - ir * ir) + a[7] * g_per_ml * g_per_ml;
}

/// Grams of water in a millilitre of the liquid between the grains.
double water_g_per_ml(const Mixture& mixture, const Catalogue& catalogue) {
  double grains_g = 0;
  double grains_ml = 0;
  for (const auto& [kind, population] : mixture.populations.present()) {
    const double grams = population.total_g();
    grains_g += grams;
    grains_ml += grams / (catalogue.particles[kind].solid_density_kg_m3 * g_per_ml_per_kg_m3);
  }
  const double whole_g = density_kg_m3(mixture, catalogue) * g_per_ml_per_kg_m3 * mixture.volume_ml;
  double solutes_g = 0;
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    solutes_g += mixture.mmol[i] / ml_per_l * catalogue.species[i].molar_mass_g_per_mol;
  }
  return (whole_g - grains_g - solutes_g) / std::max(mixture.volume_ml - grains_ml, 0.5 * mixture.volume_ml);
}

} // namespace

double water_index(double temperature_c) {
  const double g_per_ml = water_density_kg_m3(temperature_c) * g_per_ml_per_kg_m3;
  return index_from(g_per_ml * specific_refraction(g_per_ml, temperature_c)) / air_index;
}

double refractive_index(const Mixture& mixture, const Catalogue& catalogue) {
  const double pure = water_density_kg_m3(mixture.temperature_c) * g_per_ml_per_kg_m3;
  if (mixture.empty()) {
    return water_index(mixture.temperature_c);
  }
  // A gram of water refracts in a solution as it does pure at the same temperature.
  double sum = water_g_per_ml(mixture, catalogue) * specific_refraction(pure, mixture.temperature_c);
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    if (mixture.mmol[i] > 0) {
      const Species& species = catalogue.species[i];
      const double own = species.refraction_ml_per_mol.value_or(refraction_of(species, 0));
      sum += mixture.molar(i) * own / ml_per_l;
    }
  }
  return index_from(sum) / air_index;
}

double refraction_of(const Species& species, double per_g_per_l) {
  constexpr double reference_c = 20;
  const double n = water_index(reference_c) * air_index;
  const double slope = 6 * n / ((n * n + 2) * (n * n + 2)); // of the Lorentz-Lorenz value with the index
  return ml_per_l * slope * per_g_per_l * species.molar_mass_g_per_mol +
         lorentz_lorenz(n) * species.apparent_volume_ml_per_mol;
}

} // namespace matula::matter

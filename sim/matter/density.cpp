#include "sim/matter/density.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/products.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace matula::matter {

namespace {

constexpr double reference_c = 20.0;
constexpr double ml_per_l = 1000.0;
constexpr double kg_per_g_ml_to_m3 = 1000.0;

/// Apparent volumes of salts grow by 1.87 w sqrt(I) mL/mol near 25 °C, w half the sum of squared charges
/// (Debye and Hückel; Redlich and Meyer, Chem. Rev. 64 (1964) 221). The catalogue's volumes hold near an
/// ionic strength of 0.25 mol/L.
constexpr double limiting_slope = 1.87;
constexpr double catalogue_ionic_strength = 0.25;
constexpr double highest_ionic_strength =
    12.0; ///< Saturated ammonium sulphate; the law is not carried further.

/// mol/L of a base that stands free of its proton: what is left of all cations once every acid stronger than
/// the base has given up its own. NH4+ and OH- are NH3 and water.
double free_base_molar(const Mixture& mixture, const Tables::Base& base) {
  const double excess = sum_of_products(mixture.mmol, base.charge);
  return std::clamp(excess / mixture.volume_ml, 0.0, mixture.molar(base.id));
}

/// What the base's free form adds beyond what its ion would, g/mL times 1000.
double free_base_extra(const Mixture& mixture, const Tables::Base& base, double ion_volume,
                       double water_g_per_ml) {
  constexpr double proton_g_per_mol = 1.008;
  return free_base_molar(mixture, base) *
         (-proton_g_per_mol - (base.volume_ml_per_mol - ion_volume) * water_g_per_ml);
}

double dissolved_excess_g_per_ml(const Mixture& mixture, const Catalogue& catalogue, double water_g_per_ml) {
  std::optional<Tables> spare;
  const Tables& tables = tables_of(catalogue, spare);
  const Tables::Weights& weights = tables.weights;
  const double lift = sum_of_products(mixture.mmol, weights.lift_g_per_mol);
  const double squares = sum_of_products(mixture.mmol, weights.charge_squared);
  const double strength = std::min(0.5 * squares / mixture.volume_ml, highest_ionic_strength);
  const double growth = 0.5 * limiting_slope * (std::sqrt(strength) - std::sqrt(catalogue_ionic_strength));
  double sum = (lift - growth * squares * water_g_per_ml) / mixture.volume_ml;
  for (const Tables::Base& base : tables.bases) {
    const double ion_volume = weights.volume_ml_per_mol[base.id] + growth * weights.charge_squared[base.id];
    sum += mixture.mmol[base.id] > 0 ? free_base_extra(mixture, base, ion_volume, water_g_per_ml) : 0.0;
  }
  return sum / ml_per_l;
}

double suspended_excess_g_per_ml(const Mixture& mixture, const Catalogue& catalogue, double water_g_per_ml) {
  double sum = 0;
  for (const auto& [kind, population] : mixture.populations.present()) {
    const double solid_g_per_ml = catalogue.particles[kind].solid_density_kg_m3 / kg_per_g_ml_to_m3;
    sum += population.total_g() * (1 - water_g_per_ml / solid_g_per_ml);
  }
  return sum / mixture.volume_ml;
}

} // namespace

double water_density_kg_m3(double temperature_c) {
  const double t = temperature_c;
  const double numerator =
      999.83952 +
      t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
  return numerator / (1 + 16.879850e-3 * t);
}

double excess_share(double temperature_c) {
  constexpr double slope = 2.5e-3;
  constexpr double curvature = 3.5e-5;
  const double above = std::min(temperature_c - reference_c, slope / (2 * curvature));
  return 1 - slope * above + curvature * above * above;
}

double water_viscosity_mpa_s(double temperature_c) {
  constexpr double mpa_s_per_micro = 1e-3;
  const double log_reduced = std::log((temperature_c + nature::zero_c_in_kelvin) / 300.0);
  const auto power = [log_reduced](double exponent) { return std::exp(exponent * log_reduced); };
  return mpa_s_per_micro *
         (280.68 * power(-1.9) + 511.45 * power(-7.7) + 61.131 * power(-19.6) + 0.45903 * power(-40.0));
}

double water_surface_tension_mn_m(double temperature_c) {
  constexpr double critical_k = 647.096;
  const double tau = 1 - (temperature_c + 273.15) / critical_k;
  return 235.8 * std::pow(tau, 1.256) * (1 - 0.625 * tau);
}

double density_kg_m3(const Mixture& mixture, const Catalogue& catalogue) {
  const double water = water_density_kg_m3(mixture.temperature_c);
  if (mixture.empty()) {
    return water;
  }
  const double water_at_20 = water_density_kg_m3(reference_c) / kg_per_g_ml_to_m3;
  const double excess = dissolved_excess_g_per_ml(mixture, catalogue, water_at_20) +
                        suspended_excess_g_per_ml(mixture, catalogue, water_at_20);
  return water + kg_per_g_ml_to_m3 * excess * excess_share(mixture.temperature_c);
}

} // namespace matula::matter

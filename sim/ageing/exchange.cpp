#include "sim/ageing/exchange.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <cmath>

namespace matula::ageing {

namespace {

constexpr double standard_k = 298.15;

} // namespace

double air_water_ratio(const Volatile& row, double temperature_c) {
  const double t_k = temperature_c + nature::zero_c_in_kelvin;
  const double henry = row.henry_mol_m3_pa * std::exp(row.henry_k * (1 / t_k - 1 / standard_k));
  return 1 / (henry * nature::gas_constant_j_per_mol_k * t_k);
}

double exchange_m_s(const Volatile& row, const Air& air, double temperature_c) {
  const double water_m_s = air.water_um_s * 1e-6;
  const double gas_m_s = air.gas_mm_s * 1e-3;
  return 1 / (1 / water_m_s + 1 / (air_water_ratio(row, temperature_c) * gas_m_s));
}

double past_films(const std::vector<Film>& films, const matter::Mixture& mixture, double depth_mm) {
  constexpr double l_per_ml = 1e-3;
  double share = 1;
  for (const Film& film : films) {
    const double floating_molar = mixture.molar(film.species) - film.dissolves_mmol_per_l * 1e-3;
    const double ml_per_ml = std::max(0.0, floating_molar) * film.ml_per_mol * l_per_ml;
    share /= 1 + ml_per_ml * depth_mm / film.half_mm;
  }
  return share;
}

double volatile_share(const Volatile& row, double ph) {
  if (row.acid_pka) {
    return 1 / (1 + std::exp(nature::ln10 * (ph - *row.acid_pka)));
  }
  return row.base_pka ? 1 / (1 + std::exp(nature::ln10 * (*row.base_pka - ph))) : 1.0;
}

} // namespace matula::ageing

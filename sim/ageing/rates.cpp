#include "sim/ageing/rates.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <cmath>

namespace matula::ageing {

namespace {

constexpr double body_c = 37;
constexpr double best_c = 40; // Ratkowsky's plain law holds up to here.

double power10(double x) {
  return std::exp(nature::ln10 * x);
}

} // namespace

double growth_per_h(const Organism& organism, double temperature_c) {
  if (temperature_c <= organism.t_min_c || temperature_c >= organism.t_top_c) {
    return 0;
  }
  const double b = std::sqrt(organism.mu37_per_h) / (body_c - organism.t_min_c);
  const double root = b * (std::min(temperature_c, best_c) - organism.t_min_c);
  const double too_warm =
      std::clamp((organism.t_top_c - temperature_c) / (organism.t_top_c - best_c), 0.0, 1.0);
  return root * root * too_warm;
}

double ph_window(double ph, double centre, double width) {
  const double off = (ph - centre) / width;
  return std::max(0.0, 1 - off * off);
}

double act_share(const Act& act, double temperature_c, double growth_share) {
  if (!act.activation_kj_per_mol) {
    return growth_share;
  }
  constexpr double unfolds_from_c = 50; // and is dead by 60 °C: common for enzymes, from memory
  constexpr double dead_c = 60;
  const double alive = std::clamp((dead_c - temperature_c) / (dead_c - unfolds_from_c), 0.0, 1.0);
  const double inverse =
      1 / (temperature_c + nature::zero_c_in_kelvin) - 1 / (body_c + nature::zero_c_in_kelvin);
  return alive * std::exp(-*act.activation_kj_per_mol / nature::gas_constant_kj_per_mol_k * inverse);
}

double lysis_per_h(const Cell& cell, double ph, double specific_gravity, double temperature_c) {
  constexpr double sg_step = 0.010;
  double thin = (cell.sg_reference - specific_gravity) / sg_step;
  if (cell.only_below) {
    thin = std::max(0.0, thin);
  }
  const double decades = cell.decades_per_ph * (ph - cell.ph_reference) + cell.decades_per_0_010 * thin;
  const double warm = std::exp2((temperature_c - cell.t_reference_c) / cell.doubling_k);
  return cell.k_per_h * power10(decades) * warm + cell.acid_per_h / (1 + power10(2 * (ph - cell.acid_ph)));
}

bool holds_back(const Inhibitor& row, const std::string& what, const std::string& key) {
  return row.slows == what && std::find(row.spares.begin(), row.spares.end(), key) == row.spares.end();
}

double share_left(const Inhibitor& row, const matter::Mixture& mixture) {
  constexpr double mmol_per_mol = 1e3;
  double c = mixture.molar(row.species) * mmol_per_mol;
  if (row.at_most_mmol_per_l) {
    c = std::min(c, *row.at_most_mmol_per_l);
  }
  return c > 0 ? 1 / (1 + std::pow(c / row.half_mmol_per_l, row.power)) : 1.0;
}

} // namespace matula::ageing

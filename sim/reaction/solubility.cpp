#include "sim/reaction/solubility.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace matula::reaction {

namespace {

constexpr double standard_c = 25;
constexpr double largest_log10 = 12; // Beyond this, "soluble without limit".

double power10(double x) {
  return std::exp(nature::ln10 * std::min(x, largest_log10));
}
double square(double x) {
  return x * x;
}

double van_t_hoff(double enthalpy_kj, double temperature_c) {
  const double inverse =
      1 / (temperature_c + nature::zero_c_in_kelvin) - 1 / (standard_c + nature::zero_c_in_kelvin);
  return std::exp(-enthalpy_kj / nature::gas_constant_kj_per_mol_k * inverse);
}

/// ln of a constant against its value at 25 °C, with an enthalpy that grows with the temperature (E.C.W.
/// Clarke and D.N. Glew, Trans. Faraday Soc. 62 (1966) 539).
double log_drift(double enthalpy_kj, double heat_capacity_kj_per_k, double temperature_c) {
  const double ratio = (standard_c + nature::zero_c_in_kelvin) / (temperature_c + nature::zero_c_in_kelvin);
  return std::log(van_t_hoff(enthalpy_kj, temperature_c)) +
         heat_capacity_kj_per_k / nature::gas_constant_kj_per_mol_k * (ratio - 1 - std::log(ratio));
}

double log_limit(const Precipitation& row, double temperature_c) {
  return std::log(row.parameters[0]) + log_drift(row.parameters[1], row.parameters[2], temperature_c);
}

/// Solubility of the first species, mol/L, for the laws of one species.
double solubility_molar(const Precipitation& row, const matter::Mixture& mixture, const Conditions& now) {
  const std::vector<double>& p = row.parameters;
  if (row.law == "oxide") {
    return p[0] * (1 + power10(p[1] - now.ph));
  }
  if (row.law == "acid_protein") {
    const double agent = mixture.molar(static_cast<matter::SpeciesId>(p[4]));
    if (agent <= 0) {
      return std::numeric_limits<double>::infinity();
    }
    return p[0] * (1 + power10(p[3] * (now.ph - p[2]))) * (1 + p[1] / agent);
  }
  if (row.law == "isoelectric") {
    return p[0] * power10(square((now.ph - p[1]) / p[2]));
  }
  if (row.law == "hot_window") {
    const double off = now.temperature_c - p[1];
    const double warm = square(square(off / (off < 0 ? p[2] : p[3])));
    return p[0] * power10(warm + square((now.ph - p[4]) / p[5]));
  }
  return p[0] * van_t_hoff(p[2], now.temperature_c) * (1 + power10(now.ph - p[1])); // weak_acid
}

/// ln of the ion product once `formed` mol/L of solid has left the solution.
double log_product(const Precipitation& row, const matter::Mixture& mixture,
                   const matter::Catalogue& catalogue, const Conditions& now, double formed) {
  double sum = 0;
  for (std::size_t i = 0; i < row.formula.size(); ++i) {
    const auto& [id, count] = row.formula[i];
    const double left = mixture.molar(id) - count * formed;
    if (left <= 0) {
      return -std::numeric_limits<double>::infinity();
    }
    const double lost = row.parameters[3 + i];
    const double form = lost < 0
                            ? 1.0
                            : matter::form_fraction(catalogue.species[id], static_cast<std::size_t>(lost),
                                                    now.ph, now.log_gamma);
    sum += count * std::log(left * form);
  }
  return sum;
}

double ion_product_distance(const Precipitation& row, const matter::Mixture& mixture,
                            const matter::Catalogue& catalogue, const Conditions& now, double solid_molar) {
  const double limit = log_limit(row, now.temperature_c);
  const bool forming = log_product(row, mixture, catalogue, now, 0) > limit;
  if (!forming && solid_molar <= 0) {
    return 0;
  }
  double low = -solid_molar;
  double high = 0;
  if (forming) {
    low = 0;
    high = std::numeric_limits<double>::infinity();
    for (const auto& [id, count] : row.formula) {
      high = std::min(high, mixture.molar(id) / count);
    }
  } else if (log_product(row, mixture, catalogue, now, low) <= limit) {
    return low;
  }
  constexpr int halvings = 40; // 1e-12 of the range.
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    (log_product(row, mixture, catalogue, now, middle) > limit ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

/// Langmuir's rest between solution and carrier: n = H K c/(1 + K c) with c + n fixed.
double carried_distance(const Precipitation& row, const matter::Mixture& mixture, const Conditions& now,
                        double solid_molar) {
  const std::vector<double>& p = row.parameters;
  const double carrier_g = mixture.populations[static_cast<matter::ParticleId>(p[3])].total_g();
  const double room = p[1] * carrier_g / mixture.volume_ml * 1000; // mol/L
  const double strength = p[0] / (1 + power10(p[2] - now.ph));
  const double all = mixture.molar(row.formula.front().first) + solid_molar;
  const double b = 1 + strength * (all + room);
  // The smaller root, written so that nothing cancels.
  const double held = 2 * strength * room * all /
                      (b + std::sqrt(std::max(0.0, b * b - 4 * strength * strength * room * all)));
  return held - solid_molar;
}

} // namespace

int parameter_count(std::string_view law, std::size_t formula_length) {
  if (law == "oxide") {
    return 2;
  }
  if (law == "carried") {
    return 4;
  }
  if (law == "acid_protein") {
    return 5;
  }
  if (law == "isoelectric" || law == "weak_acid") {
    return 3;
  }
  if (law == "hot_window") {
    return 6;
  }
  return law == "ion_product" ? 3 + static_cast<int>(formula_length) : -1;
}

bool may_form(const Precipitation& row, const matter::Mixture& mixture) {
  const std::vector<double>& p = row.parameters;
  const double c = mixture.molar(row.formula.front().first);
  if (row.law == "ion_product") {
    double product = 1;
    for (const auto& [id, count] : row.formula) {
      const double total = mixture.molar(id);
      product *= count == 1 ? total : std::pow(total, count);
    }
    return product > 0 && std::log(product) > log_limit(row, mixture.temperature_c);
  }
  if (row.law == "carried") {
    return c > 0 && !mixture.populations[static_cast<matter::ParticleId>(p[3])].empty();
  }
  if (row.law == "acid_protein") {
    return c > p[0] && mixture.molar(static_cast<matter::SpeciesId>(p[4])) > 0;
  }
  if (row.law == "weak_acid") {
    return c > p[0] * van_t_hoff(p[2], mixture.temperature_c);
  }
  return c > p[0];
}

double distance_to_rest(const Precipitation& row, const matter::Mixture& mixture,
                        const matter::Catalogue& catalogue, const Conditions& now, double solid_molar) {
  if (row.law == "ion_product") {
    return ion_product_distance(row, mixture, catalogue, now, solid_molar);
  }
  if (row.law == "carried") {
    return carried_distance(row, mixture, now, solid_molar);
  }
  const auto& [id, count] = row.formula.front();
  const double excess = (mixture.molar(id) - solubility_molar(row, mixture, now)) / count;
  return std::max(excess, -solid_molar);
}

} // namespace matula::reaction

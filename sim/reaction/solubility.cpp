#include "sim/reaction/solubility.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/ph.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

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
double solubility_molar(const SolidLaw& of, const matter::Mixture& mixture, const Conditions& now) {
  const std::vector<double>& p = of.row->parameters;
  switch (of.law) {
  case Solubility::oxide:
    return p[0] * (1 + power10(p[1] - now.ph));
  case Solubility::acid_protein: {
    const double agent = mixture.molar(static_cast<matter::SpeciesId>(p[4]));
    if (agent <= 0) {
      return std::numeric_limits<double>::infinity();
    }
    return p[0] * (1 + power10(p[3] * (now.ph - p[2]))) * (1 + p[1] / agent);
  }
  case Solubility::isoelectric:
    return p[0] * power10(square((now.ph - p[1]) / p[2]));
  case Solubility::hot_window: {
    const double off = now.temperature_c - p[1];
    const double warm = square(square(off / (off < 0 ? p[2] : p[3])));
    return p[0] * power10(warm + square((now.ph - p[4]) / p[5]));
  }
  default:
    return p[0] * of.warm * (1 + power10(now.ph - p[1])); // weak_acid
  }
}

/// The ions of a solid: how many of each, how much there is and the share of it in the form that counts.
struct Ions {
  static constexpr std::size_t most = 8;
  std::array<double, most> count;
  std::array<double, most> molar;
  std::array<double, most> form;
  std::size_t size = 0;
};

Ions ions_of(const Precipitation& row, const matter::Mixture& mixture, const matter::Catalogue& catalogue,
             const Conditions& now) {
  Ions ions;
  for (const auto& [id, count] : row.formula) {
    if (ions.size == Ions::most) {
      break;
    }
    const double lost = row.parameters[3 + ions.size];
    ions.count[ions.size] = count;
    ions.molar[ions.size] = mixture.molar(id);
    ions.form[ions.size] = lost < 0
                               ? 1.0
                               : matter::form_fraction(catalogue.species[id], static_cast<std::size_t>(lost),
                                                       now.ph, now.log_gamma);
    ++ions.size;
  }
  return ions;
}

/// ln of the ion product once `formed` mol/L of solid has left the solution.
double log_product(const Ions& ions, double formed) {
  double sum = 0;
  for (std::size_t i = 0; i < ions.size; ++i) {
    const double left = ions.molar[i] - ions.count[i] * formed;
    if (left <= 0) {
      return -std::numeric_limits<double>::infinity();
    }
    sum += ions.count[i] * std::log(left * ions.form[i]);
  }
  return sum;
}

double ion_product_distance(const SolidLaw& of, const matter::Mixture& mixture,
                            const matter::Catalogue& catalogue, const Conditions& now, double solid_molar) {
  const Ions ions = ions_of(*of.row, mixture, catalogue, now);
  const double limit = of.log_limit;
  const bool forming = log_product(ions, 0) > limit;
  if (!forming && solid_molar <= 0) {
    return 0;
  }
  double low = -solid_molar;
  double high = 0;
  if (forming) {
    low = 0;
    high = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < ions.size; ++i) {
      high = std::min(high, ions.molar[i] / ions.count[i]);
    }
  } else if (log_product(ions, low) <= limit) {
    return low;
  }
  constexpr int halvings = 40; // 1e-12 of the range.
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    (log_product(ions, middle) > limit ? low : high) = middle;
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

Solubility solubility_named(std::string_view law) {
  constexpr std::array<std::pair<std::string_view, Solubility>, 6> names{{
      {"oxide", Solubility::oxide},
      {"acid_protein", Solubility::acid_protein},
      {"isoelectric", Solubility::isoelectric},
      {"hot_window", Solubility::hot_window},
      {"ion_product", Solubility::ion_product},
      {"carried", Solubility::carried},
  }};
  const auto* found =
      std::find_if(names.begin(), names.end(), [law](const auto& name) { return name.first == law; });
  return found == names.end() ? Solubility::weak_acid : found->second;
}

SolidLaw solid_law(const Precipitation& row, Solubility law, double temperature_c) {
  SolidLaw of{&row, law, 1, 0};
  if (law == Solubility::ion_product) {
    of.log_limit = log_limit(row, temperature_c);
  } else if (law == Solubility::weak_acid) {
    of.warm = van_t_hoff(row.parameters[2], temperature_c);
  }
  return of;
}

bool may_form(const SolidLaw& of, const matter::Mixture& mixture) {
  const std::vector<double>& p = of.row->parameters;
  const double c = mixture.molar(of.row->formula.front().first);
  switch (of.law) {
  case Solubility::ion_product: {
    double product = 1;
    for (const auto& [id, count] : of.row->formula) {
      const double total = mixture.molar(id);
      product *= count == 1 ? total : std::pow(total, count);
    }
    return product > 0 && std::log(product) > of.log_limit;
  }
  case Solubility::carried:
    return c > 0 && !mixture.populations[static_cast<matter::ParticleId>(p[3])].empty();
  case Solubility::acid_protein:
    return c > p[0] && mixture.molar(static_cast<matter::SpeciesId>(p[4])) > 0;
  case Solubility::weak_acid:
    return c > p[0] * of.warm;
  default:
    return c > p[0];
  }
}

double distance_to_rest(const SolidLaw& of, const matter::Mixture& mixture,
                        const matter::Catalogue& catalogue, const Conditions& now, double solid_molar) {
  if (of.law == Solubility::ion_product) {
    return ion_product_distance(of, mixture, catalogue, now, solid_molar);
  }
  if (of.law == Solubility::carried) {
    return carried_distance(*of.row, mixture, now, solid_molar);
  }
  const auto& [id, count] = of.row->formula.front();
  const double excess = (mixture.molar(id) - solubility_molar(of, mixture, now)) / count;
  return std::max(excess, -solid_molar);
}

double distance_to_rest(const Precipitation& row, const matter::Mixture& mixture,
                        const matter::Catalogue& catalogue, const Conditions& now, double solid_molar) {
  return distance_to_rest(solid_law(row, solubility_named(row.law), now.temperature_c), mixture, catalogue,
                          now, solid_molar);
}

} // namespace matula::reaction

#include "sim/reaction/breakdown.hpp"

#include "sim/matter/ph.hpp"
#include "sim/optics/nature.hpp"

#include <algorithm>
#include <cmath>

namespace matula::reaction {

namespace {

double power10(double x) {
  return std::exp(nature::ln10 * x);
}

double by_heat_per_s(const Breakdown& row, double temperature_c) {
  return row.heat_d_s > 0
             ? nature::ln10 / row.heat_d_s * power10((temperature_c - row.heat_at_c) / row.heat_z_k)
             : 0;
}

double by_thinness_per_s(const Breakdown& row, const matter::Mixture& mixture) {
  if (row.thin_per_s <= 0) {
    return 0;
  }
  double mmol = 0;
  for (const double each : mixture.mmol) {
    mmol += each;
  }
  for (const matter::SpeciesId id : row.passes_skin) {
    mmol -= mixture.mmol[id];
  }
  const double ratio = std::max(0.0, mmol) / mixture.volume_ml / row.thin_half_mol_per_l;
  return row.thin_per_s / (1 + std::pow(ratio, row.thin_power));
}

double by_breaker_per_s(const Breaker& breaker, const matter::Mixture& mixture,
                        const matter::Catalogue& catalogue, double ph) {
  double c = mixture.molar(breaker.species);
  if (c <= 0) {
    return 0;
  }
  c *= breaker.acid_form ? matter::form_fraction(catalogue.species[breaker.species], 0, ph) : 1;
  const double strength = std::pow(c / breaker.half_mol_per_l, breaker.power);
  return breaker.per_s * strength / (1 + strength);
}

double left_by_fixing(const Breakdown& row, const matter::Mixture& mixture) {
  double left = 1;
  for (const auto& [id, half] : row.fixed_by) {
    const double ratio = mixture.molar(id) / half;
    left /= 1 + ratio * ratio;
  }
  return left;
}

/// How many of the population are left when only `kept` of each class stays.
double number_left(const matter::Population& population, const matter::ParticleKind& kind, double kept) {
  double number = 0;
  for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
    number += population.grams[bin] > 0 ? kept * population.grams[bin] / kind.bin_mass_g(bin) : 0;
  }
  return number;
}

} // namespace

bool needs_ph(const Breakdown& row) {
  return row.acid_per_s > 0 || std::any_of(row.breakers.begin(), row.breakers.end(),
                                           [](const Breaker& each) { return each.acid_form; });
}

double breakdown_per_s(const Breakdown& row, const matter::Mixture& mixture,
                       const matter::Catalogue& catalogue, double ph) {
  if (mixture.empty()) {
    return 0;
  }
  double per_s = by_heat_per_s(row, mixture.temperature_c) + by_thinness_per_s(row, mixture);
  constexpr double steepness = 2; // Decades a pH.
  per_s += row.acid_per_s > 0 ? row.acid_per_s / (1 + power10(steepness * (ph - row.acid_ph))) : 0;
  for (const Breaker& breaker : row.breakers) {
    per_s += by_breaker_per_s(breaker, mixture, catalogue, ph);
  }
  return per_s * left_by_fixing(row, mixture);
}

void break_down(const Breakdown& row, matter::Mixture& mixture, const matter::Catalogue& catalogue,
                double per_s, double seconds) {
  constexpr double mmol_per_mol = 1000;
  constexpr double fewest = 1e-3;
  if (row.becomes) {
    (void)mixture.populations.of(*row.becomes); // Put in first: references do not outlive a newcomer.
  }
  matter::Population& whole = mixture.populations.of(row.kind);
  double kept = std::exp(-per_s * seconds);
  if (kept < 1 && number_left(whole, catalogue.particles[row.kind], kept) < fewest) {
    kept = 0;
  }
  double broken_g = 0;
  const auto take = [&](double& grams, double* into) {
    const double gone = (1 - kept) * grams;
    grams = kept > 0 ? grams - gone : 0;
    broken_g += gone;
    if (into != nullptr) {
      *into += gone;
    }
  };
  matter::Population* dead = row.becomes ? &mixture.populations.of(*row.becomes) : nullptr;
  for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
    take(whole.grams[bin], dead != nullptr ? &dead->grams[bin] : nullptr);
  }
  take(whole.clot_g, dead != nullptr ? &dead->clot_g : nullptr);
  for (const auto& [id, per_g] : row.releases) {
    mixture.mmol[id] += broken_g * per_g / catalogue.species[id].molar_mass_g_per_mol * mmol_per_mol;
  }
}

} // namespace matula::reaction

#include "sim/reaction/rate.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace matula::reaction {

namespace {

constexpr double ln10 = 2.302585092994046;
constexpr double kelvin = 273.15;
constexpr double gas_constant_kj = 8.314462618e-3; // kJ/mol/K, CODATA 2018.

double rate_of(const MassAction& law, const matter::Mixture& mixture, double ph) {
  double rate = 1;
  for (const auto& [species, order] : law.orders) {
    const double c = mixture.molar(species);
    if (c <= 0) {
      return 0;
    }
    rate *= order == 1 ? c : std::pow(c, order);
  }
  for (const auto& [species, half] : law.saturation) {
    const double c = mixture.molar(species);
    if (c <= 0) {
      return 0;
    }
    rate *= c / (c + half);
  }
  for (const auto& [species, half] : law.inhibitors) {
    rate *= half / (half + mixture.molar(species));
  }
  rate *= law.k.at(mixture.temperature_c);
  if (law.acid_pka) {
    rate /= 1 + std::exp(ln10 * (ph - *law.acid_pka));
  }
  if (law.base_pka) {
    rate /= 1 + std::exp(ln10 * (*law.base_pka - ph));
  }
  return law.oh_order == 0 ? rate : rate * std::exp(ln10 * law.oh_order * (ph - law.reference_ph));
}

double rate_of(const SaturatingReduction& law, const matter::Mixture& mixture, double ph) {
  const double substrate = mixture.molar(law.substrate);
  const double partner = mixture.molar(law.partner);
  if (substrate <= 0 || partner <= 0) {
    return 0;
  }
  return law.k.at(mixture.temperature_c) * substrate * partner / (partner + law.half_mol_per_l) *
         std::exp(ln10 * (ph - law.reference_ph));
}

} // namespace

double Arrhenius::at(double temperature_c) const {
  const double inverse = 1 / (temperature_c + kelvin) - 1 / (reference_c + kelvin);
  return k_ref * std::exp(-activation_kj_per_mol / gas_constant_kj * inverse);
}

double rate_molar_per_s(const Reaction& reaction, const matter::Mixture& mixture, double ph) {
  return std::visit([&](const auto& law) { return rate_of(law, mixture, ph); }, reaction.law);
}

double largest_extent_molar(const Reaction& reaction, const matter::Mixture& mixture) {
  double largest = std::numeric_limits<double>::infinity();
  for (const auto& [species, change] : reaction.changes) {
    if (change < 0) {
      largest = std::min(largest, mixture.molar(species) / -change);
    }
  }
  return largest;
}

bool needs_ph(const Reaction& reaction) {
  const auto* mass_action = std::get_if<MassAction>(&reaction.law);
  return mass_action == nullptr || mass_action->oh_order != 0 || mass_action->acid_pka ||
         mass_action->base_pka;
}

void apply(const Reaction& reaction, double extent_molar, matter::Mixture& mixture) {
  const double mmol = extent_molar * mixture.volume_ml;
  for (const auto& [species, change] : reaction.changes) {
    mixture.mmol[species] = std::max(0.0, mixture.mmol[species] + change * mmol);
  }
}

} // namespace matula::reaction

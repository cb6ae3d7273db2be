#include "sim/reaction/rate.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace matula::reaction {

namespace {

double rate_of(const MassAction& law, double constant, const matter::Mixture& mixture, double ph) {
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
  rate *= constant;
  if (law.acid_pka) {
    rate /= 1 + std::exp(nature::ln10 * (ph - *law.acid_pka));
  }
  if (law.base_pka) {
    rate /= 1 + std::exp(nature::ln10 * (*law.base_pka - ph));
  }
  return law.oh_order == 0 ? rate : rate * std::exp(nature::ln10 * law.oh_order * (ph - law.reference_ph));
}

double rate_of(const SaturatingReduction& law, double constant, const matter::Mixture& mixture, double ph) {
  const double substrate = mixture.molar(law.substrate);
  const double partner = mixture.molar(law.partner);
  if (substrate <= 0 || partner <= 0) {
    return 0;
  }
  return constant * substrate * partner / (partner + law.half_mol_per_l) *
         std::exp(nature::ln10 * (ph - law.reference_ph));
}

} // namespace

double Arrhenius::at(double temperature_c) const {
  const double inverse =
      1 / (temperature_c + nature::zero_c_in_kelvin) - 1 / (reference_c + nature::zero_c_in_kelvin);
  return k_ref * std::exp(-activation_kj_per_mol / nature::gas_constant_kj_per_mol_k * inverse);
}

double exposed_share(const Reaction& reaction, const Exposure& exposure) {
  const double lit = 1 - reaction.light_share + reaction.light_share * exposure.light;
  return reaction.oxygen > 0 ? lit * exposure.air : lit;
}

double constant_at(const Reaction& reaction, double temperature_c) {
  return std::visit([&](const auto& law) { return law.k.at(temperature_c); }, reaction.law);
}

double rate_with(const Reaction& reaction, double constant, const matter::Mixture& mixture, double ph) {
  if (const auto* law = std::get_if<MassAction>(&reaction.law)) {
    return rate_of(*law, constant, mixture, ph);
  }
  return rate_of(std::get<SaturatingReduction>(reaction.law), constant, mixture, ph);
}

double rate_molar_per_s(const Reaction& reaction, const matter::Mixture& mixture, double ph,
                        const Exposure& exposure) {
  return exposed_share(reaction, exposure) *
         rate_with(reaction, constant_at(reaction, mixture.temperature_c), mixture, ph);
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

#include "sim/appearance/dissolved.hpp"

#include "sim/matter/ph.hpp"

#include <cmath>
#include <numbers>
#include <optional>

namespace matula::appearance {

namespace {

constexpr double mm_per_cm = 10;

void add(optics::Spectrum& to, const optics::Spectrum& what, double times) {
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    to[i] += times * what[i];
  }
}

double base_share(const matter::Species& species, const matter::Acidity& acidity) {
  if (species.indicator_pka) {
    return 1 / (1 + std::exp(std::numbers::ln10 * (*species.indicator_pka - acidity.ph)));
  }
  return matter::form_fraction(species, species.pka.size(), acidity.ph, acidity.log_gamma);
}

} // namespace

optics::Spectrum dissolved_absorption(const matter::Mixture& mixture, const matter::Catalogue& catalogue) {
  optics::Spectrum sum{};
  std::optional<matter::Acidity> acidity; // Asked for only where an indicator needs it.
  for (matter::SpeciesId id = 0; id < mixture.mmol.size(); ++id) {
    const double per_mm = std::numbers::ln10 * mixture.molar(id) / mm_per_cm;
    if (!(per_mm > 0)) {
      continue;
    }
    const matter::Species& species = catalogue.species[id];
    if (!species.indicator) {
      add(sum, species.absorptivity_l_per_mol_cm, per_mm);
      continue;
    }
    if (!acidity) {
      acidity = matter::acidity(mixture, catalogue);
    }
    const double base = base_share(species, *acidity);
    add(sum, species.absorptivity_l_per_mol_cm, per_mm * (1 - base));
    add(sum, species.base_absorptivity_l_per_mol_cm, per_mm * base);
  }
  return sum;
}

} // namespace matula::appearance

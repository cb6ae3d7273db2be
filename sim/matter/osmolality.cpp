#include "sim/matter/osmolality.hpp"

#include "sim/matter/density.hpp"
#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>

namespace matula::matter {

namespace {

constexpr double mmol_per_mol = 1000;
constexpr double g_per_kg = 1000;

// Pitzer's equation at 25 °C. The second pair is the mean of sodium chloride (0.0765, 0.2664) and potassium
// chloride (0.0484, 0.2122), K.S. Pitzer and G. Mayorga, J. Phys. Chem. 77 (1973) 2300, from memory: in urine
// they stand about half and half with ammonium, which is near potassium.
constexpr double debye_huckel = 0.392;
constexpr double closest_approach = 1.2;
constexpr double pair_always = 0.0625;
constexpr double pair_dilute = 0.2393;
constexpr double highest_strength = 3; ///< mol/kg; the constants are not carried further.

/// What is dissolved in a kilogram of water.
struct Particles {
  double count = 0;    ///< mol, charged or not.
  double cations = 0;  ///< mol of charge.
  double anions = 0;   ///< mol of charge.
  double strength = 0; ///< Ionic strength, mol/kg.
};

/// Mean of the squared charge of one molecule over its forms; the mean charge where copies of a group make
/// the forms too many.
double squared_charge(const Species& species, double ph, double log_gamma) {
  if (species.buffer_groups > 1) {
    return std::abs(mean_charge(species, ph)); // Each charge of a protein counts as an ion of its own.
  }
  double sum = 0;
  for (std::size_t lost = 0; lost <= species.pka.size(); ++lost) {
    const double z = species.protonated_charge - static_cast<double>(lost);
    sum += z * z * form_fraction(species, lost, ph, log_gamma);
  }
  return sum;
}

Particles particles_of(const Mixture& mixture, const Catalogue& catalogue) {
  const Acidity acid = acidity(mixture, catalogue);
  const double water_g = water_g_per_ml(mixture, catalogue) * mixture.volume_ml;
  Particles sum;
  for (SpeciesId id = 0; id < mixture.mmol.size(); ++id) {
    const Species& species = catalogue.species[id];
    if (mixture.mmol[id] <= 0) {
      continue;
    }
    const double molal = mixture.mmol[id] / mmol_per_mol / (water_g / g_per_kg);
    sum.count += molal;
    const double z = mean_charge(species, acid.ph);
    (z > 0 ? sum.cations : sum.anions) += std::abs(z) * molal;
    sum.strength += 0.5 * molal * squared_charge(species, acid.ph, acid.log_gamma);
  }
  return sum;
}

} // namespace

double water_g_per_ml(const Mixture& mixture, const Catalogue& catalogue) {
  if (mixture.empty()) {
    return 0;
  }
  const double whole = density_kg_m3(mixture, catalogue) / g_per_kg;
  constexpr double driest = 0.05;
  return std::max(driest, whole - solute_mass_g(mixture, catalogue) / mixture.volume_ml);
}

double osmolality_mosm_per_kg(const Mixture& mixture, const Catalogue& catalogue) {
  if (mixture.empty()) {
    return 0;
  }
  const Particles sum = particles_of(mixture, catalogue);
  const double strength = std::min(sum.strength, highest_strength);
  const double root = std::sqrt(strength);
  const double held_back = 2 * debye_huckel * strength * root / (1 + closest_approach * root);
  const double pairs = std::min(sum.cations, highest_strength) * std::min(sum.anions, highest_strength);
  const double pushed = 2 * pairs * (pair_always + pair_dilute * std::exp(-2 * root));
  return std::max(0.0, sum.count - held_back + pushed) * mmol_per_mol;
}

} // namespace matula::matter

#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::matter {

/// Osmolality of the mixture, mOsm/kg of water: every dissolved particle counts once (an acid and its anion
/// are one particle; the ions that balance it are species of their own), ions less than once by their osmotic
/// coefficient (K.S. Pitzer, J. Phys. Chem. 77 (1973) 268, with one pair of constants between sodium and
/// potassium chloride). Uncharged solutes count fully: urea is counted 2 % high at 0.5 mol/kg. Solids do not
/// count. 0 for an empty mixture. Within 2 % of tables of freezing points up to 0.6 mol/kg.
[[nodiscard]] double osmolality_mosm_per_kg(const Mixture& mixture, const Catalogue& catalogue);

/// Grams of water in one millilitre: what the density leaves when solutes and solids are taken off.
[[nodiscard]] double water_g_per_ml(const Mixture& mixture, const Catalogue& catalogue);

} // namespace matula::matter

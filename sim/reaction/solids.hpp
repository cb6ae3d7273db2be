#pragma once

#include "sim/reaction/reaction.hpp"

namespace matula::reaction {

/// Grams of one mol of the row's solid: what its formula brings, with water taken up and protons left behind.
[[nodiscard]] double solid_molar_mass_g(const Precipitation& row, const matter::Catalogue& catalogue);

/// Number of particles of the kind, per m3 of a portion of `volume_ml`.
[[nodiscard]] double number_per_m3(const matter::Population& population, const matter::ParticleKind& kind,
                                   double volume_ml);

/// Puts `grams` of new solid into the size classes: first as new particles of class `bin` until there are
/// `wanted_per_m3` particles (all of it when that is infinite), then as growth of the particles there are.
void deposit(matter::Population& population, const matter::ParticleKind& kind, double grams, std::size_t bin,
             double wanted_per_m3, double volume_ml);

/// Takes `grams` out of all classes in proportion to what they hold; never more than is there.
void dissolve(matter::Population& population, double grams);

} // namespace matula::reaction

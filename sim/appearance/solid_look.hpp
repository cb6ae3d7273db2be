#pragma once

#include "sim/appearance/cylinder_lookup.hpp"

namespace matula::appearance {

/// Everything needed to turn spectra into what is seen under one view.
struct Seeing {
  const matter::Catalogue& catalogue;
  const OpticsTables& tables;
  const CylinderLookup& lookup;
  View view;
};

/// Tristimulus values on the display of light with the given spectrum, relative to the white card.
[[nodiscard]] optics::Xyz seen(const optics::Spectrum& light, const Seeing& seeing);

/// A colour against the white and against the black card.
struct TwoCards {
  optics::Xyz on_white;
  optics::Xyz on_black;

  [[nodiscard]] const optics::Xyz& on(Card card) const { return card == Card::Black ? on_black : on_white; }
};

/// Colour of a bed, clot or lump with the solids and the liquid of `mixture`, `depth_mm` across, every
/// particle in it scattering for itself.
[[nodiscard]] TwoCards packed_colour(const matter::Mixture& mixture, double depth_mm, const Seeing& seeing);

/// Colour a single piece adds to what is seen, for the share of the light behind it that it hides (its
/// opacity). It hangs half way through a vessel `width_mm` wide, in the liquid of `around`.
[[nodiscard]] TwoCards piece_colour(matter::ParticleId kind, std::size_t bin, const matter::Mixture& around,
                                    double width_mm, const Seeing& seeing);

} // namespace matula::appearance

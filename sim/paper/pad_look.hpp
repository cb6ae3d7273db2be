#pragma once

#include "sim/appearance/optics_tables.hpp"
#include "sim/paper/pad.hpp"

namespace matula::paper {

/// Reflectance of a pad in every band, relative to the white card's; glare left out. Paper scatters, what is
/// dissolved in it absorbs, solids held in it do both; spots and ground are averaged. A dry pad shows its
/// soaking dyes at the pH their own liquid had.
[[nodiscard]] optics::Spectrum reflectance(const Pad& pad, const PadKind& kind,
                                           const matter::Catalogue& catalogue,
                                           const std::vector<appearance::ScatterTable>& scatter);

/// Spots on a pad, where cells broke.
struct Spots {
  int count = 0;    ///< 0 when the pad is even.
  double cover = 0; ///< Share of the pad they cover.
  optics::Spectrum spot{};
  optics::Spectrum ground{};
};
[[nodiscard]] Spots spots_on(const Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue,
                             const std::vector<appearance::ScatterTable>& scatter);

/// Colour under a lamp on the display, D65 XYZ with Y = 1 for the white card.
[[nodiscard]] optics::Xyz colour_of(const optics::Spectrum& reflectance,
                                    const optics::Colorimetry& colorimetry, optics::Lamp lamp);

} // namespace matula::paper

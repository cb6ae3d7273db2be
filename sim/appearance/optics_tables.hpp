#pragma once

#include "sim/appearance/appearance.hpp"
#include "sim/column/column.hpp"
#include "sim/optics/colour.hpp"

#include <vector>

namespace matula::appearance {

/// Scattering of one kind of particle by size class and band, per gram of solid in one millilitre seen over
/// one millimetre.
struct ScatterTable {
  std::vector<optics::Spectrum> scatter_per_mm; ///< By size bin.
  std::vector<optics::Spectrum> absorb_per_mm;
  std::vector<optics::Spectrum> asymmetry; ///< Mean cosine g.
  std::vector<double> diameter_mm;         ///< Of one particle of the class.
  std::vector<double>
      piece_opacity; ///< Share of the light that meets one particle and is absorbed or turned aside.
  std::vector<double> piece_straying; ///< The same, counting light turned enough to blur print.
  std::size_t network_bin = 0;        ///< Class whose scattering per gram stands for a continuous clot.
};

/// Light through a lit cylinder as a function of optical thickness, computed offline by Monte Carlo; axes are
/// mu_s' d and mu_a d (dimensionless), values per lateral sample.
struct CylinderTable {
  std::vector<double> reduced_scatter; ///< Ascending grid of mu_s' d.
  std::vector<double> absorption;      ///< Ascending grid of mu_a d.
  /// [i_scatter][i_absorb][lateral]: radiance to the eye, relative to the white card.
  std::vector<double> on_white;
  std::vector<double> on_black;
};

/// Everything optical that does not change while the bench lives.
struct OpticsTables {
  optics::Colorimetry colorimetry;
  std::vector<ScatterTable> scatter; ///< By ParticleId.
  CylinderTable cylinder;
};

/// Scattering of every kind of particle, by Mie theory for compact kinds and by fractal Rayleigh-Debye-Gans
/// for clusters. Takes a few milliseconds a kind; call once after loading.
[[nodiscard]] std::vector<ScatterTable> make_scatter_tables(const matter::Catalogue& catalogue);

/// Looks of a column under a view; `seed` fixes where the visible pieces are drawn from the size
/// distribution.
[[nodiscard]] Appearance look_at(const column::Column& column, const matter::Catalogue& catalogue,
                                 const OpticsTables& tables, const View& view, std::uint64_t seed);

} // namespace matula::appearance

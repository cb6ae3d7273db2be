#pragma once

#include "sim/appearance/optics_tables.hpp"

namespace matula::appearance {

/// How much of a printed line's contrast one gram in one mL of each class destroys over the inside diameter
/// of a vessel.
struct PrintLoss {
  std::vector<std::array<double, matter::size_bins>> by_kind;
};
[[nodiscard]] PrintLoss print_loss(const std::vector<ScatterTable>& tables, double inner_diameter_mm);

/// What one layer does to light. All coefficients per mm, natural logarithm.
struct LayerOptics {
  optics::Spectrum absorb{};
  optics::Spectrum scatter{};         ///< Haze: everything too small to be seen as a piece, and clot.
  optics::Spectrum reduced_scatter{}; ///< mu_s (1 - g) of the same.
  double print_loss =
      0; ///< Of a printed line's contrast over the whole inside diameter, as an optical depth.
  double forward_turn = 0; ///< Sum of mu_s (1 - g) in the luminous band: spread of forward scattered light.
  double hidden = 0;       ///< Area hidden by visible pieces per mm of depth.
  double strayed = 0;      ///< Area through which they let no sharp print, per mm of depth.
  double graininess = 0;   ///< Area weighted with the square of their opacity.

  bool operator==(const LayerOptics&) const = default;
};

[[nodiscard]] LayerOptics layer_optics(const matter::Mixture& layer, const matter::Catalogue& catalogue,
                                       const std::vector<ScatterTable>& tables, const PrintLoss& loss);

/// Between two layers: `share` 0 gives one, 1 the other.
[[nodiscard]] LayerOptics between(const LayerOptics& one, const LayerOptics& other, double share);

} // namespace matula::appearance

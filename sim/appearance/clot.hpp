#pragma once

#include "sim/appearance/pieces.hpp"

namespace matula::appearance {

/// The longest unbroken clot of a column.
struct ClotLook {
  double from_mm = 0;
  double to_mm = 0;
  double fraction = 0; ///< Of the column's height.
  optics::Xyz colour{};
};

/// Layers count as clotted where most of the solid is locked into a network.
[[nodiscard]] ClotLook find_clot(const std::vector<LayerPlace>& layers, double level_mm,
                                 double inner_diameter_mm, const Seeing& seeing);

} // namespace matula::appearance

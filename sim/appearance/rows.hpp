#pragma once

#include "sim/appearance/layer_optics.hpp"
#include "sim/appearance/solid_look.hpp"

namespace matula::appearance {

/// Inside width of the vessel at a height, mm; narrower in a round bottom.
[[nodiscard]] double width_at(const column::VesselShape& shape, double height_mm);

/// One layer as the rows need it.
struct SeenLayer {
  double from_mm = 0;
  double to_mm = 0;
  LayerOptics optics;
};

/// Even rows covering 0..level_mm. Layers are given bottom to top without gaps; the first `sharp` of them
/// (the bed) keep a sharp upper edge, the others shade into each other. `pieces` is the colour the visible
/// pieces lend to what they hide; only the share `undrawn` of them does so here, the others hang before the
/// rows one by one.
[[nodiscard]] std::vector<Row> make_rows(const column::VesselShape& shape,
                                         const std::vector<SeenLayer>& layers, std::size_t sharp,
                                         const TwoCards& pieces, double undrawn, const Seeing& seeing);

} // namespace matula::appearance

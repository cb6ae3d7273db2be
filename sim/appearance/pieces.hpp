#pragma once

#include "sim/appearance/rows.hpp"

#include <cstdint>

namespace matula::appearance {

/// Most pieces drawn in one vessel; a fuller tube shows a fair sample.
inline constexpr double most_pieces = 8000;

/// Where a layer of the column stands.
struct LayerPlace {
  const matter::Mixture* layer = nullptr;
  double from_mm = 0;
  double to_mm = 0;
};

/// The visible pieces of the column, far to near. A piece keeps its place across the tube as long as its size
/// class holds enough of them, so that looking again a moment later shows the same pieces a little further
/// on.
[[nodiscard]] std::vector<Piece> make_pieces(const std::vector<LayerPlace>& layers,
                                             const column::VesselShape& shape, const Seeing& seeing,
                                             std::uint64_t seed);

/// Share of the visible pieces that make_pieces leaves out of its sample, 0..1.
[[nodiscard]] double undrawn_share(const std::vector<LayerPlace>& layers, const Seeing& seeing);

/// Mean colour of the visible pieces in a vessel `width_mm` wide, weighted by the area they hide.
[[nodiscard]] TwoCards mean_piece_colour(const std::vector<LayerPlace>& layers, double width_mm,
                                         const Seeing& seeing);

} // namespace matula::appearance

#pragma once

#include "sim/appearance/appearance.hpp"

namespace matula::reading {

/// Mean of a row quantity over a stretch of the column, weighted by thickness.
struct Stretch {
  double from = 0; ///< Share of the column's height, 0 bottom.
  double to = 1;
};

/// Luminance on the axis against the card of the view, white card = 1. 0 for an empty vessel.
[[nodiscard]] double mean_luminance_on_black(const appearance::Appearance& looks, Stretch stretch);
[[nodiscard]] double mean_print_contrast(const appearance::Appearance& looks, Stretch stretch);
[[nodiscard]] double mean_granularity(const appearance::Appearance& looks, Stretch stretch);
[[nodiscard]] double mean_opacity(const appearance::Appearance& looks, Stretch stretch);

/// Mean colour of the whole face of the tube against white, D65 XYZ.
[[nodiscard]] optics::Xyz mean_colour_on_white(const appearance::Appearance& looks, Stretch stretch);

/// Size that parts the visible pieces into two halves of equal bulk, mm; 0 without pieces.
[[nodiscard]] double median_piece_size_mm(const appearance::Appearance& looks);

} // namespace matula::reading

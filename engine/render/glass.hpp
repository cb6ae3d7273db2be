#pragma once

#include "sim/appearance/appearance.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace matula::render {

/// Refractive indices at the sodium line: water 1.333 at 20 °C (Hale and Querry 1973), soda-lime glass
/// about 1.5 (common practice).
inline constexpr double water_index = 1.333;
inline constexpr double glass_index = 1.5;

/// A cylinder of glass on the vessel's axis, in mm, and what fills it.
struct Cylinder {
  double outer_mm = 8;
  double inner_mm = 7;
  double inside_index = water_index;
};

/// Angle in radians by which a ray entering at sideways offset `x_mm` has turned towards the axis once it has
/// left the cylinder, by Snell's law at each wall it meets (n b is the same along the whole ray). Odd in x.
[[nodiscard]] double turn_rad(const Cylinder& cylinder, double x_mm);

/// Where on a card `distance_mm` behind the axis the eye looking along the chord at `x_mm` lands.
[[nodiscard]] double card_x_mm(const Cylinder& cylinder, double x_mm, double distance_mm);

/// Where a thing at (x, z) inside the cylinder, z towards the eye, seems to stand: the offset of the ray
/// through it.
[[nodiscard]] double seen_x_mm(const Cylinder& cylinder, double x_mm, double z_mm);

/// Columns of the rows texture: colours on white, colours on black (one per lateral sample, axis first), then
/// one of sharp print, print blur in mm, and blurred print.
inline constexpr int row_columns = 2 * static_cast<int>(appearance::lateral_samples) + 1;

/// Rows resampled to even steps, bottom to top, as displayable linear RGB; four floats a texel.
struct RowImage {
  int rows = 0;
  double pitch_mm = 1;
  std::vector<float> texels;
};
[[nodiscard]] RowImage row_image(const appearance::Appearance& looks, double pitch_mm);

/// A piece as it is to be drawn, laid out for the graphics card.
struct DrawnPiece {
  float x_mm = 0; ///< As seen, from the axis.
  float height_mm = 0;
  float wide_mm = 0;
  float tall_mm = 0;
  std::array<float, 3> rgb{};
  float opacity = 0;
  float kind = 0; ///< appearance::PieceKind, or 5 for a bar of ink.
  float seed = 0; ///< 0..1
  float veil = 0; ///< Share of its light lost in the liquid before it.
  float spare = 0;
};
[[nodiscard]] std::vector<DrawnPiece> drawn_pieces(const appearance::Appearance& looks);

/// Steam bubbles of a boiling tube at an instant; deterministic in `seconds`.
[[nodiscard]] std::vector<DrawnPiece> boiling_bubbles(const appearance::Appearance& looks, double seconds);

/// Lines and letters on the glass, light on the black card and dark on the others.
[[nodiscard]] std::vector<DrawnPiece> glass_marks(const appearance::Appearance& looks);

/// Powder that floats on the surface.
[[nodiscard]] std::vector<DrawnPiece> strewn_grains(const appearance::Appearance& looks);

/// Height above the inside bottom where the print of a card ends, so that the lens of a round end shows bare
/// card.
[[nodiscard]] double bare_card_mm(const appearance::Appearance& looks);

/// Linear display colour, its gamut mapped.
[[nodiscard]] std::array<float, 3> shown(const optics::Xyz& colour);

/// Hash of everything in `looks` that could change a drawn pixel, rounded to what eight dithered bits can
/// show.
[[nodiscard]] std::uint64_t look_hash(const appearance::Appearance& looks);

} // namespace matula::render

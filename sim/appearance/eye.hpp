#pragma once

#include "sim/optics/spectrum.hpp"

#include <cstddef>

namespace matula::appearance {

/// What the eye and the printed card are taken to be. Sources beside each.

/// Things at least so wide are seen as pieces, smaller ones as haze. One minute of arc at reading distance
/// (300 mm) is 0.09 mm; common value.
inline constexpr double visible_size_mm = 0.1;
/// Above this a piece has a shape and is called a floc; common practice.
inline constexpr double floc_size_mm = 0.6;
/// Spatial frequency of the print behind the tube: strokes 1 mm wide, 1 mm apart; common practice (newsprint
/// headings).
inline constexpr double print_cycles_per_mm = 0.5;
/// Distance of the card behind the inside wall: the glass and a finger's play; common practice.
inline constexpr double card_gap_mm = 2;
/// A piece hides what lies behind it when light is turned by more than this; fitted here.
inline constexpr double hiding_angle_deg = 15;
/// A piece spoils the edges of print when it turns light by more than this: over the 9 mm from the axis to
/// the card that moves an edge by 1 mm, the width of a stroke.
inline constexpr double straying_angle_deg = 6;
/// Band at the peak of daylight vision, 560 nm, where contrast is judged.
inline constexpr std::size_t luminous_band = 18;
/// Refractive index of urine and reagents: water 1.333 plus solutes; common value.
inline constexpr double liquid_index = 1.34;

static_assert(optics::wavelength_nm(luminous_band) == 560.0);

} // namespace matula::appearance

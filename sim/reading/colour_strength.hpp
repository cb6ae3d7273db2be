#pragma once

#include "sim/reading/reference_reader.hpp"

namespace matula::reading {

/// Strength of a colour in the direction `hue_deg`: C* cos(h - hue) / L*, D65 white; 0 for colours of the
/// other half of the circle. Chroma over lightness is the usual correlate of saturation (M.D. Fairchild,
/// Color Appearance Models, from memory).
[[nodiscard]] double colour_strength(const optics::Xyz& colour, double hue_deg);

/// Strength at the place the scale looks at.
[[nodiscard]] double strength_seen(const appearance::Appearance& white, const ColourScale& scale);

[[nodiscard]] GradeReading read_strength(const Looks& looks, const ColourScale& scale);

} // namespace matula::reading

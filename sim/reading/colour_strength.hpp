#pragma once

#include "sim/reading/observables.hpp"
#include "sim/reading/reference_reader.hpp"

#include <functional>

namespace matula::reading {

/// Strength of a colour in the direction `hue_deg`: C* cos(h - hue) / L*, D65 white; 0 for colours of the
/// other half of the circle. Chroma over lightness is the usual correlate of saturation (M.D. Fairchild,
/// Color Appearance Models, from memory).
[[nodiscard]] double colour_strength(const optics::Xyz& colour, double hue_deg);

/// Strength at the place the scale looks at.
[[nodiscard]] double strength_seen(const appearance::Appearance& white, const ColourScale& scale);

/// Grade of a value by the scale's lines.
[[nodiscard]] GradeReading graded_by_lines(double value, const ColourScale& scale);

/// Every band across the tube as thick as the thinnest ring an eye grades, clear of bottom and surface.
void for_ring_bands(const appearance::Appearance& looks, const std::function<void(const Stretch&)>& visit);

[[nodiscard]] GradeReading read_strength(const Looks& looks, const ColourScale& scale);

} // namespace matula::reading

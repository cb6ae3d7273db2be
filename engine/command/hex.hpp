#pragma once

#include "sim/optics/colour.hpp"

#include <string>

namespace matula::command {

/// "#rrggbb" in sRGB of a colour inside the display's gamut.
[[nodiscard]] std::string hex_colour(const optics::LinearRgb& linear);

} // namespace matula::command

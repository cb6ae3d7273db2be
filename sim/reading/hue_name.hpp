#pragma once

#include "sim/optics/colour.hpp"

#include <string>

namespace matula::reading {

/// A colour in plain words, for an eye that does not tell hues apart: "pale yellow", "brown", "dark green".
/// Hue by the angle of CIELAB, depth by lightness and chroma; an orange that is dark is a brown. Where one
/// name ends and the next begins is a proposal of this program: names are habits, no measurement.
[[nodiscard]] std::string hue_name(const optics::Lab& colour);

} // namespace matula::reading

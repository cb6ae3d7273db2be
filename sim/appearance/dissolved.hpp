#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::appearance {

/// Absorption coefficient of everything dissolved, per mm, natural logarithm. An indicator absorbs as its two
/// forms do in the shares they have at the portion's pH. Zero for an empty portion.
[[nodiscard]] optics::Spectrum dissolved_absorption(const matter::Mixture& mixture,
                                                    const matter::Catalogue& catalogue);

} // namespace matula::appearance

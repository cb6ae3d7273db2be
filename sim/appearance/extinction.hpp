#pragma once

#include "sim/appearance/optics_tables.hpp"

namespace matula::appearance {

/// What a liquid takes out of a thin straight beam of the wavelength (380..730 nm, straight between the
/// bands), per mm, natural logarithm: all it absorbs and what it turns aside by more than `acceptance_deg`,
/// which a detector does not see.
[[nodiscard]] double extinction_per_mm(const matter::Mixture& liquid, const matter::Catalogue& catalogue,
                                       const std::vector<ScatterTable>& tables, double wavelength_nm,
                                       double acceptance_deg);

/// Share of scattered light that is turned by less than `angle_deg`, for a mean cosine g (Henyey and
/// Greenstein, Astrophys. J. 93 (1941) 70).
[[nodiscard]] double forward_share(double g, double angle_deg);

} // namespace matula::appearance

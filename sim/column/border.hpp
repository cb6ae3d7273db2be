#pragma once

#include "sim/column/column.hpp"

namespace matula::column {

/// Lets dissolved substances cross between the heavy liquid and the water on it for `seconds`: by diffusion
/// alone at rest, faster when stirred at `shear_per_s`, and over the surface of droplets while the vessel is
/// turned over. Only uncharged molecules cross; both sides go exactly towards the rest that
/// Species::partition and the pH set. Nothing is lost.
void cross_border(Column& column, const matter::Catalogue& catalogue, double shear_per_s, bool inverting,
                  double seconds);

/// Share of `species` in water that carries no charge at this pH, 0..1.
[[nodiscard]] double uncharged_share(const matter::Species& species, double ph, double log_gamma);

} // namespace matula::column

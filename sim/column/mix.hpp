#pragma once

#include "sim/column/layers.hpp"

namespace matula::column {

/// Exchange between neighbouring layers by stirring (held back where a light layer lies on a heavy one),
/// overturning where a heavy layer lies on a light one, inversion of the whole vessel, and lifting of the
/// sediment by all of these. `shear_per_s` is by layer.
void mix(Column& column, const matter::Catalogue& catalogue, const std::vector<Extent>& heights,
         const std::vector<double>& shear_per_s, bool inverting, double seconds);

} // namespace matula::column

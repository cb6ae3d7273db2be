#pragma once

#include "sim/column/layers.hpp"

namespace matula::column {

/// Speed of a class relative to Stokes' where clusters take up `volume_fraction` of the liquid: (1 -
/// phi/0.35)^4.65, Richardson and Zaki's exponent with crowding complete at 0.35.
[[nodiscard]] double hindrance(double volume_fraction);

/// Lets clusters fall (or rise) through the layers for `seconds` and lie down as sediment, which keeps liquid
/// between them. `gravity` is the weight of things against their weight at rest.
void settle(Column& column, const Chemistry& chemistry, const std::vector<Extent>& heights,
            const std::vector<double>& shear_per_s, double seconds, double gravity = 1);

} // namespace matula::column

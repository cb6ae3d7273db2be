#pragma once

#include "sim/column/layers.hpp"

namespace matula::column {

/// Heat from flame, bath and room, conduction between layers, and boiling: layers stay at or below their
/// boiling point, what is left over becomes steam. Sets boiling and boil_over_ml. Returns the share of a
/// rolling boil in each layer, 0..1. `liquid` is what the heavy part is made of.
std::vector<double> heat(Column& column, const matter::HeavyLiquid& liquid, const Surroundings& surroundings,
                         const std::vector<Extent>& heights, double seconds);

/// The heavy liquid alone in its vessel, on the way to the temperature round it.
void warm_alone(Column& column, const Surroundings& surroundings, double seconds);

} // namespace matula::column

#pragma once

#include "sim/instrument/urinometer.hpp"

namespace matula::instrument {

/// Shapes and balances of a float; lengths along the stem run downwards from the 1.000 mark, in mm.
[[nodiscard]] double stem_area_mm2(const Urinometer& urinometer);

/// Reading printed `mm` below the 1.000 mark, zero error included; continued a little beyond the printed
/// scale.
[[nodiscard]] double printed_reading(const Urinometer& urinometer, double mm);

/// Where the surface cuts the stem of a float at rest: weight plus the pull of the surface on the stem equals
/// the weight of what bulb, stem and air bubbles push aside.
[[nodiscard]] double rest_mm(const Urinometer& urinometer, const Bath& bath, double bubble_ml);

/// Where the surface cuts a float that stands on the bottom.
[[nodiscard]] double grounded_mm(const Urinometer& urinometer, const Bath& bath);

/// Volume of float below the surface, mL.
[[nodiscard]] double immersed_ml(const Urinometer& urinometer, double surface_mm);

} // namespace matula::instrument

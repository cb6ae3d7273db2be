#pragma once

#include "sim/optics/colour.hpp"

namespace matula::optics {

/// Oklab coordinates (Ottosson 2020, "A perceptual color space for image processing"): l 0..1.
struct Oklab {
  double l = 0;
  double a = 0;
  double b = 0;
};

[[nodiscard]] Oklab to_oklab(const LinearRgb& colour);
[[nodiscard]] LinearRgb from_oklab(const Oklab& colour);

} // namespace matula::optics

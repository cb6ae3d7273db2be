#include "sim/column/vessel.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double mm3_per_ml = 1000.0;

/// Height of a spherical cap of `volume_mm3` in a sphere of radius `r`, by Newton on V = pi h^2 (r - h/3).
double cap_height_mm(double volume_mm3, double r) {
  double h = std::sqrt(volume_mm3 / (pi * r));
  for (int i = 0; i < 40; ++i) {
    const double excess = pi * h * h * (r - h / 3.0) - volume_mm3;
    const double slope = pi * h * (2.0 * r - h);
    h = std::clamp(h - excess / slope, 1e-9 * r, r);
  }
  return h;
}

} // namespace

double VesselShape::level_mm(double volume_ml) const {
  if (volume_ml <= 0) {
    return 0;
  }
  const double r = inner_diameter_mm / 2.0;
  const double area_mm2 = pi * r * r;
  const double volume_mm3 = volume_ml * mm3_per_ml;
  if (!round_bottom) {
    return volume_mm3 / area_mm2;
  }
  const double bowl_mm3 = 2.0 / 3.0 * pi * r * r * r;
  if (volume_mm3 < bowl_mm3) {
    return cap_height_mm(volume_mm3, r);
  }
  return r + (volume_mm3 - bowl_mm3) / area_mm2;
}

} // namespace matula::column

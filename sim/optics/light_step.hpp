#pragma once

#include "sim/optics/random.hpp"

namespace matula::optics {

/// Unit vector: x across, y up the tube, z towards the eye.
struct Direction {
  double x = 0;
  double y = 0;
  double z = 1;
};

/// Unpolarised Fresnel reflectance of a smooth surface; `ratio` is n_from / n_to, `cos_out` becomes the
/// cosine after refraction. 1 beyond the critical angle.
[[nodiscard]] double fresnel_reflectance(double ratio, double cos_in, double& cos_out);

/// Turns a direction by one scattering of asymmetry `g` (-1..1) after Henyey and Greenstein 1941.
void turn(Direction& direction, double g, Stream& random);

} // namespace matula::optics

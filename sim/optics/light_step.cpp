#include "sim/optics/light_step.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::optics {

double fresnel_reflectance(double ratio, double cos_in, double& cos_out) {
  const double sin2 = ratio * ratio * (1 - cos_in * cos_in);
  if (sin2 >= 1) {
    return 1;
  }
  cos_out = std::sqrt(1 - sin2);
  const double s = (ratio * cos_in - cos_out) / (ratio * cos_in + cos_out);
  const double q = (cos_in - ratio * cos_out) / (cos_in + ratio * cos_out);
  return 0.5 * (s * s + q * q);
}

void turn(Direction& d, double g, Stream& random) {
  const double u = random.next();
  double cosine = 2 * u - 1;
  if (std::fabs(g) > 1e-6) {
    const double f = (1 - g * g) / (1 - g + 2 * g * u);
    cosine = (1 + g * g - f * f) / (2 * g);
  }
  const double sine = std::sqrt(std::max(0.0, 1 - cosine * cosine));
  const double phi = 2 * std::numbers::pi * random.next();
  const double cp = sine * std::cos(phi);
  const double sp = sine * std::sin(phi);
  // A frame round d (Duff et al. 2017).
  const double sign = std::copysign(1.0, d.z);
  const double a = -1 / (sign + d.z);
  const double b = d.x * d.y * a;
  const Direction t{1 + sign * d.x * d.x * a, sign * b, -sign * d.x};
  const Direction v{b, sign + d.y * d.y * a, -d.y};
  d = {cp * t.x + sp * v.x + cosine * d.x, cp * t.y + sp * v.y + cosine * d.y,
       cp * t.z + sp * v.z + cosine * d.z};
  const double norm = 1 / std::sqrt(d.x * d.x + d.y * d.y + d.z * d.z);
  d = {d.x * norm, d.y * norm, d.z * norm};
}

} // namespace matula::optics

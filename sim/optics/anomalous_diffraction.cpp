#include "sim/optics/anomalous_diffraction.hpp"

#include <cmath>

namespace matula::optics {

double anomalous_extinction(double rho) {
  if (rho < 1e-2) {
    return 0.5 * rho * rho; // First term of the series; the closed form cancels there.
  }
  return 2 - 4 / rho * std::sin(rho) + 4 / (rho * rho) * (1 - std::cos(rho));
}

double anomalous_absorption(double x, std::complex<double> m) {
  const double path = 4 * x * m.imag();
  if (path < 1e-3) {
    return 2.0 / 3.0 * path;
  }
  return 1 + 2 * std::exp(-path) / path + 2 * (std::exp(-path) - 1) / (path * path);
}

} // namespace matula::optics

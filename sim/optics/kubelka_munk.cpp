#include "sim/optics/kubelka_munk.hpp"

#include <cmath>

namespace matula::optics {

namespace {
constexpr double least_power = 1e-9; // Below this a layer neither scatters nor absorbs.
} // namespace

double layer_reflectance(double scattering_power, double absorbing_power, double backing) {
  if (scattering_power < least_power) {
    return backing * std::exp(-2 * absorbing_power);
  }
  const double a = 1 + absorbing_power / scattering_power;
  const double b = std::sqrt(a * a - 1);
  const double depth = b * scattering_power;
  const double b_coth = depth < least_power ? 1 / scattering_power : b / std::tanh(depth);
  return (1 - backing * (a - b_coth)) / (a - backing + b_coth);
}

double deep_reflectance(double k_over_s) {
  // The same as 1 + k - sqrt(k^2 + 2 k) without the difference of two near numbers.
  return 1 / (1 + k_over_s + std::sqrt(k_over_s * (k_over_s + 2)));
}

double through_surface(double body, double outside, double inside) {
  return (1 - outside) * (1 - inside) * body / (1 - inside * body);
}

double inside_reflectance(double index, double outside) {
  return 1 - (1 - outside) / (index * index);
}

} // namespace matula::optics
